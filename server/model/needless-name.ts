/** What a part of a line is called, where nothing but the part is written: `rating 100 A`, `size 16 mm²`. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, removeFix } from "./refusals.ts";
import { couldBe } from "./row-shape.ts";

const names: ReadonlySet<string> = new Set([
  "arrangement",
  "breaking",
  "capacity",
  "current",
  "impedance",
  "number",
  "poles",
  "power",
  "rated",
  "rating",
  "reading",
  "resistance",
  "sensitivity",
  "share",
  "size",
  "standard",
  "system",
  "value",
  "voltage",
]);

/** `cutout BS 88-3 rated current 100 A`: what stands behind it shows by itself what it is. */
export function needlessName(line: LineBeingRead): Slip | undefined {
  const ahead = line.tokens.slice(line.at);
  const count = ahead.findIndex((token) => !isName(token));
  const [first, next] = [ahead[0], ahead[count]];
  if (count < 1 || !first || !next) return undefined;
  const isMeant = line.free().some(([, { label, accepts }]) => label === undefined && couldBe(accepts, next));
  if (!isMeant) return undefined;
  const said = ahead
    .slice(0, count)
    .map(({ image }) => image)
    .join(" ");
  const message = `“${next.image}” is written without its name: leave out “${said}”.`;
  const fix = removeFix(said, { start: first.startOffset, end: next.startOffset });
  return { problem: problemAt("wrong-argument", message, first, [fix]), upTo: line.at + count };
}

const isName = (token: IToken): boolean => isToken(token, "Word") && names.has(token.image.toLowerCase());
