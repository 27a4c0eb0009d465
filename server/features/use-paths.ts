/** Files that a `use` may name, while its path is being typed. */
import { relativeUri } from "../workspace/uri.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { Cursor } from "./cursor.ts";
import type { Completion } from "./offers.ts";

const halfUse = /^[ \t\ufeff]*use[ \t]+"([^"\r\n]*)$/;

/** The files that are known and not used yet, the nearest first; nothing where no path is being typed. */
export function usePaths(snapshot: Snapshot, cursor: Cursor, known: readonly string[]): Completion[] {
  const { segment, offset } = cursor;
  const line =
    segment.text
      .slice(0, offset)
      .split(/[\r\n]/)
      .at(-1) ?? "";
  const [, typed] = halfUse.exec(line) ?? [];
  if (typed === undefined) return [];
  const { path, model } = snapshot.file;
  const here = segment.text.slice(offset - typed.length).split(/["\r\n]/)[0];
  const used = new Set(model.facts.all("use").map(({ args }) => args.path.value));
  const depth = (label: string): number => label.split("/").length;
  return known
    .filter((other) => other !== path)
    .flatMap((other) => relativeUri(path, other) ?? [])
    .filter((label) => label === here || !used.has(label))
    .sort((one, other) => depth(one) - depth(other) || (one < other ? -1 : 1))
    .map((label) => ({
      label,
      kind: "file",
      aliases: [],
      spot: { segment, start: offset - typed.length, end: offset },
      text: label.replace(/["\\]/g, "\\$&"),
    }));
}
