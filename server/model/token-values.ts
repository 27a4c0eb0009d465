/** What single tokens say, whatever argument they become. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Val } from "./values.ts";

export const isName = (token: IToken): boolean =>
  isToken(token, "Word") || ((isToken(token, "NumberWord") || isToken(token, "Number")) && /^\d/.test(token.image));
export const isNumberLike = (token: IToken): boolean =>
  ["Number", "NumberWord", "Quantity", "Slip", "Endless", "Multiple"].includes(token.tokenType.name);
export const valOf = <T>(token: IToken, value: T): Val<T> => ({ value, start: token.startOffset, end: endOf(token) });

/** A name, with letters and their marks composed: two spellings that look alike are one name. */
export const nameOf = (token: IToken): Val<string> => valOf(token, token.image.normalize("NFC"));

/** The words of a text, without its quotes. */
export const textOf = (token: IToken): string => token.image.slice(1, -1).replace(/\\(["\\])/g, "$1");

/** One spelling for a standard: single blanks, none round a plus. */
export const normalStandard = (image: string): string =>
  image
    .replace(/[ \t]+/g, " ")
    .replace(/ ?\+ ?/g, "+")
    .replace(/^([A-Z]+(?: [A-Z]+)*)(?=\d)/, "$1 ");
