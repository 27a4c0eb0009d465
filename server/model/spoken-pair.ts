/** A pair of conductors as it is named on site: `L+N-E`, `LN/E`, `live to earth`, `L-PE`, for the labels of a line. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import { absences } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, spanOf, writeFix } from "./refusals.ts";

/** A name of a pair takes no more tokens than this. */
const mostTokens = 7;

export function spokenPair(line: LineBeingRead): Slip | undefined {
  if (!line.shape.labelled.has("L-E")) return undefined;
  const ahead = line.tokens.slice(line.at, line.at + mostTokens + 1);
  const count = ahead.findIndex(isFigure);
  const [first, last, figure] = [ahead[0], ahead[count - 1], ahead[count]];
  if (count < 1 || !first || !last || !figure) return undefined;
  const named = ahead.slice(0, count);
  const pair = pairOf(named.map(({ image }) => image).join(" "));
  if (!pair || !line.shape.labelled.has(pair.label)) return undefined;
  const joined = pair.joined && line.shape.plain.some(([name]) => name === "joined");
  const text = `${pair.label} ${figure.image}${joined ? " joined" : ""}`;
  const said = named.map(({ image }) => image).join(isGlued(named) ? "" : " ");
  const span = spanOf(first, figure);
  const message = `“${said}” is written ${pair.label}${joined ? ", with joined behind the figure" : ""}: ${text}.`;
  const problem = { ...problemAt("wrong-argument", message, first, [writeFix(text, span)]), ...span };
  return { problem, upTo: line.at + count + 1 };
}

/** A figure, or why there is none. */
const isFigure = (token: IToken): boolean =>
  isToken(token, "Quantity") || isToken(token, "Number") || Object.hasOwn(absences, token.image);

const isGlued = (tokens: readonly IToken[]): boolean =>
  tokens.every((token, at) => at === 0 || tokens[at - 1]?.endOffset === token.startOffset - 1);

const lineNames = /^(?:l[123]?|lives?|lines?|phases?|ph)$/;
const neutralNames = /^(?:n|neutral)$/;
const earthNames = /^(?:e|pe|cpc|earth)$/;

interface Pair {
  readonly label: "L-E" | "L-N" | "N-E";
  /** Line and neutral together against earth. */
  readonly joined: boolean;
}

function pairOf(said: string): Pair | undefined {
  const names = said
    .toLowerCase()
    .replace(/\bln\b/, "l n")
    .split(/[^\p{L}\d]+|\b(?:to|and)\b/u)
    .filter((name) => name !== "");
  const has = (kind: RegExp): boolean => names.some((name) => kind.test(name));
  const isAll = names[0] === "all";
  const known = names.every(
    (name, at) => [lineNames, neutralNames, earthNames].some((kind) => kind.test(name)) || (at === 0 && isAll),
  );
  if (!known || names.length < 2) return undefined;
  const [line, neutral, earth] = [has(lineNames), has(neutralNames), earthNames.test(names.at(-1) ?? "")];
  if (earth) return line || isAll ? { label: "L-E", joined: neutral || isAll } : { label: "N-E", joined: false };
  return line && neutral ? { label: "L-N", joined: false } : undefined;
}
