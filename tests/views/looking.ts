/** A view of a schedule as the live page is given it: places are lines by then. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type At, type Placed, placed } from "../../server/lsp/placed.ts";
import type { ViewKind } from "../../server/views/kinds.ts";
import { type View, viewOf } from "../../server/views/view.ts";
import { openSample } from "../helpers/cursor.ts";

const examples = join(import.meta.dirname, "../../examples");

export const example = (name: string): string => readFileSync(join(examples, name), "utf8");

const instruments = () => example("shared/instruments.ways");

export async function look<Kind extends ViewKind>(text: string, kind: Kind, board?: string): Promise<Placed<View>> {
  const uses = text.replace(/use "[^"]*"/, 'use "instruments.ways"');
  const { snapshot } = await openSample(uses, { "instruments.ways": instruments() });
  const [installation] = snapshot.installations;
  const place = installation?.boards.find(({ board: one }) => board === undefined || one.head.name === board);
  if (!installation || !place) throw new Error("The sample has no such board.");
  const view = viewOf(kind, { installations: snapshot.installations, installation, place }, snapshot.findings);
  return placed(view, ({ segment, offset }): At | undefined => {
    const at = snapshot.positions.place(segment, offset);
    return snapshot.positions.has(segment) ? { ...at, last: at.line } : undefined;
  });
}

/** All words of a drawing, in the order they are drawn. */
export function wordsIn(shapes: readonly unknown[]): string[] {
  return shapes.flatMap((shape) => {
    const { kind, text, shapes: inner } = shape as { kind: string; text?: string; shapes?: readonly unknown[] };
    return kind === "text" ? [text ?? ""] : kind === "group" ? wordsIn(inner ?? []) : [];
  });
}
