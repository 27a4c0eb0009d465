/** What has a line of its own and was written behind something else: `load 5.5 kW three-phase`. */
import type { IToken } from "chevrotain";
import { endOf } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { indentOf, problemAt, removeFix, spanOf } from "./refusals.ts";
import { suggestionFor } from "./suggestions.ts";
import type { Span } from "./values.ts";

const phases = /^(3|three|1|single)-?ph(?:ases?)?$/i;

/** `3ph`, `three phase`, `single-phase`: how many lines a circuit has. */
export function linesElsewhere(line: LineBeingRead): Slip | undefined {
  const [first, second] = line.tokens.slice(line.at);
  if (!first || line.word.image.startsWith("phase") || isOffered(line, first)) return undefined;
  const isApart = second !== undefined && phases.test(`${first.image}-${second.image}`);
  const last = isApart ? second : first;
  const said = isApart ? `${first.image} ${second.image}` : first.image;
  const count = phases.exec(said.replace(" ", "-"))?.[1];
  if (count === undefined) return undefined;
  const span = spanOf(first, last);
  const isThree = /^(?:3|three)$/i.test(count);
  const own = ownLine(line, isThree ? "three" : "single");
  if (!own) return isThree || !ownLine(line, "three") ? undefined : singleAnyway(line, said, span);
  const above = `${own.text}\n${indentOf(line.word)}`;
  const edits = [
    { start: line.word.startOffset, end: line.word.startOffset, text: above },
    { ...withBlankBefore(line, span), text: "" },
  ];
  const title = `Write ${own.text} on a line of its own`;
  const message = `“${said}” is stated on a line of its own: ${own.text}.`;
  const problem = { ...problemAt("wrong-argument", message, first, [{ title, edits, safe: false }]), ...span };
  return { problem, upTo: line.at + (isApart ? 2 : 1) };
}

/** A way has one line where nothing else is written. */
function singleAnyway(line: LineBeingRead, said: string, span: Span): Slip {
  const token = line.tokens[line.at] as IToken;
  const fix = removeFix(said, withBlankBefore(line, span));
  const message = `A way is single-phase unless phase three is written: leave out “${said}”.`;
  return {
    problem: { ...problemAt("wrong-argument", message, token, [fix]), ...span },
    upTo: line.at + said.split(" ").length,
  };
}

/** A device's `three-phase` is its poles. */
const isOffered = (line: LineBeingRead, { image }: IToken): boolean =>
  line
    .free()
    .some(
      ([, { accepts, label }]) =>
        label === undefined &&
        accepts.kind === "choice" &&
        suggestionFor(image, Object.keys(accepts.choices)) !== undefined,
    );

/** The line beside this one, in its block, that says how many lines there are: `phase` of a way, `phases` of a board. */
function ownLine({ word, row }: LineBeingRead, count: "three" | "single"): { readonly text: string } | undefined {
  const rows = Object.values<Readonly<Record<string, WordRow>>>(vocabulary).find((block) => block[word.image] === row);
  for (const name of ["phases", "phase"]) {
    const takes = Object.values(rows?.[name]?.params ?? {}).some(
      ({ accepts }) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, count),
    );
    if (takes) return { text: `${name} ${count}` };
  }
  return undefined;
}

const withBlankBefore = ({ tokens, at, word }: LineBeingRead, { start, end }: Span): Span => {
  const before = tokens[at - 1] ?? word;
  return { start: Math.min(start, endOf(before)), end };
};
