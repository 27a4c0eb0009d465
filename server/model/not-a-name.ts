/**
 * A name may be almost any word or number, so a slip could always be taken for one. These are the cases in which the
 * rest of the line shows that something else was meant: a trip time without its unit is no RCD called 24.
 */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import { unitSpellings } from "../../grammar/units.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Problem } from "./problems.ts";
import { problemAt, quantityProblem, writtenSo } from "./refusals.ts";
import { type Slot, says } from "./row-shape.ts";
import { phrase, spokenAbsence } from "./site-phrases.ts";
import { spokenCable } from "./spoken-cable.ts";
import { isRamp, isTickForFigure } from "./spoken-result.ts";
import { wordForSiteTerm } from "./suggestions.ts";

/** Whether the token at hand is something else than the name of this parameter. */
export function meansNoName(line: LineBeingRead, [, { optional }]: Slot): boolean {
  const { token } = line;
  if (!optional) return false;
  return (
    isBareFigure(line, token) ||
    isFigureOfUnit(line, token) ||
    isTwoTimes(line, token) ||
    spokenAbsence(line) !== undefined ||
    isMultipleTurned(line, token) ||
    isHalfCycle(line, token) ||
    isResult(line, token) ||
    isWaveform(line, token) ||
    isTickForFigure(line) ||
    isRamp(line) ||
    phrase(line) !== undefined ||
    spokenCable(line) !== undefined ||
    (line.tokens[line.at - 1]?.image === "in" && routeMeant(line, token) !== undefined)
  );
}

/** A number that is not the first of its line, while a figure is still wanted. */
function isBareFigure(line: LineBeingRead, token: IToken): boolean {
  if (!isToken(token, "Number") || line.at === 0) return false;
  return line.free().some(([, { accepts, label }]) => accepts.kind === "quantity" && label === undefined);
}

/** `rcd 30 ma`: a figure before a unit in other capitals. */
function isFigureOfUnit(line: LineBeingRead, token: IToken): boolean {
  const unit = line.tokens[line.at + 1]?.image.toLowerCase();
  return isToken(token, "Number") && unitSpellings.some((spelling) => spelling.toLowerCase() === unit);
}

/** `rcd 24/12`: the times at 1 × and 5 × IΔn, as some sheets have them in one box. */
const isTwoTimes = (line: LineBeingRead, { image }: IToken): boolean =>
  /^\d+(?:\.\d+)?\/\d+(?:\.\d+)?$/.test(image) &&
  line.shape.slots.some(([, { accepts }]) => accepts.kind === "multiple");

/** Two times in one: which was made at which current is not for a program to say. */
export function twoTimes(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!isTwoTimes(line, token)) return undefined;
  const message = `“${token.image}” is two times: each has a line of its own with its multiple, such as 1x and 5x, and ms.`;
  return { problem: problemAt("wrong-argument", message, token), upTo: line.tokens.length };
}

/** `rcd 30 mA 1x 25 ms 180`: the half cycle that the test began with. */
const isHalfCycle = (line: LineBeingRead, { image }: IToken): boolean =>
  /^(?:0|180)$/.test(image) && line.args.time !== undefined && line.args.half === undefined;

const turned = /^[x×](\d|½)/;

const isMultipleTurned = (line: LineBeingRead, token: IToken): boolean =>
  turned.test(token.image) && line.shape.slots.some(([, { accepts }]) => accepts.kind === "multiple");

/** `trip-current 40 mA ac`, behind its figure. */
const isWaveform = (line: LineBeingRead, { image }: IToken): boolean =>
  line.at > 0 &&
  line
    .free()
    .some(
      ({ 1: { accepts } }) =>
        accepts.kind === "choice" &&
        Object.hasOwn(accepts.choices, "sinusoidal") &&
        wordForSiteTerm(image, Object.keys(accepts.choices)) !== undefined,
    );

/** A result in other words, `OK` or `pass`, where no other word of the line gives one. */
function isResult(line: LineBeingRead, token: IToken): boolean {
  const results = line.free().filter(([, { accepts, optional }]) => accepts.kind === "choice" && !optional);
  const later = line.tokens.slice(line.at + 1);
  return results.some((slot) => {
    const { accepts } = slot[1];
    if (accepts.kind !== "choice" || later.some((other) => says(slot, other))) return false;
    const words = Object.keys(accepts.choices);
    return words.includes(token.image.toLowerCase()) || wordForSiteTerm(token.image, words) !== undefined;
  });
}

/** `trip-current 22`: the only number of the line was taken for a name, and the figure is missing. */
export function figureTakenForName(line: LineBeingRead, missing: readonly Slot[]): Problem | undefined {
  const wanted = missing.find(([, { accepts }]) => accepts.kind === "quantity")?.[1].accepts;
  const [only, ...others] = line.tokens;
  if (wanted?.kind !== "quantity" || !only || others.length > 0 || !isToken(only, "Number")) return undefined;
  return quantityProblem(wanted.of, only);
}

/** `x1` for `1x`. */
export function multipleTurned(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!isMultipleTurned(line, token)) return undefined;
  const text = `${token.image.slice(1)}x`;
  // Behind another multiple it begins a test of its own, with all that follows.
  const isFirst = line.free().some(([, { accepts }]) => accepts.kind === "multiple");
  if (!isFirst) {
    const slip = writtenSo(line, text, `“${token.image}” is written ${text}, on a line of its own.`, token);
    return { ...slip, upTo: line.tokens.length };
  }
  return writtenSo(line, text, `The multiple of the rated residual current is written ${text}.`, token);
}

/** How a cable runs, where that is not stated yet: `in wall`, `in loft`. */
export function routeMeant(line: LineBeingRead, { image }: IToken): string | undefined {
  for (const [, { accepts, label }] of line.free()) {
    if (label !== undefined || accepts.kind !== "choice" || !Object.hasOwn(accepts.choices, "free-air")) continue;
    const words = Object.keys(accepts.choices);
    return words.includes(image) ? image : wordForSiteTerm(image, words);
  }
  return undefined;
}
