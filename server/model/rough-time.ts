/** Times nobody has the day of: 1985, 1985-06, about 1985, before 2001. Only honest for what is old, never for a test. */
import type { IToken } from "chevrotain";
import { roughTimes } from "../../grammar/choices.ts";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt } from "./refusals.ts";
import type { Val } from "./values.ts";

/** From the first installations to any that is built today. */
const year = /^(?:18[89]\d|19\d\d|20\d\d)(?:-(?:0[1-9]|1[0-2]))?$/;

const isYear = (token: IToken): boolean => year.test(token.image);

/** The time that is written from a token on, and how many tokens it takes. */
export function readRoughTime(
  tokens: readonly IToken[],
  at: number,
): { value: Val<string>; taken: number } | undefined {
  const [first, second] = [tokens[at], tokens[at + 1]];
  if (first && isYear(first)) {
    return { value: { value: first.image, start: first.startOffset, end: endOf(first) }, taken: 1 };
  }
  if (!first || !Object.hasOwn(roughTimes, first.image)) return undefined;
  if (!second || !(isYear(second) || isToken(second, "Date"))) return undefined;
  const value = `${first.image} ${second.image}`;
  return { value: { value, start: first.startOffset, end: endOf(second) }, taken: 2 };
}

/** `tested by "R.M." 1985`: a test has its day. */
export function yearForDay(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!line.free().some(([, { accepts }]) => accepts.kind === "date")) return undefined;
  const rough = readRoughTime(line.tokens, line.at);
  if (!rough) return undefined;
  const message = `The day is written here, such as 2026-03-05: “${rough.value.value}” is not enough.`;
  const problem = { ...problemAt("not-a-date", message, token), end: rough.value.end };
  return { problem, upTo: line.at + rough.taken };
}

/** `installed by "R.M." about`: a word that says nothing without its year. */
export function roughWithoutYear(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!Object.hasOwn(roughTimes, token.image)) return undefined;
  if (!line.free().some(([, { accepts }]) => accepts.kind === "roughTime")) return undefined;
  const message = `“${token.image}” is followed by the year, as in: ${token.image} 1985.`;
  return { problem: problemAt("missing-argument", message, token), upTo: line.tokens.length };
}
