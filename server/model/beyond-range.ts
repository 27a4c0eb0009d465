/** What a meter shows beyond its range, with the sign on the other side: `999+ MΩ`, `+999 MΩ`, `999 MΩ+`. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import { unitOf } from "../../grammar/units.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, spanOf, writeFix } from "./refusals.ts";

export function beyondRange(line: LineBeingRead): Slip | undefined {
  if (!line.shape.hasReading) return undefined;
  const [before, first, second, third] = [-1, 0, 1, 2].map((ahead) => line.tokens[line.at + ahead]);
  if (!first) return undefined;
  if (isPlus(second) && isFigure(first, "Number") && third && unitOf(third.image))
    return answer(line, `${first.image} ${third.image}`, first, third);
  if (isPlus(first) && isFigure(second, "Quantity")) return answer(line, second.image, first, second);
  if (isPlus(first) && isFigure(before, "Quantity")) return answer(line, before.image, before, first);
  return undefined;
}

const isPlus = (token: IToken | undefined): boolean => token?.image === "+";

const isFigure = (token: IToken | undefined, kind: "Number" | "Quantity"): token is IToken =>
  token !== undefined && isToken(token, kind) && /^\d/.test(token.image);

function answer(line: LineBeingRead, figure: string, first: IToken, last: IToken): Slip {
  const span = spanOf(first, last);
  const text = `>${figure}`;
  const message = `What is beyond the range of the meter is written ${text}.`;
  const problem = { ...problemAt("wrong-argument", message, first, [writeFix(text, span)]), ...span };
  return { problem, upTo: line.tokens.indexOf(last, Math.max(0, line.at - 1)) + 1 };
}
