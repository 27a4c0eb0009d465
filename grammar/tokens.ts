import { createToken, Lexer, type TokenType } from "chevrotain";
import { unitSpellings } from "./units.ts";

/** What a token is, and what colour it takes. Order matters to the lexer: the first that matches wins. */
export interface TokenRow {
  readonly name: string;
  readonly match: RegExp;
  /** The colouring scope; none where the vocabulary decides. */
  readonly scope?: string;
  readonly group?: string;
  readonly help: string;
}

const literally = (text: string) => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
const unit = `(?:${unitSpellings.map(literally).join("|")})`;
const number = String.raw`\d+(?:\.\d+)?`;
/** Letters of any script, with the marks that are put on them. */
export const letter = String.raw`\p{L}\p{M}`;
/** What may stand inside a word or a name. */
export const wordSign = String.raw`[${letter}\w+\-/.]`;
/** A word of the language, or a name. */
export const word = new RegExp(String.raw`[\p{L}_]${wordSign}*`, "u");
const unitEnd = String.raw`(?![${letter}\w²°℃%])`;

export const tokenRows = [
  { name: "Space", match: /[^\S\r\n]+/, group: Lexer.SKIPPED, help: "Blanks between words." },
  { name: "NewLine", match: /\r\n|\n|\r/, help: "Ends a statement." },
  {
    name: "Comment",
    match: /#[^\r\n]*/,
    scope: "comment.line.number-sign",
    group: "comments",
    help: "A comment, to the end of its line.",
  },
  {
    name: "Conflict",
    match: /(?<![^\r\n])(?:<{7}|>{7}|={7}|\|{7})[^\r\n]*/,
    scope: "invalid.illegal.conflict",
    help: "A merge conflict marker.",
  },
  {
    name: "Text",
    match: /"(?:[^"\\\r\n]|\\[^\r\n])*"/,
    scope: "string.quoted.double",
    help: 'Words in double quotes; \\" for a quote inside, \\\\ for a backslash.',
  },
  {
    name: "OpenText",
    match: /"(?:\\[^\r\n{}]|[^"\r\n{}])*/,
    scope: "invalid.illegal.string",
    help: "A text that lost its closing quote.",
  },
  { name: "Open", match: /\{/, scope: "punctuation.section.block.begin", help: "Begins a block." },
  { name: "Close", match: /\}/, scope: "punctuation.section.block.end", help: "Ends a block." },
  {
    name: "Date",
    match: /\d{4}-\d{2}-\d{2}(?![\w.-])/,
    scope: "constant.numeric.date",
    help: "A day: year-month-day.",
  },
  {
    name: "Standard",
    match:
      /(?:BS|EN|IEC|ISO|PD)(?:[ \t]+(?:EN|IEC|ISO|HD))*[ \t]*\d{2,6}(?:[-.]\d+)*(?::\d{4})?(?:[ \t]*\+[ \t]*A\d+(?::\d{4})?)*(?![\w.])/,
    scope: "entity.name.type.standard",
    help: "A standard as the trade writes it.",
  },
  {
    name: "Multiple",
    match: new RegExp(`(?:½|${number})[x×](?![${letter}\\w])`, "u"),
    scope: "constant.numeric.multiple",
    help: "A multiple of the rated residual current: 1x.",
  },
  {
    name: "Quantity",
    match: new RegExp(`[<>]?[ \\t]?[-−]?${number}[^\\S\\r\\n]*${unit}${unitEnd}`, "u"),
    scope: "constant.numeric.quantity",
    help: "A number with its unit.",
  },
  {
    name: "Slip",
    match: new RegExp(
      `[<>]?[ \\t]?[-−]?(?:\\d+,\\d+|\\.\\d+|[oO]\\.\\d+|0[oO]\\d*)(?:[^\\S\\r\\n]*${unit}${unitEnd})?`,
      "u",
    ),
    scope: "invalid.illegal.number",
    help: "A number with a slip of the pen: 0,45 or .45 or O.45.",
  },
  { name: "Clause", match: /\d+(?:\.\d+){2,}(?!\w)/, scope: "entity.name.type.rule", help: "A regulation's number." },
  {
    name: "Number",
    match: new RegExp(`[<>]?[ \\t]?[-−]?${number}(?![${letter}\\w.]|[+/-][${letter}\\w])`, "u"),
    scope: "constant.numeric",
    help: "A number without a unit.",
  },
  {
    name: "NumberWord",
    match: new RegExp(`[<>]?[ \\t]?\\d${wordSign}*`, "u"),
    help: "A name that begins with a digit.",
  },
  {
    name: "Endless",
    match: /[<>]?[ \t]?(?:∞|OL\b|O\/R\b|O\/L\b|OR\b)/,
    scope: "invalid.illegal.reading",
    help: "A sign for off scale that loses the range.",
  },
  {
    name: "Word",
    match: word,
    help: "A word of the language, or a name.",
  },
  { name: "Stray", match: /[^\s]/, scope: "invalid.illegal", help: "A character that means nothing here." },
] as const satisfies readonly TokenRow[];

export type TokenName = (typeof tokenRows)[number]["name"];

/** All signs below U+10000; halves of pairs are none. */
const plane = Array.from({ length: 0x10000 }, (_, code) =>
  code >= 0xd800 && code < 0xe000 ? " " : String.fromCharCode(code),
).join("");

/** Signs of a property as the ranges of a character class. */
const rangesOf = (stretches: RegExp): string =>
  Array.from(
    plane.matchAll(stretches),
    ({ index, 0: { length } }) => `${escaped(index)}-${escaped(index + length - 1)}`,
  ).join("");

const escaped = (code: number): string => `\\u${code.toString(16).padStart(4, "0")}`;

/** chevrotain drops the flag by which letters of every script are known, and without it the engine is faster: so they are written out. */
function patternOf(match: RegExp): RegExp {
  if (!match.unicode) return match;
  const source = match.source
    .replaceAll(letter, `${ranges.letters}${ranges.marks}`)
    .replaceAll(String.raw`\p{L}`, ranges.letters);
  return new RegExp(source);
}

const ranges = { letters: rangesOf(/\p{L}+/gu), marks: rangesOf(/\p{M}+/gu) };

export const tokenTypes = Object.fromEntries(
  tokenRows.map((row: TokenRow) => [
    row.name,
    createToken({
      name: row.name,
      pattern: patternOf(row.match),
      line_breaks: row.name === "NewLine",
      ...(row.group ? { group: row.group } : {}),
    }),
  ]),
) as Record<TokenName, TokenType>;
