/** A line that has lost its end: `Zs 0.62 Ω R1+R2 0.31 Ω`. */
import { endOf, isToken } from "../../grammar/lexer.ts";
import { facts } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt } from "./refusals.ts";

/** A word that names a fact, behind what its line says already: the rest is one fault, and not one a word. */
export function lostLineEnd({ word, tokens, at, shape }: LineBeingRead): Slip | undefined {
  const token = tokens[at];
  const before = at === 0 ? undefined : tokens[at - 1];
  if (!token || !before || !isToken(token, "Word") || !facts.has(token.image)) return undefined;
  // One of this line's own words that stands there twice is another slip.
  if (token.image === word.image || shape.labelled.has(token.image)) return undefined;
  const message = `“${token.image}” begins a fact of its own: it stands on a line of its own, not behind “${word.image}”.`;
  const edits = [{ start: endOf(before), end: token.startOffset, text: "\n" }];
  const fixes = [{ title: "Put it on a line of its own", edits, safe: false }];
  return { problem: problemAt("crowded", message, token, fixes), upTo: tokens.length };
}
