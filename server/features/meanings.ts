/** What a name stands for and what a value is, in words. */

import { unnamedRcds } from "../../grammar/choices.ts";
import type { Accepts, Choices } from "../../grammar/params.ts";
import { absences, corrections, provenances } from "../../grammar/vocabulary.ts";
import { type AnyValue, type Fact, isAbsent } from "../model/values.ts";
import { fenced, type Markdown, md, prose } from "../text/markdown.ts";
import { capital } from "../text/words.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { argAt, type CursorContext } from "./cursor.ts";
import { definitions, type Named } from "./names.ts";

/** A name shows what it stands for, as it is written where it is defined. */
export function nameMarkdown(snapshot: Snapshot, named: Named): Markdown[] {
  const title = md`**${named.name.value}** — ${kinds[named.names]}`;
  if (named.builtin) return [md`**${named.name.value}** — ${builtins[named.name.value] ?? kinds[named.names]}`];
  const [definition] = definitions(snapshot, named);
  if (!definition) return [md`${title} that nothing here defines.`];
  const { segment, start, end } = definition.fact;
  const text = segment.text.slice(start, segment.kind === "open" ? undefined : end);
  const indent = start - (segment.text.lastIndexOf("\n", start - 1) + 1);
  const lines = text.split(/\r?\n/).map((line, at) => (at === 0 ? line : line.replace(margin(indent), "")));
  const shown = lines.slice(0, mostLines).join("\n") + (lines.length > mostLines ? "\n…" : "");
  return [title, fenced("wayfile", shown.trimEnd())];
}

/** Names that nothing has to define. */
const builtins: Readonly<Record<string, string>> = { supply: "Fed straight from the origin.", ...unnamedRcds };

const mostLines = 8;
/** What the lines below stand in from the left by because the first does. */
const margin = (indent: number): RegExp => new RegExp(`^[ \\t]{0,${indent}}`);

const kinds = {
  board: "a board",
  rcd: "an RCD of the board",
  instrument: "a test instrument",
  "cable-type": "a cable type",
  "circuit-type": "a circuit type",
  containment: "a conduit or trunking",
  point: "a point of the circuit",
  way: "a way of the board",
} as const;

/** What one value is, by the argument it fills, or by the word it is where the line was not understood. */
export function valueMarkdown(
  { row, token, statement }: CursorContext,
  fact: Fact | undefined,
  offset: number,
): Markdown[] {
  const image = token?.image ?? "";
  const own: Choices = { ...provenances, ...absences, ...corrections };
  if (Object.hasOwn(own, image)) return [md`**${image}** — ${prose(own[image] ?? "")}`];
  const params = Object.entries(row?.params ?? {});
  const label = params.find(([, param]) => param.label === image);
  if (label) return [md`**${image}** — ${prose(capital(label[1].accepts.help))}.`];
  const [name, value] = argAt(fact, offset) ?? [];
  const param = params.find(([key]) => key === name)?.[1] ?? paramOfChoice(params, image);
  if (!param) return [md`**${image}** in the line of **${statement?.word.image ?? ""}**.`];
  return accepted(param.accepts, image, value);
}

function accepted(accepts: Accepts, image: string, value: AnyValue | undefined): Markdown[] {
  const help = capital(accepts.help);
  if (value && isAbsent(value)) return [md`**${value.absent}** — ${prose(absences[value.absent])}`];
  // The places between which it lies stand on either side.
  if (accepts.kind === "path") return [md`**${image}** — The length of this leg.`];
  if (accepts.kind === "choice") return [md`**${image}** — ${prose(accepts.choices[image] ?? help)}`];
  return [md`**${image}** — ${prose(help)}.`];
}

const paramOfChoice = (params: [string, { readonly accepts: Accepts }][], image: string) =>
  params.find(([, { accepts }]) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, image))?.[1];
