/** The way a cable goes: places with a length between each two. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import { closeFitting } from "../memo/close-fitting.ts";
import type { Problem } from "./problems.ts";
import { readAs, readWritten } from "./quantity.ts";
import { problemAt } from "./refusals.ts";
import { isName, nameOf } from "./token-values.ts";
import type { Leg, Path } from "./values.ts";

const shape = "A run goes from place to place with a length between: A 7 m S1 6 m S2.";

/** Takes all that is left of the line, for nothing else can follow a path. */
export function readPath(
  first: IToken,
  rest: readonly IToken[],
): { readonly path: Path } | { readonly problem: Problem } {
  const legs: Leg[] = [];
  for (let at = 0; at < rest.length; at += 2) {
    const leg = readLeg(rest[at] as IToken, rest[at + 1]);
    if ("problem" in leg) return leg;
    legs.push(leg);
  }
  if (legs.length === 0) return { problem: problemAt("missing-argument", shape, first) };
  const end = legs.at(-1)?.to.end ?? endOf(first);
  return { path: { from: nameOf(first), legs: closeFitting(legs), start: first.startOffset, end } };
}

function readLeg(length: IToken, to: IToken | undefined): Leg | { readonly problem: Problem } {
  const written = isToken(length, "Quantity") ? readWritten(length.image, length.startOffset) : undefined;
  if (!written) return { problem: noLength(length) };
  const read = readAs(written, "length");
  if ("problem" in read) return read;
  if (to && isName(to)) return { length: read.quantity, to: nameOf(to) };
  const message = `The run has no point after ${length.image}.`;
  return { problem: problemAt("missing-argument", message, to ?? length) };
}

function noLength(token: IToken): Problem {
  if (!isToken(token, "Number")) return problemAt("wrong-argument", shape, token);
  const edits = [{ start: endOf(token), end: endOf(token), text: " m" }];
  return problemAt("missing-unit", shape, token, [{ title: `Write ${token.image} m`, edits, safe: false }]);
}
