/** The two sides of a trunking as they are written on site: `50x50`, `100 mm x 50 mm`. */
import type { IToken } from "chevrotain";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, removeFix, spanOf, writtenSo } from "./refusals.ts";

const both = /^(\d+)(?:mm)?x(\d+)(?:mm)?$/i;
const side = /^(\d+)\s*(?:mm)?$/i;

interface Sides {
  readonly wide: string;
  readonly deep: string;
  readonly first: IToken;
  readonly last: IToken;
}

export function twoSides(line: LineBeingRead): Slip | undefined {
  const word = line.word.image;
  if (word !== "containment" && word !== "route") return undefined;
  const whole = together(line);
  const found = whole ?? apart(line);
  if (!found) return undefined;
  if (word === "route") return ofRoute(line, found);
  const { wide, deep, first, last } = found;
  const written = `${wide} mm by ${deep} mm`;
  const text = whole ? written : `by ${deep} mm`;
  const said = first === last ? first.image : `${first.image} ${last.image}`;
  return writtenSo(line, text, `“${said}” is written ${text}.`, first, last);
}

/** `route trunking 50 mm by 50 mm`: there, what follows `by` is the book of a factor. */
export function depthBehind(line: LineBeingRead, label: IToken): Slip | undefined {
  const { tokens, token: last, word } = line;
  const before = tokens[tokens.indexOf(label) - 1];
  const wide = before && side.exec(before.image)?.[1];
  const deep = side.exec(last.image)?.[1];
  if (word.image !== "route" || label.image !== "by" || !wide || !deep) return undefined;
  return ofRoute(line, { wide, deep, first: label, last });
}

function ofRoute(line: LineBeingRead, { wide, deep, first, last }: Sides): Slip {
  const span = spanOf(first, last);
  const written = `${wide} mm by ${deep} mm`;
  const message = `The two sides of a trunking are written where it is described, for all circuits in it: containment T1 trunking ${written}. The route then says in T1.`;
  const problem = { ...problemAt("wrong-argument", message, first, [removeFix("its sides", span)]), ...span };
  return { problem, upTo: line.tokens.indexOf(last, line.at) + 1 };
}

/** `50x50`, with or without its unit behind. */
function together({ tokens, token: first, at }: LineBeingRead): Sides | undefined {
  const unit = tokens[at + 1];
  const [, wide, deep] = both.exec(first.image) ?? [];
  if (!wide || !deep) return undefined;
  return { wide, deep, first, last: unit?.image === "mm" ? unit : first };
}

/** `x 50 mm` behind a width that was taken. */
function apart({ tokens, token: first, at }: LineBeingRead): Sides | undefined {
  const [before, last] = [tokens[at - 1], tokens[at + 1]];
  const wide = before && side.exec(before.image)?.[1];
  const deep = last && side.exec(last.image)?.[1];
  if (!last || !wide || !deep || !/^x$/i.test(first.image)) return undefined;
  return { wide, deep, first, last };
}
