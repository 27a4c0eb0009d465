import { type IToken, Lexer } from "chevrotain";
import { type TokenName, tokenRows, tokenTypes } from "./tokens.ts";

/**
 * The last row of the token table takes any character, so lexing cannot fail; a test validates the definition. With
 * `tryAll` every pattern is tried at every sign, whatever the table says it can begin with.
 */
export function createLexer(validate: boolean, tryAll = false): Lexer {
  return new Lexer(
    tokenRows.map((row) => tokenTypes[row.name]),
    { positionTracking: "onlyOffset", skipValidations: !validate, ensureOptimizations: !tryAll, safeMode: tryAll },
  );
}

const lexer = createLexer(false);

interface Lexed {
  readonly tokens: IToken[];
  readonly comments: IToken[];
}

/** Tokens of any text, comments apart. Never throws and never leaves a character out but blanks. */
export function lex(text: string): Lexed {
  const { tokens, groups } = lexer.tokenize(text);
  return { tokens, comments: groups.comments ?? [] };
}

export const isToken = (token: IToken, name: TokenName): boolean => token.tokenType === tokenTypes[name];
export const endOf = (token: IToken): number => token.startOffset + token.image.length;
