/** A brace on a line below its word, read as if it ended the line of that word. */
import type { IToken } from "chevrotain";
import { isToken } from "./lexer.ts";
import { opening } from "./vocabulary.ts";

interface Lowered {
  /** Without the line ends between a word and its brace. */
  readonly joined: IToken[];
  readonly low: readonly IToken[];
}

export function lowered(tokens: IToken[]): Lowered {
  const low = tokens.filter((token, index) => isToken(token, "Open") && isNewLine(tokens[index - 1]));
  const found = low.filter((brace) => headOf(tokens, tokens.indexOf(brace)) !== undefined);
  if (found.length === 0) return { joined: tokens, low: [] };
  const dropped = new Set<IToken>();
  for (const brace of found)
    for (let at = tokens.indexOf(brace) - 1; isNewLine(tokens[at]); at--) dropped.add(tokens[at] as IToken);
  return { joined: tokens.filter((token) => !dropped.has(token)), low: found };
}

/** The word that begins the nearest line above a brace with anything on it, if it opens a block and has no brace there. */
function headOf(tokens: readonly IToken[], brace: number): IToken | undefined {
  let at = brace - 1;
  while (isNewLine(tokens[at])) at--;
  for (let token = tokens[at]; token && !isBrace(token); token = tokens[--at]) {
    const above = tokens[at - 1];
    if (above === undefined || isNewLine(above) || isToken(above, "Open")) {
      return isToken(token, "Word") && opening.has(token.image) ? token : undefined;
    }
  }
  return undefined;
}

const isNewLine = (token: IToken | undefined): boolean => token !== undefined && isToken(token, "NewLine");

const isBrace = (token: IToken): boolean => isToken(token, "Open") || isToken(token, "Close");
