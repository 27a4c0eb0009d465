/** Where a reading came from, and what came of it, in words of the site: `0.35 Ω by enquiry`, `rcd 30 mA pass`. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Provenance } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, removeFix, writtenSo } from "./refusals.ts";
import { mayBeAbsent } from "./row-shape.ts";
import { wordForSiteTerm } from "./suggestions.ts";

const sources: ReadonlyMap<string, Provenance> = new Map([
  ["enquiry", "declared"],
  ["inquiry", "declared"],
  ["distributor", "declared"],
  ["dno", "declared"],
  ["stated", "declared"],
  ["calculation", "calculated"],
  ["calc", "calculated"],
  ["measurement", "measured"],
  ["test", "measured"],
]);

/** `by enquiry`, `from distributor`, `calc`. */
export function spokenProvenance(line: LineBeingRead): Slip | undefined {
  const [first, second] = line.tokens.slice(line.at, line.at + 2);
  if (!first || !line.shape.hasReading) return undefined;
  const joined = /^(?:by|from|per)$/i.test(first.image);
  const last = joined && second ? second : first;
  const word = sources.get(last.image.toLowerCase());
  if (word === undefined) return undefined;
  const said = last === first ? first.image : `${first.image} ${last.image}`;
  if (word !== "measured") return writtenSo(line, word, `“${said}” is written ${word}.`, first, last);
  const fix = removeFix(said, { start: first.startOffset, end: endOf(last) });
  const message = `What is not marked otherwise was measured: leave out “${said}”.`;
  return { problem: problemAt("wrong-argument", message, first, [fix]), upTo: line.tokens.indexOf(last, line.at) + 1 };
}

/** Whether the token is a tick where the figure that was read belongs. */
export function isTickForFigure(line: LineBeingRead): boolean {
  const { token } = line;
  if (!isToken(token, "Word") || !line.shape.hasReading) return false;
  const free = line.free();
  const figure = free.some(([, { accepts }]) => accepts.kind === "quantity" && mayBeAbsent(accepts));
  const verdict = free.some(
    ([, { accepts, label }]) => !label && accepts.kind === "choice" && Object.hasOwn(accepts.choices, "ok"),
  );
  const tick = /^ok$/i.test(token.image) || wordForSiteTerm(token.image, ["ok"]) === "ok";
  return figure && !verdict && tick;
}

/** `rcd 30 mA pass`: the figure is what the next inspection compares with. */
export function tickForFigure(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  return isTickForFigure(line) ? noFigure(line, token) : undefined;
}

/** A word in the place of the figure that was read. */
export function noFigure(line: LineBeingRead, token: IToken): Slip {
  const example = line.row.example.split("\n")[0];
  const message = `“${token.image}” gives no figure. Write what was read, as in: ${example}; or LIM, if only that was noted.`;
  return writtenSo(line, 'LIM "Only a tick was recorded"', message, token);
}

/** `rcd 30 mA trip current 22 mA`: a ramp test has a line of its own. */
export function rampOnTimeLine(line: LineBeingRead): Slip | undefined {
  const { tokens, token, at, word } = line;
  if (!isRamp(line)) return undefined;
  const last = tokens.findIndex(({ image }, index) => index > at && /\d\s*mA$/.test(image));
  const figure = tokens[last];
  if (!figure) return undefined;
  const text = `trip-current ${figure.image}`;
  const message = `A ramp test has a line of its own: ${text}.`;
  const span = { start: word.startOffset, end: endOf(figure) };
  const fix = { title: `Write ${text}`, edits: [{ ...span, text }], safe: false };
  return { problem: problemAt("wrong-argument", message, token, [fix]), upTo: last + 1 };
}

/** Whether the words at hand name a ramp test on the line for trip times. */
export function isRamp({ tokens, token, at, word }: LineBeingRead): boolean {
  const ramp = /^(?:ramp|trip|tripped|trips)$/i.test(token.image);
  return word.image === "rcd" && ramp && tokens.slice(at + 1).some(({ image }) => /\d\s*mA$/.test(image));
}

/** `spd type 2`: what is marked on the device is one word here, and says that it is fitted. */
export function surgeType(line: LineBeingRead): Slip | undefined {
  const [first, second] = line.tokens.slice(line.at, line.at + 2);
  if (!first || !second || !/^type$/i.test(first.image)) return undefined;
  // “type 1+2”, “type 1 & 2”: one device that is both.
  const isBoth = /^1[+/-]2$/.test(second.image);
  const word = isBoth ? "T1-T2" : `T${second.image}`;
  const takes = ([, { accepts }]: ReturnType<LineBeingRead["free"]>[number], choice: string): boolean =>
    accepts.kind === "choice" && Object.hasOwn(accepts.choices, choice);
  const free = line.free();
  if (!free.some((slot) => takes(slot, word))) return undefined;
  const text = free.some((slot) => takes(slot, "fitted")) ? `fitted ${word}` : word;
  return writtenSo(line, text, `“${first.image} ${second.image}” is written ${text}.`, first, second);
}

/** `device … RCD 30 mA`: the current at which it trips says that it is one. */
export function residualNamed(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const next = line.tokens[line.at + 1];
  if (!next || !/^(?:rcd|rcbo|residual)$/i.test(token.image)) return undefined;
  const trips = line.args.sensitivity !== undefined || /\d\s*mA$/.test(next.image);
  if (!trips || !line.shape.slots.some(([name]) => name === "sensitivity")) return undefined;
  const fix = removeFix(token.image, { start: token.startOffset, end: next.startOffset });
  const message = `The rated residual current already says that it is an RCD: leave out “${token.image}”.`;
  return { problem: problemAt("wrong-argument", message, token, [fix]), upTo: line.at + 1 };
}

/** `25 ms 0 deg`, `25 ms 180°`: the half cycle that the test began with is a word. */
export function halfCycle(line: LineBeingRead): Slip | undefined {
  const [first, second] = line.tokens.slice(line.at, line.at + 2);
  const word = `from-${/^(0|180)\s*(?:°|deg(?:rees)?)?$/i.exec(first?.image ?? "")?.[1]}`;
  const takes = line
    .free()
    .some(([, { accepts }]) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, word));
  if (!first || !takes) return undefined;
  const isApart = second !== undefined && /^(?:°|deg(?:rees)?)$/i.test(second.image);
  // By itself it may be a figure that lost its unit, unless the time is written already.
  if (!isApart && isToken(first, "Number") && line.args.time === undefined) return undefined;
  const last = isApart ? second : first;
  const said = isApart ? `${first.image} ${second.image}` : first.image;
  return writtenSo(line, word, `“${said}” is written ${word}.`, first, last);
}
