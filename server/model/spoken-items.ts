/** Items of an inspection as they are said: `4.1 to 4.9`, `4.1-4.9`, `all`. They are numbers, and anything else is none. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, writtenSo } from "./refusals.ts";
import type { Slot } from "./row-shape.ts";

const number = String.raw`\d+(?:\.\d+)*`;
const item = new RegExp(`^${number}(?:\\.\\.${number})?$`);
const joined = new RegExp(`^(${number})[-–](${number})$`);
const between = /^(?:to|-|–|until|through)$/i;

/** Whether a list of items takes a token: a departure's rule may be a word, and is one alone. */
export const isNoItem = ([, { many }]: Slot, { image }: IToken): boolean => many && !item.test(image);

export function spokenItems(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const list = line.free().find(([, { accepts, many, label }]) => accepts.kind === "rule" && many && !label);
  if (!list) return undefined;
  const [, from = "", upTo = ""] = joined.exec(token.image) ?? [];
  if (from !== "") return writtenSo(line, `${from}..${upTo}`, `“${token.image}” is written ${from}..${upTo}.`, token);
  const [before, after] = [line.tokens[line.at - 1], line.tokens[line.at + 1]];
  if (before && after && between.test(token.image) && item.test(before.image) && item.test(after.image)) {
    const text = `${before.image}..${after.image}`;
    return writtenSo(line, text, `“${before.image} ${token.image} ${after.image}” is written ${text}.`, before, after);
  }
  if (!isToken(token, "Word") || !/^(?:all|everything|items?|section)$/i.test(token.image)) return undefined;
  const message = `“${token.image}” names no item: write their numbers, as in: ${line.row.example}`;
  return { problem: problemAt("wrong-argument", message, token), upTo: line.at + 1 };
}
