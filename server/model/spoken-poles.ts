/** How many poles a device opens, as it is said on site: `4P`, `3 pole`, `TP&N`. A number of poles is no current. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Fix } from "./problems.ts";
import { problemAt, spanOf, writeFix, writtenSo } from "./refusals.ts";

const byNumber: ReadonlyMap<string, string> = new Map([
  ["1", "single-pole"],
  ["2", "double-pole"],
  ["3", "three-pole"],
  ["4", "four-pole"],
  ["1+n", "double-pole"],
  ["3+n", "four-pole"],
]);

const byWord: ReadonlyMap<string, string> = new Map([
  ["one", "single-pole"],
  ["two", "double-pole"],
  ["three", "three-pole"],
  ["four", "four-pole"],
  ["triple", "three-pole"],
  ["quadruple", "four-pole"],
  ["sp", "single-pole"],
  ["dp", "double-pole"],
  ["tp", "three-pole"],
  ["fp", "four-pole"],
]);

/** `TP&N`: the neutral runs through the board, and may be opened or not. */
const withNeutral: ReadonlyMap<string, readonly string[]> = new Map([
  ["sp", ["single-pole", "double-pole"]],
  ["tp", ["three-pole", "four-pole"]],
]);

const joined = /^([1-4])-?p(?:oles?)?$/i;
const neutralJoined = /^([13])p\+n$/i;
const wordAndPole = /^(one|two|triple|quadruple)-?poles?$/i;
const neutralBeside = /^(sp|tp)(?:&|\+|and)?n$/i;

export function spokenPoles(line: LineBeingRead): Slip | undefined {
  const [first, second, third] = line.tokens.slice(line.at, line.at + 3);
  const takesPoles = line
    .free()
    .some(([, { accepts }]) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, "four-pole"));
  if (!first || !takesPoles) return undefined;
  const figure = first.image.replace(/\s+/g, "");
  return (
    openedOrNot(line, first, second, third) ??
    (second && /^poles?$/i.test(second.image) ? answer(line, polesOf(first), first, second) : undefined) ??
    (second && /^poles?$/i.test(first.image) ? answer(line, polesOf(second), first, second) : undefined) ??
    answer(line, byNumber.get(joined.exec(figure)?.[1] ?? ""), first) ??
    answer(line, byNumber.get(`${neutralJoined.exec(figure)?.[1] ?? ""}+n`), first) ??
    answer(line, byWord.get(wordAndPole.exec(first.image)?.[1]?.toLowerCase() ?? ""), first) ??
    answer(line, isToken(first, "Word") ? byWord.get(first.image.toLowerCase()) : undefined, first)
  );
}

const polesOf = ({ image }: IToken): string | undefined => byNumber.get(image) ?? byWord.get(image.toLowerCase());

/** `TPN`, `TP&N`, `TP & N`: three lines with a neutral, of which it is not said whether it opens. */
function openedOrNot(line: LineBeingRead, first: IToken, second?: IToken, third?: IToken): Slip | undefined {
  const whole = neutralBeside.exec(first.image)?.[1];
  const apart = second && third && /^[&+]$/.test(second.image) && /^n$/i.test(third.image) ? first.image : undefined;
  const choices = withNeutral.get((whole ?? apart ?? "").toLowerCase());
  const last = whole === undefined ? third : first;
  if (!choices || !last) return undefined;
  const span = spanOf(first, last);
  const said = line.tokens
    .slice(line.at, line.tokens.indexOf(last) + 1)
    .map(({ image }) => image)
    .join("");
  const fixes: readonly Fix[] = choices.map((one) => writeFix(one, span));
  const message = `“${said}” does not state whether the neutral opens: write ${choices[1]} where it does, ${choices[0]} where not.`;
  return {
    problem: { ...problemAt("wrong-argument", message, first, fixes), ...span },
    upTo: line.tokens.indexOf(last) + 1,
  };
}

function answer(line: LineBeingRead, poles: string | undefined, first: IToken, last = first): Slip | undefined {
  if (poles === undefined) return undefined;
  const said = first === last ? first.image : `${first.image} ${last.image}`;
  return writtenSo(line, poles, `“${said}” is written ${poles}.`, first, last);
}
