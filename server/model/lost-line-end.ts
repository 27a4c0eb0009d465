/** A line that has lost its end: `Zs 0.62 Ω R1+R2 0.31 Ω`. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { facts, vocabulary } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt } from "./refusals.ts";

/** A word that names a fact, behind what its line says already: the rest is one fault, and not one a word. */
export const lostLineEnd = (line: LineBeingRead): Slip | undefined => crowdedAt(line, line.at);

/**
 * The same where the line would take a text or a name, which are any word: `load 3 kW power-factor 90 %` has lost no
 * quotes, and `cable flat-twin … length 20 m` names no type of cable. There it counts for facts of its own block alone.
 */
export function factBehind(line: LineBeingRead): Slip | undefined {
  const { word, row, tokens, token, at } = line;
  const rows = Object.values<Readonly<Record<string, WordRow>>>(vocabulary).find((block) => block[word.image] === row);
  const isFact = (one: IToken | undefined) => one !== undefined && rows && Object.hasOwn(rows, one.image);
  if (isFact(token)) return crowdedAt(line, at);
  // A figure behind it shows that it was taken for a name.
  return isFact(tokens[at - 1]) && !isToken(token, "Word") ? crowdedAt(line, at - 1) : undefined;
}

function crowdedAt({ word, tokens, shape }: LineBeingRead, at: number): Slip | undefined {
  const token = tokens[at];
  const before = at <= 0 ? undefined : tokens[at - 1];
  if (!token || !before || !isToken(token, "Word") || !facts.has(token.image)) return undefined;
  // One of this line's own words that stands there twice is another slip.
  if (token.image === word.image || shape.labelled.has(token.image)) return undefined;
  const message = `“${token.image}” begins a fact of its own: it stands on a line of its own, not behind “${word.image}”.`;
  const edits = [{ start: endOf(before), end: token.startOffset, text: "\n" }];
  const fixes = [{ title: "Put it on a line of its own", edits, safe: false }];
  return { problem: problemAt("crowded", message, token, fixes), upTo: tokens.length };
}
