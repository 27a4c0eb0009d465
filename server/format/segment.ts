import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import { type Parsed, parse, type Statement } from "../../grammar/parser.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { bindArguments } from "../model/arguments.ts";
import type { Segment } from "../syntax/split.ts";
import { itemsOf } from "./items.ts";
import { layOut } from "./layout.ts";
import { spell, spellLine } from "./spelling.ts";

/** Where a segment stands, as far as its layout depends on it. */
export interface Setting {
  readonly within: BlockKind;
  readonly depth: number;
  readonly blankFirst: boolean;
  readonly blankLast: boolean;
}

/** The lines of a segment in the one style, or nothing where it is left as it stands. */
export function formatSegment(segment: Segment, setting: Setting): string[] | undefined {
  if (segment.fault) return undefined;
  const before = parse(segment.text);
  const lines = laidOut(segment, before, setting);
  if (!lines) return undefined;
  const text = lines.map((line) => `${line}\n`).join("");
  if (text === segment.text) return lines;
  const after = parse(text);
  return sameMeaning(before, after) && isSettled({ ...segment, text }, after, setting) ? lines : undefined;
}

function laidOut(segment: Segment, parsed: Parsed, setting: Setting): string[] | undefined {
  if (segment.kind === "open") return openLine(parsed, setting);
  if (segment.kind === "close") return closeLine(segment.text, setting);
  const read = itemsOf(segment.text, parsed, setting.within);
  return read && layOut(read.items, { ...setting, kind: setting.within, sort: read.sound });
}

function openLine({ statements, faults, comments }: Parsed, { within, depth }: Setting): string[] | undefined {
  const [statement, ...others] = statements;
  const row = statement && rowOf(within, statement.word.image);
  if (!row || others.length > 0 || faults.length > 1 || !statement.block || statement.block.statements.length > 0) {
    return undefined;
  }
  if (bindArguments(statement.word, row, statement.args).problems.length > 0) return undefined;
  const { args } = spellLine(statement.word, statement.args, row, within);
  const comment = comments[0] ? `  ${comments[0].image.trimEnd()}` : "";
  return [`${"  ".repeat(depth)}${statement.word.image} ${args}${args === "" ? "" : " "}{${comment}`];
}

function closeLine(text: string, { depth }: Setting): string[] | undefined {
  const match = /^\s*\}\s*(#.*)?$/.exec(text.trimEnd());
  return match ? [`${"  ".repeat(depth)}}${match[1] ? `  ${match[1]}` : ""}`] : undefined;
}

/** A second pass would change nothing. */
function isSettled(segment: Segment, parsed: Parsed, setting: Setting): boolean {
  const again = laidOut(segment, parsed, setting);
  return again !== undefined && again.map((line) => `${line}\n`).join("") === segment.text;
}

/** The same statements, word for word, in the same blocks; the same comments; nothing lost beside them. */
function sameMeaning(before: Parsed, after: Parsed): boolean {
  return (
    before.faults.length === after.faults.length &&
    meaning(before.statements) === meaning(after.statements) &&
    sorted(before.comments.map((token) => token.image.trimEnd())) ===
      sorted(after.comments.map((token) => token.image.trimEnd())) &&
    sorted(spelt(before.tokens)) === sorted(spelt(after.tokens))
  );
}

const meaning = (statements: readonly Statement[]): string =>
  sorted(
    statements.map(({ word, args, block }) => {
      const words = [word, ...args].map(spell).join("\u0000");
      return block ? `${words}{${meaning(block.statements)}}` : words;
    }),
  );

const spelt = (tokens: readonly IToken[]): string[] =>
  tokens.filter((token) => !isToken(token, "NewLine")).map((token) => spell(token));

const sorted = (texts: string[]): string => texts.sort().join("\u0001");
