/** A line or block of a schedule as it is merged. */
import { isToken } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import type { Statement } from "../../grammar/parser.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { spell } from "../format/spelling.ts";
import { bindArguments } from "../model/arguments.ts";
import { claimsOf, definedToken, keyOf, nameTokens } from "./key.ts";
import { type Sense, senseOf } from "./sense.ts";

/** A line, or a block with what is in it. */
export interface Item {
  readonly word: string;
  readonly row: WordRow | undefined;
  /** What tells it from others of its word in its block. */
  readonly key: string;
  /** What only one of its block may say: its own key, each number of a run of ways, a result beside a reading. */
  readonly claims: readonly string[];
  /** Word and key as a person would name it. */
  readonly name: string;
  /** What its line says besides, as it is spelt. */
  readonly says: string;
  /** Comments and blank lines above it, each with its line end. */
  readonly lead: readonly string[];
  /** Its line, or all its lines where it is taken as a whole; with line ends. */
  readonly head: string;
  /** Its line in the one spelling, with the comment behind it. */
  readonly spelt: string;
  /** As `spelt`, without the name it defines. */
  readonly rest: string;
  /** What its line says in base units; none where it was not understood. */
  readonly sense?: Sense;
  readonly title?: string;
  readonly body?: Body;
  /** Written on one line with its block. */
  readonly inline: boolean;
  readonly broken: boolean;
}

export interface Body {
  readonly kind: BlockKind;
  readonly items: readonly Item[];
  /** Comments and blank lines after the last item. */
  readonly tail: readonly string[];
  /** The line of its closing brace. */
  readonly close: string;
  /** The comment behind the closing brace. */
  readonly remark: string;
}

/** A statement's line without what stands round it. */
export type Heading = Omit<Item, "lead" | "head" | "body" | "inline">;

export function headingOf(kind: BlockKind, statement: Statement, comment: string, faulty = false, above = ""): Heading {
  const { word: token, args, block } = statement;
  const word = token.image;
  const row = rowOf(kind, word);
  const bound = row && bindArguments(token, row, args);
  const broken = faulty || !bound || bound.problems.length > 0;
  const defined = row && definedToken(row, bound, args);
  const behind = `${block ? " {" : ""}${comment === "" ? "" : ` ${comment}`}`;
  const text = args.find((arg) => isToken(arg, "Text"))?.image;
  const parts = { word, row, spelt: [token, ...args].map(spell).join(" ") + behind };
  const rest = [token, ...args.filter((arg) => arg !== defined)].map(spell).join(" ") + behind;
  const key = row && bound && (!broken || defined) ? keyOf(word, row, bound, above) : "";
  const named = row && bound ? nameTokens(row, bound, args) : [];
  return {
    ...parts,
    rest,
    key,
    claims: row && bound && !broken ? claimsOf(word, row, bound, key) : key === "" ? [] : [key],
    name: [token, ...named].map(spell).join(" "),
    says: args
      .filter((arg) => !named.includes(arg))
      .map(spell)
      .join(" "),
    ...(broken || !bound ? {} : { sense: senseOf(bound, comment, block !== undefined) }),
    ...(text === undefined ? {} : { title: text }),
    broken,
  };
}

interface Written {
  readonly lead: readonly string[];
  readonly head: string;
  readonly body?: Body;
  readonly inline?: boolean;
  readonly spelt?: string;
}

export const itemOf = (part: Heading, { lead, head, body, inline = false, spelt = part.spelt }: Written): Item => ({
  ...part,
  spelt,
  lead,
  head,
  ...(body ? { body } : {}),
  inline,
});

/** A line that begins with no word. */
export function wordless(text: string, lead: readonly string[]): Item {
  const spelt = text.trim();
  const part = {
    word: "",
    row: undefined,
    key: "",
    claims: [],
    name: spelt,
    says: spelt,
    spelt,
    rest: spelt,
    broken: true,
  };
  return itemOf(part, { lead, head: text });
}

export const bodyOf = (
  kind: BlockKind,
  items: readonly Item[],
  tail: readonly string[],
  close: string,
  remark: string,
): Body => ({ kind, items, tail, close, remark });

/** Whether two say the same with the same comments, in the same order. */
export const isSame = (a: Item, b: Item): boolean =>
  a === b || (isSameBelow(a, b) && remarksIn(a.lead) === remarksIn(b.lead));

/** The same, whatever stands above them. */
export const isSameBelow = (a: Item, b: Item): boolean =>
  a === b || (a.spelt === b.spelt && isSameBody(a.body, b.body));

export const isSameBody = (a: Body | undefined, b: Body | undefined): boolean =>
  a === b ||
  (a !== undefined &&
    b !== undefined &&
    a.remark === b.remark &&
    saysSame(a.items, b.items) &&
    remarksIn(a.tail) === remarksIn(b.tail));

export const saysSame = (a: readonly Item[], b: readonly Item[]): boolean =>
  a.length === b.length && a.every((item, index) => isSame(item, b[index] as Item));

/** What an item says but for the comments above it, as one text: equal texts mean the same. */
export const bare = ({ spelt, body }: Item): string =>
  body ? `${spelt}\n${body.items.map((item) => remarksIn(item.lead) + bare(item)).join("\n")}}${body.remark}` : spelt;

/** The comments among some lines. */
export const remarksIn = (lines: readonly string[]): string =>
  lines
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map((line) => `${line}\n`)
    .join("");
