/** Devices as their labels have them: `B32/0.03`, `32A B`, `30mA A`. Each is answered with the form of the language. */

import type { IToken } from "chevrotain";
import { rcdTypes } from "../../grammar/choices.ts";
import { endOf, isToken } from "../../grammar/lexer.ts";
import { valueAt } from "./fact-values.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Fix } from "./problems.ts";
import { capacityInAmps, problemAt, quantityProblem, removeFix, replaceFix, spanOf, writeFix } from "./refusals.ts";

/** B32, with A behind it or not, and what it trips at: in amperes below one, in milliamperes above. */
const wholeLabel = /^([BCD])[-/]?(\d+)A?(?:\/(\d+(?:\.\d+)?)A?)?$/i;

export function printedLabel(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!line.shape.slots.some(([, { accepts }]) => accepts.kind === "shorthand")) return typeAlone(line);
  return joinedLabel(line, token) ?? capitalType(line, token) ?? curveApart(line, token) ?? typeAlone(line);
}

function joinedLabel(line: LineBeingRead, token: IToken): Slip | undefined {
  const [, curve = "", rating = "", residual] = wholeLabel.exec(token.image) ?? [];
  if (rating === "" || line.args.curve) return undefined;
  const text = `${curve.toUpperCase()}${rating}`;
  const trips = residual === undefined ? undefined : `${milliamps(Number(residual))} mA`;
  const meant = trips === undefined ? text : `${text} ${trips}`;
  const message =
    trips === undefined
      ? `“${token.image}” is written ${text}.`
      : `“${token.image}” is written ${text}, and what it trips at apart, with its unit: ${trips}.`;
  return { problem: problemAt("wrong-argument", message, token, [replaceFix(token, meant)]), upTo: line.at + 1 };
}

const milliamps = (printed: number): number => Number((printed < 1 ? printed * 1000 : printed).toPrecision(6));

/** `32 A B` and `B 32`: the type stands before the rated current, as one word. */
function curveApart(line: LineBeingRead, token: IToken): Slip | undefined {
  if (!/^[BCDbcd]$/.test(token.image) || line.args.curve) return undefined;
  const curve = token.image.toUpperCase();
  const rated = ratingOf(line);
  const next = line.tokens[line.at + 1];
  const behind = next && /^(\d+)\s*A?$/.exec(next.image)?.[1];
  if (!rated && (!next || !behind)) return undefined;
  const text = `${curve}${rated?.value ?? behind}`;
  // `32 A B curve`: the name belongs to the letter.
  const named = line.tokens[line.at + (rated ? 1 : 2)];
  const isNamed = named !== undefined && /^(?:type|curve)$/i.test(named.image) && !isFollowed(line, named);
  const last = isNamed ? named : rated ? token : (next ?? token);
  const fix = rated ? moveFix(rated, token.startOffset, endOf(last), text) : writeFix(text, spanOf(token, last));
  const problem = problemAt("wrong-argument", `The type and the rated current are one word: ${text}.`, token, [fix]);
  return { problem, upTo: line.at + (rated ? 1 : 2) + (isNamed ? 1 : 0) };
}

/** Whether a letter stands behind it: it is the name of that one. */
const isFollowed = ({ tokens }: LineBeingRead, token: IToken): boolean =>
  /^[A-Z]{1,2}$/i.test(tokens[tokens.indexOf(token) + 1]?.image ?? "");

/** `10 A Type B`, `Type B 10 A`, `curve B 10 A`; `Type A` is that of an RCD. */
function capitalType(line: LineBeingRead, token: IToken): Slip | undefined {
  const letter = line.tokens[line.at + 1];
  if (!letter || !/^(?:type|curve|characteristic)$/i.test(token.image)) return undefined;
  const curve = letter.image.toUpperCase();
  const upTo = line.at + 2;
  const problem = (message: string, fix: Fix) => ({
    ...problemAt("wrong-argument", message, token, [fix]),
    end: endOf(letter),
  });
  const rated = line.args.curve ? undefined : (ratingOf(line) ?? ratingAhead(line));
  if (/^[BCD]$/.test(curve) && rated) {
    const text = `${curve}${rated.value}`;
    const fix = moveFix(rated, token.startOffset, endOf(letter), text);
    // A rated current behind it goes into the same word.
    const behind =
      rated.start > token.startOffset ? line.tokens.findIndex(({ startOffset }) => startOffset === rated.start) + 1 : 0;
    return {
      problem: problem(`The type and the rated current are one word: ${text}.`, fix),
      upTo: Math.max(upTo, behind),
    };
  }
  if (!Object.hasOwn(rcdTypes, curve) || !line.shape.labelled.has("type")) return undefined;
  const text = `type ${curve}`;
  return {
    problem: problem(`“${token.image} ${letter.image}” is written ${text}.`, writeFix(text, spanOf(token, letter))),
    upTo,
  };
}

/** `30 mA A`: a letter behind the residual current is the type by waveform. */
function typeAlone(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const letter = token.image.toUpperCase();
  if (!isToken(token, "Word") || !Object.hasOwn(rcdTypes, letter) || line.args.type) return undefined;
  if (!line.args.sensitivity || !line.shape.labelled.has("type")) return undefined;
  const message = `“${token.image}” alone is ambiguous: an RCD's type is written “type ${letter}”.`;
  return {
    problem: problemAt("wrong-argument", message, token, [replaceFix(token, `type ${letter}`)]),
    upTo: line.at + 1,
  };
}

/** `type B`, `type C`, `type 2`: a breaker's type, where the label of an RCD's stands. */
export function breakerType(line: LineBeingRead, label: IToken, token: IToken): Slip | undefined {
  if (!line.shape.slots.some(([, { accepts }]) => accepts.kind === "shorthand") || label.image !== "type")
    return undefined;
  const upTo = line.at + 1;
  if (/^[1-4]$/.test(token.image)) {
    const text = `type-${token.image}`;
    const message = `“type ${token.image}” of a BS 3871 breaker is written ${text}.`;
    return { problem: problemAt("wrong-argument", message, token, [writeFix(text, spanOf(label, token))]), upTo };
  }
  if (!/^[BCD]$/.test(token.image)) return undefined;
  const { curve } = line.args;
  if (token.image === "B" && curve) return undefined;
  const rated = ratingOf(line) ?? ratingAhead(line);
  if (token.image === "B" && !rated) return undefined;
  const text = `${token.image}${rated?.value ?? "32"}`;
  const fixes = rated ? [moveFix(rated, label.startOffset, endOf(token), text)] : [];
  const message = `The type of a breaker is written with its rated current, as ${text}; “type” is the waveform an RCD responds to.`;
  return { problem: { ...problemAt("wrong-argument", message, token, fixes), start: label.startOffset }, upTo };
}

/** What says how an RCD responds, on a device that does not say what it trips at. */
export function typeWithoutResidual(line: LineBeingRead): Slip["problem"] | undefined {
  const { type, sensitivity } = line.args;
  if (!type || sensitivity || !line.shape.slots.some(([name]) => name === "sensitivity")) return undefined;
  const index = line.tokens.findIndex(({ image }) => image === "type");
  const label = line.tokens[index];
  const token = line.tokens[index + 1];
  if (!label || !token) return undefined;
  const message = `“type ${token.image}” is that of an RCD, but this device states no rated residual current, such as 30 mA.`;
  const fix = {
    title: `Remove “type ${token.image}”`,
    edits: [removal(label.startOffset, endOf(token), line)],
    safe: false,
  };
  return { ...problemAt("wrong-argument", message, token, [fix]), start: label.startOffset };
}

/** `C32 4 A`: the type has the rated current with it. */
export function ratingTwice(line: LineBeingRead): Slip["problem"] | undefined {
  const { curve } = line.args;
  const rated = ratingOf(line);
  if (!rated || !curve || !("curve" in curve)) return undefined;
  const token = line.tokens.find(({ startOffset }) => startOffset === rated.start);
  if (!token) return undefined;
  if (!line.args.breaking && capacityInAmps.test(token.image)) return quantityProblem("breaking", token);
  const { rating, start, end } = curve;
  const label = `${curve.curve}${rating}`;
  const fix = removeFix(token.image, removal(rated.start, rated.end, line));
  if (rated.value === rating)
    return problemAt("wrong-argument", `“${label}” has the rated current with it: leave out “${token.image}”.`, token, [
      fix,
    ]);
  const other = `${curve.curve}${rated.value}`;
  const edits = [...fix.edits, { start, end, text: other }];
  return problemAt(
    "wrong-argument",
    `“${label}” is rated ${rating} A, and ${token.image} stands beside it: keep the one on the device.`,
    token,
    [fix, { title: `Write ${other}`, edits, safe: false }],
  );
}

interface Rated {
  readonly value: number;
  readonly start: number;
  readonly end: number;
}

function ratingOf(line: LineBeingRead): Rated | undefined {
  const rating = valueAt(line, "rating");
  return rating && "unit" in rating ? rating : undefined;
}

/** A rated current further along the line. */
function ratingAhead({ tokens, at }: LineBeingRead): Rated | undefined {
  for (const [ahead, token] of tokens.slice(at + 1).entries()) {
    // Of `Type B 20` the number beside it is the rating, though its unit is left out.
    const isBare = isToken(token, "Number") && ahead < 2;
    const value = /^(\d+(?:\.\d+)?)\s*A$/.exec(isBare ? `${token.image} A` : token.image)?.[1];
    if (value !== undefined) return { value: Number(value), start: token.startOffset, end: endOf(token) };
  }
  return undefined;
}

/** Writes the whole where the rated current stands and takes the type away where it stood. */
function moveFix(rated: Rated, start: number, end: number, text: string): Fix {
  const gone = rated.end < start ? { start: start - 1, end, text: "" } : { start, end: end + 1, text: "" };
  return { title: `Write ${text}`, edits: [{ start: rated.start, end: rated.end, text }, gone], safe: false };
}

/** A piece of a line with the blank before it. */
const removal = (start: number, end: number, { word }: LineBeingRead) => ({
  start: Math.max(endOf(word), start - 1),
  end,
  text: "",
});
