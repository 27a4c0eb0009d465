/** What each word of a file is, for colours: what the grammar of patterns can only guess, the vocabulary knows. */

import type { IToken } from "chevrotain";
import { roughTimes } from "../../grammar/choices.ts";
import { endOf } from "../../grammar/lexer.ts";
import type { Param, WordRow } from "../../grammar/params.ts";
import { parse, type Statement } from "../../grammar/parser.ts";
import { absences, type BlockKind, corrections, openedBy, provenances, rowOf } from "../../grammar/vocabulary.ts";
import { Memo } from "../memo/memo.ts";
import type { Segment } from "../syntax/split.ts";

export const tokenKinds = [
  "keyword",
  "class",
  "property",
  "enumMember",
  "variable",
  "number",
  "unit",
  "type",
  "string",
  "date",
  "rule",
] as const;

type TokenKind = (typeof tokenKinds)[number];

/** A stretch of a segment's text. `defines` marks a name where it is given. */
interface ColouredToken {
  readonly start: number;
  readonly length: number;
  readonly kind: TokenKind;
  readonly defines: boolean;
}

const kept = new Memo<Segment, { readonly within: BlockKind; readonly tokens: readonly ColouredToken[] }>();

/** The tokens of one segment, in the order of its text. They stay with it for as long as it does. */
export function tokensIn(segment: Segment, within: BlockKind): readonly ColouredToken[] {
  const before = kept.get(segment);
  if (before?.within === within) return before.tokens;
  const tokens: ColouredToken[] = [];
  for (const statement of parse(segment.text, segment.mends).statements) colour(within, statement, tokens);
  kept.set(segment, { within, tokens });
  return tokens;
}

function colour(kind: BlockKind, { word, args, block }: Statement, out: ColouredToken[]): void {
  const row = rowOf(kind, word.image);
  if (row) {
    out.push(token(word, row.opens ? "class" : "keyword"));
    for (const arg of args) out.push(...argument(row, arg));
  }
  const inner = openedBy(row);
  if (inner) for (const statement of block?.statements ?? []) colour(inner, statement, out);
}

const token = ({ startOffset, image }: IToken, kind: TokenKind, defines = false): ColouredToken => ({
  start: startOffset,
  length: image.length,
  kind,
  defines,
});

function argument(row: WordRow, arg: IToken): ColouredToken[] {
  switch (arg.tokenType.name) {
    case "Text":
      return text(arg);
    case "Date":
      return [token(arg, "date")];
    case "Standard":
      return [token(arg, "type")];
    case "Quantity":
      return figure(arg);
    case "Multiple":
      return [token(arg, "number")];
    case "Clause":
      return [token(arg, "rule")];
    case "Word":
    case "NumberWord":
    case "Number":
      return worded(Object.values(row.params), arg);
    default:
      return [];
  }
}

/** A text without its escapes, which the patterns colour by themselves. */
function text({ startOffset, image }: IToken): ColouredToken[] {
  return [...image.matchAll(/(?:[^\\]|\\[^"\\])+/g)].map(({ index, 0: { length } }) => ({
    start: startOffset + index,
    length,
    kind: "string",
    defines: false,
  }));
}

/** The number and its unit apart. */
function figure(arg: IToken): ColouredToken[] {
  const number = /^[<>]?[ \t]?[-−]?\d+(?:\.\d+)?/.exec(arg.image)?.[0] ?? "";
  const unit = arg.image.slice(number.length).trimStart();
  const unitStart = endOf(arg) - unit.length;
  return [
    { start: arg.startOffset, length: number.length, kind: "number", defines: false },
    ...(unit === "" ? [] : [{ start: unitStart, length: unit.length, kind: "unit" as const, defines: false }]),
  ];
}

function worded(params: readonly Param[], arg: IToken): ColouredToken[] {
  const { image } = arg;
  if (params.some((param) => param.label === image)) return [token(arg, "property")];
  if (params.some(({ accepts }) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, image))) {
    return [token(arg, "enumMember")];
  }
  if ([provenances, absences, corrections].some((words) => Object.hasOwn(words, image)))
    return [token(arg, "enumMember")];
  const kinds = new Set(params.map(({ accepts }) => accepts.kind));
  if (kinds.has("shorthand") && /^[BCD]\d+$/.test(image)) return [token(arg, "number")];
  if (kinds.has("roughTime") && Object.hasOwn(roughTimes, image)) return [token(arg, "enumMember")];
  // The number of an item has one point, as any number may; that of a regulation has more and is a token of its own.
  if (kinds.has("rule")) return [token(arg, arg.tokenType.name === "Number" ? "number" : "rule")];
  // Where a line also counts something, a plain number is taken for the count and not for the name.
  if (kinds.has("count") && arg.tokenType.name === "Number") return [token(arg, "number")];
  if (kinds.has("define")) return [token(arg, "variable", true)];
  const builtin = params.some(({ accepts }) => accepts.kind === "ref" && Object.hasOwn(accepts.builtin ?? {}, image));
  if (builtin) return [token(arg, "enumMember")];
  // The patterns cannot distinguish a name that is a plain number from a number.
  if (arg.tokenType.name === "Number") return [token(arg, "number")];
  return kinds.has("ref") || kinds.has("path") || kinds.has("name") ? [token(arg, "variable")] : [];
}
