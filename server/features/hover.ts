import { endOf } from "../../grammar/lexer.ts";
import type { Spot } from "../rules/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Cursor, spotAt } from "./place.ts";

export interface Hover {
  readonly spot: Spot;
  readonly markdown: string;
}

export function hover(snapshot: Snapshot, cursor: Cursor): Hover | undefined {
  const { segment, statement, row, token } = spotAt(snapshot, cursor);
  if (!statement || !row || !token) return undefined;
  const lines = [`**${statement.word.image}** ${row.means}`, row.background, row.limits && `*${row.limits}*`];
  return {
    spot: { segment, start: token.startOffset, end: endOf(token) },
    markdown: lines.filter((line) => line !== undefined).join("\n\n"),
  };
}
