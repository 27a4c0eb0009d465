/** What a line may say behind its word, and which of it comes next. */

import { endOf } from "../../grammar/lexer.ts";
import type { Param } from "../../grammar/params.ts";
import { proseOf } from "../../grammar/prose.ts";
import { quantities } from "../../grammar/quantities.ts";
import { bindArguments } from "../model/arguments.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Cursor, contextAt } from "./cursor.ts";

interface Signature {
  readonly label: string;
  readonly means: string;
  readonly parameters: readonly { readonly from: number; readonly to: number; readonly help: string }[];
  /** The one the cursor is at, or that is next. */
  readonly active: number;
}

export function signatureAt(snapshot: Snapshot, cursor: Cursor): Signature | undefined {
  const { statement, row } = contextAt(snapshot, cursor);
  if (!statement || !row || cursor.offset <= endOf(statement.word)) return undefined;
  const params = Object.entries(row.params);
  if (params.length === 0) return undefined;
  let label = statement.word.image;
  const parameters = params.map(([, param]) => {
    const from = label.length + 1;
    label += ` ${slot(param)}`;
    return { from, to: label.length, help: param.accepts.help };
  });
  const before = statement.args.filter((token) => endOf(token) <= cursor.offset);
  const { args } = bindArguments(statement.word, row, before);
  const last = before.at(-1)?.image;
  const labelled = params.findIndex(([, param]) => param.label !== undefined && param.label === last);
  const free = params.findIndex(([name, param]) => args[name] === undefined && (!param.optional || !param.label));
  const open = params.findIndex(([name]) => args[name] === undefined);
  const active = labelled >= 0 ? labelled : free >= 0 ? free : Math.max(0, open);
  return { label, means: proseOf(row.means), parameters, active };
}

/** `line <mm²>`, `[type AC|A|F|B]`, `<standard>`. */
function slot({ label, optional, many, accepts }: Param): string {
  const value = `${label === undefined ? "" : `${label} `}${filler(accepts)}${many ? " …" : ""}`;
  return optional ? `[${value}]` : value;
}

const most = 4;

function filler(accepts: Param["accepts"]): string {
  if (accepts.kind === "choice") {
    const choices = Object.keys(accepts.choices);
    return choices.length <= most ? choices.join("|") : `${choices.slice(0, most).join("|")}|…`;
  }
  if (accepts.kind === "quantity") return `<${quantities[accepts.of].units.slice(0, 2).join("|")}>`;
  if (accepts.kind === "text") return '"…"';
  return fillers[accepts.kind] ?? `<${accepts.kind}>`;
}

const fillers: Readonly<Record<string, string>> = {
  define: "<name>",
  ref: "<name>",
  shorthand: "<B32>",
  multiple: "<1x>",
  roughTime: "<year>",
  path: "<A 7 m S1 …>",
};
