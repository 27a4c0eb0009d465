/** What has a line of its own and was written behind something else: `load 5.5 kW three-phase`. */
import type { IToken } from "chevrotain";
import { endOf } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { quantities } from "../../grammar/quantities.ts";
import { openedBy, vocabulary } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { readWritten } from "./quantity.ts";
import { indentOf, problemAt, removeFix, spanOf } from "./refusals.ts";
import { suggestionFor } from "./suggestions.ts";
import type { Span } from "./values.ts";

const phases = /^(3|three|1|single)-?ph(?:ases?)?$/i;

/** `3ph`, `three phase`, `single-phase`: how many lines a circuit has. */
export function linesElsewhere(line: LineBeingRead): Slip | undefined {
  const [first, second] = line.tokens.slice(line.at);
  if (!first || line.row.opens || line.word.image.startsWith("phase") || isOffered(line, first)) return undefined;
  const isApart = second !== undefined && phases.test(`${first.image}-${second.image}`);
  const last = isApart ? second : first;
  const said = isApart ? `${first.image} ${second.image}` : first.image;
  const count = phases.exec(said.replace(" ", "-"))?.[1];
  if (count === undefined) return undefined;
  const span = spanOf(first, last);
  const isThree = /^(?:3|three)$/i.test(count);
  const own = ownLine(line, isThree ? "three" : "single");
  if (!own) return isThree || !ownLine(line, "three") ? undefined : singleAnyway(line, said, span);
  const message = `“${said}” is stated on a line of its own: ${own.text}.`;
  return movedAbove(line, own.text, message, first, last);
}

/** What stands from one sign of a line to another is written as a line of its own above it. */
function movedAbove(line: LineBeingRead, own: string, message: string, first: IToken, last: IToken): Slip {
  const span = spanOf(first, last);
  const edits = [
    { start: line.word.startOffset, end: line.word.startOffset, text: `${own}\n${indentOf(line.word)}` },
    { ...withBlankBefore(line, span), text: "" },
  ];
  const title = `Write ${own} on a line of its own`;
  const problem = { ...problemAt("wrong-argument", message, first, [{ title, edits, safe: false }]), ...span };
  return { problem, upTo: line.tokens.indexOf(last) + 1 };
}

/** `serves shower 8.5 kW`: what a circuit is for, and what that draws. */
export function loadElsewhere(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const written = readWritten(token.image, token.startOffset);
  if (line.word.image !== "serves" || !written || !quantities.power.units.includes(written.unit)) return undefined;
  const own = `load ${written.digits} ${written.unit}`;
  return movedAbove(line, own, `What it draws is stated on a line of its own: ${own}.`, token, token);
}

/** A way has one line where nothing else is written. */
function singleAnyway(line: LineBeingRead, said: string, span: Span): Slip {
  const { token } = line;
  const fix = removeFix(said, withBlankBefore(line, span));
  const message = `A way is single-phase unless phase three is written: leave out “${said}”.`;
  return {
    problem: { ...problemAt("wrong-argument", message, token, [fix]), ...span },
    upTo: line.at + said.split(" ").length,
  };
}

/** A list of the line that has the count itself; a device's poles are no count of lines. */
const isOffered = (line: LineBeingRead, { image }: IToken): boolean =>
  line
    .free()
    .some(
      ([, { accepts, label }]) =>
        label === undefined &&
        accepts.kind === "choice" &&
        !Object.hasOwn(accepts.choices, "four-pole") &&
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

/** `load 11 kW motor`: what a circuit draws, and what it is for. */
export function useElsewhere(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const uses = vocabulary.way.serves.params.uses.accepts.choices;
  if (line.word.image !== "load" || !Object.hasOwn(uses, token.image)) return undefined;
  const own = `serves ${token.image}`;
  return movedAbove(line, own, `What the circuit supplies is stated on a line of its own: ${own}.`, token, token);
}

/** How a way or a board is labelled that has three lines: on the line that opens it, none of these is its number. */
const threeLines = /^(?:tp(?:n|&n|\+n)?|l1[-/,+]?l2[-/,+]?l3|3p\+n|4p)$/i;
const oneLine = /^l[123]$/i;

/** `board DB1 TPN`, `way 2 L1 "Lights"`: the lines of what is opened are stated inside it. */
export function linesInside(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const opens = openedBy(line.row);
  if (!opens || line.at === 0) return undefined;
  const [first = token, second = token] = line.tokens.slice(line.at, line.at + 2);
  const isApart = second !== first && phases.test(`${first.image}-${second.image}`);
  const said = isApart ? `${first.image} ${second.image}` : first.image;
  const rows: Readonly<Record<string, WordRow>> = vocabulary[opens];
  const count = phases.exec(said.replace(" ", "-"))?.[1];
  const isThree = threeLines.test(said) || /^(?:3|three)$/i.test(count ?? "");
  const text = isThree
    ? rows.phases
      ? "phases three"
      : rows.phase && "phase three"
    : oneLine.test(said) && rows.phase
      ? `phase ${said.toUpperCase()}`
      : undefined;
  if (text === undefined) return undefined;
  const last = isApart ? second : first;
  const message = `“${said}” is stated inside the ${line.word.image}, on a line of its own: ${text}.`;
  const problem = { ...problemAt("wrong-argument", message, first), ...spanOf(first, last) };
  return { problem, upTo: line.at + (isApart ? 2 : 1) };
}

/** `load 15 kVA pf 0.9`: the power factor is the circuit's, and a percentage. */
export function powerFactorElsewhere(line: LineBeingRead): Slip | undefined {
  const [label, figure] = line.tokens.slice(line.at, line.at + 2);
  const share = /^(?:0?\.(\d{1,2})|1(?:\.0+)?)$/.exec(figure?.image ?? "");
  if (!label || !figure || !share || !/^(?:pf|p\.f\.|cos|cosφ)$/i.test(label.image)) return undefined;
  if (line.word.image !== "load" && line.word.image !== "Ib") return undefined;
  const percent = share[1] === undefined ? 100 : Number(share[1].padEnd(2, "0"));
  const own = `power-factor ${percent} %`;
  const message = `“${label.image} ${figure.image}” is stated on a line of its own: ${own}. A load in kVA has it in it already.`;
  return movedAbove(line, own, message, label, figure);
}

/** `next-inspection 10 years`: a paper names the day. */
export function daysNotYears(line: LineBeingRead): Slip | undefined {
  const [figure, unit] = line.tokens.slice(line.at, line.at + 2);
  const wantsDay = line.free().some(([, { accepts, optional }]) => accepts.kind === "date" && !optional);
  const said = /^\d{1,2}$/.test(figure?.image ?? "") ? `${figure?.image} ${unit?.image}` : (figure?.image ?? "");
  if (!figure || !wantsDay || !/^\d{1,2}[ -]?(?:years?|yrs?|y|months?)$/i.test(said)) return undefined;
  const last = said === figure.image || !unit ? figure : unit;
  const example = line.row.example.split("\n")[0];
  const message = `“${said}” is written as the day on which they end, and the reason: ${example}`;
  const problem = { ...problemAt("wrong-argument", message, figure), ...spanOf(figure, last) };
  return { problem, upTo: line.tokens.indexOf(last, line.at) + 1 };
}

/** `fed-from LL way 3`: which way feeds a board is stated by that way. */
export function feederElsewhere(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (line.word.image !== "fed-from" || !/^(?:way|circuit|cct)$/i.test(token.image)) return undefined;
  const last = line.tokens.at(-1) ?? token;
  const span = spanOf(token, last);
  const said = line.tokens
    .slice(line.at)
    .map(({ image }) => image)
    .join(" ");
  const message = `“fed-from” names the board alone; which of its ways feeds this board is stated in that way, by feeds and this board's name.`;
  const fix = removeFix(said, withBlankBefore(line, span));
  return { problem: { ...problemAt("wrong-argument", message, token, [fix]), ...span }, upTo: line.tokens.length };
}

const withBlankBefore = ({ tokens, at, word }: LineBeingRead, { start, end }: Span): Span => {
  const before = tokens[at - 1] ?? word;
  return { start: Math.min(start, endOf(before)), end };
};
