import { createToken, Lexer, type TokenType } from "chevrotain";
import { letters, marks } from "./letters.ts";
import { unitSpellings } from "./units.ts";

/** What a token is, and what colour it takes. Order matters to the lexer: the first that matches wins. */
export interface TokenRow {
  readonly name: string;
  readonly match: RegExp;
  /** The signs it can begin with, so that no other pattern is tried there; any sign where there are none. */
  readonly starts?: string;
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

const digits = "0123456789";
const figures = `<> \t-−${digits}`;
const blanks =
  " \t\v\f\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u2028\u2029\u202f\u205f\u3000\ufeff";

/** Every sign, as far as the lexer distinguishes them: beyond the first 256 it takes 255 together. */
const anySign = [
  ...Array.from({ length: 257 }, (_, code) => code),
  ...Array.from({ length: 256 }, (_, group) => (group + 2) * 255).filter((code) => code < 0x10000),
];
const inAscii = (code: number): boolean => code < 0x80;
/** Beyond ASCII any sign may be a letter. */
const wordStarts = String.fromCharCode(
  ...anySign.filter((code) => !inAscii(code) || /[A-Za-z_]/.test(String.fromCharCode(code))),
);

export const tokenRows = [
  { name: "Space", starts: blanks, match: /[^\S\r\n]+/, group: Lexer.SKIPPED, help: "Blanks between words." },
  { name: "NewLine", starts: "\r\n", match: /\r\n|\n|\r/, help: "Ends a statement." },
  {
    name: "Comment",
    starts: "#",
    match: /#[^\r\n]*/,
    scope: "comment.line.number-sign",
    group: "comments",
    help: "A comment, to the end of its line.",
  },
  {
    name: "Conflict",
    starts: "<>=|",
    match: /(?<![^\r\n])(?:<{7}|>{7}|={7}|\|{7})[^\r\n]*/,
    scope: "invalid.illegal.conflict",
    help: "A merge conflict marker.",
  },
  {
    name: "Text",
    starts: '"',
    match: /"(?:[^"\\\r\n]|\\[^\r\n])*"/,
    scope: "string.quoted.double",
    help: 'Words in double quotes; \\" for a quote inside, \\\\ for a backslash.',
  },
  {
    name: "OpenText",
    starts: '"',
    match: /"(?:\\[^\r\n{}]|[^"\r\n{}])*/,
    scope: "invalid.illegal.string",
    help: "A text that lost its closing quote.",
  },
  { name: "Open", starts: "{", match: /\{/, scope: "punctuation.section.block.begin", help: "Begins a block." },
  { name: "Close", starts: "}", match: /\}/, scope: "punctuation.section.block.end", help: "Ends a block." },
  {
    name: "Date",
    starts: digits,
    match: /\d{4}-\d{2}-\d{2}(?![\w.-])/,
    scope: "constant.numeric.date",
    help: "A day: year-month-day.",
  },
  {
    name: "Standard",
    starts: "BEIP",
    match:
      /(?:BS|EN|IEC|ISO|PD)(?:[ \t]+(?:EN|IEC|ISO|HD))*[ \t]*\d{2,6}(?:[-.]\d+)*(?::\d{4})?(?:[ \t]*\+[ \t]*A\d+(?::\d{4})?)*(?![\w.])/,
    scope: "entity.name.type.standard",
    help: "A standard as the trade writes it.",
  },
  {
    name: "Multiple",
    starts: `½${digits}`,
    match: new RegExp(`(?:½|${number})[x×](?![${letter}\\w])`, "u"),
    scope: "constant.numeric.multiple",
    help: "A multiple of the rated residual current: 1x.",
  },
  {
    name: "Quantity",
    starts: figures,
    match: new RegExp(`[<>]?[ \\t]?[-−]?${number}[^\\S\\r\\n]*${unit}${unitEnd}`, "u"),
    scope: "constant.numeric.quantity",
    help: "A number with its unit.",
  },
  {
    name: "Slip",
    starts: `${figures}.oO`,
    match: new RegExp(
      `[<>]?[ \\t]?[-−]?(?:\\d+,\\d+|\\.\\d+|[oO]\\.\\d+|0[oO]\\d*)(?:[^\\S\\r\\n]*${unit}${unitEnd})?`,
      "u",
    ),
    scope: "invalid.illegal.number",
    help: "A number with a slip of the pen: 0,45 or .45 or O.45.",
  },
  {
    name: "Clause",
    starts: digits,
    match: /\d+(?:\.\d+){2,}(?!\w)/,
    scope: "entity.name.type.rule",
    help: "A regulation's number.",
  },
  {
    name: "Number",
    starts: figures,
    match: new RegExp(`[<>]?[ \\t]?[-−]?${number}(?![${letter}\\w.]|[+/-][${letter}\\w])`, "u"),
    scope: "constant.numeric",
    help: "A number without a unit.",
  },
  {
    name: "NumberWord",
    starts: `<> \t${digits}`,
    match: new RegExp(`[<>]?[ \\t]?\\d${wordSign}*`, "u"),
    help: "A name that begins with a digit.",
  },
  {
    name: "Endless",
    starts: "<> \t∞O",
    match: /[<>]?[ \t]?(?:∞|OL\b|O\/R\b|O\/L\b|OR\b)/,
    scope: "invalid.illegal.reading",
    help: "A sign for off scale that loses the range.",
  },
  {
    name: "Word",
    starts: wordStarts,
    match: word,
    help: "A word of the language, or a name.",
  },
  { name: "Stray", match: /[^\s]/, scope: "invalid.illegal", help: "A character that means nothing here." },
] as const satisfies readonly TokenRow[];

export type TokenName = (typeof tokenRows)[number]["name"];

/** chevrotain drops the flag by which letters of every script are known, and without it the engine is faster: so they are written out. */
function patternOf(match: RegExp): RegExp {
  if (!match.unicode) return match;
  const source = match.source.replaceAll(letter, `${letters}${marks}`).replaceAll(String.raw`\p{L}`, letters);
  return new RegExp(source);
}

/** What may stand behind a word, and what of it is none: one kind each for the parser, which then asks once. */
export const argumentType = createToken({ name: "Argument", pattern: Lexer.NA });
export const wordlessType = createToken({ name: "Wordless", pattern: Lexer.NA });

const structure: ReadonlySet<string> = new Set(["Space", "Comment", "NewLine", "Open", "Close", "Conflict"]);

const kindsOf = (name: string): TokenType[] =>
  structure.has(name) ? [] : name === "Word" ? [argumentType] : [argumentType, wordlessType];

export const tokenTypes = Object.fromEntries(
  tokenRows.map((row: TokenRow) => [
    row.name,
    createToken({
      name: row.name,
      pattern: patternOf(row.match),
      categories: kindsOf(row.name),
      line_breaks: row.name === "NewLine",
      start_chars_hint: row.starts === undefined ? anySign : Array.from(row.starts, (sign) => sign.charCodeAt(0)),
      ...(row.group ? { group: row.group } : {}),
    }),
  ]),
) as Record<TokenName, TokenType>;
