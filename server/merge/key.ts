/** What tells the lines of a block apart. Nothing here compares how alike two lines are. */
import type { IToken } from "chevrotain";
import type { Param, WordRow } from "../../grammar/params.ts";
import { openedBy, rowOf } from "../../grammar/vocabulary.ts";
import type { BoundArguments } from "../model/arguments.ts";
import { saidBeside } from "../model/beside.ts";
import { itemsNamed } from "../model/inspections.ts";
import { wayRun } from "../model/way-run.ts";
import { amountText } from "./sense.ts";

type Args = BoundArguments["args"];

/** Kinds of argument that name what a line is about. */
const naming: ReadonlySet<string> = new Set(["define", "ref", "name", "rule", "choice", "text", "date"]);

/**
 * The word, and what tells two of it apart in one block. Lines of a word that nothing tells apart have one key between
 * them: they say one thing together, as the runs of a cable do.
 */
export function keyOf(word: string, row: WordRow, { args }: Pick<BoundArguments, "args">, above: string): string {
  if (row.follows !== undefined) return above === "" ? `${word} ${textOf(args.text)}` : above;
  return [word, ...keyNames(row).map((name) => textOf(args[name]))].join(" ");
}

/** Tests are of a day, made with some instruments by somebody: all of their first line tells them apart. */
export function isTests(row: WordRow | undefined): boolean {
  const opens = openedBy(row);
  return opens !== undefined && rowOf(opens, "struck-out") !== undefined;
}

function keyNames(row: WordRow): readonly string[] {
  if (row.reads) return row.reads.key;
  if (row.times === "once") return [];
  const all = Object.entries(row.params);
  if (isTests(row)) return all.map(([name]) => name);
  const needed = all.filter(([, param]) => isNaming(param));
  const names = needed.map(([name]) => name);
  const stated = row.key?.filter((name) => names.includes(name)) ?? [];
  if (stated.length > 0 && stated.length === row.key?.length) return stated;
  if (row.opens) return defines(needed) ?? names;
  return defines(needed) ?? texts(needed) ?? names.slice(0, 1);
}

type Slots = readonly (readonly [string, Param])[];

const ofKind =
  (kind: string) =>
  (slots: Slots): readonly string[] | undefined => {
    const found = slots.find(([, { accepts }]) => accepts.kind === kind);
    return found && [found[0]];
  };
const defines = ofKind("define");
const texts = ofKind("text");

const isNaming = ({ accepts, optional, many, label }: Param): boolean =>
  naming.has(accepts.kind) && !optional && !many && label === undefined;

const textOf = (value: Args[string] | undefined): string => {
  if (value === undefined) return "-";
  return Array.isArray(value) ? value.map(amountText).sort().join("+") : amountText(value);
};

/** The tokens of a line by which a person names it: what tells it from others, and of tests their day. */
export function nameTokens(row: WordRow, { args }: BoundArguments, tokens: readonly IToken[]): readonly IToken[] {
  const names = isTests(row) ? ["on"] : keyNames(row);
  const starts = new Set(names.flatMap((name) => [args[name] ?? []].flat().map(({ start }) => start)));
  return tokens.filter(({ startOffset }) => starts.has(startOffset));
}

/** The token that gives a block or a line its name. */
export function definedToken(
  row: WordRow,
  bound: BoundArguments | undefined,
  tokens: readonly IToken[],
): IToken | undefined {
  const name = Object.entries(row.params).find(([, { accepts }]) => accepts.kind === "define")?.[0];
  const value = name === undefined ? undefined : bound?.args[name];
  if (value === undefined || Array.isArray(value)) return undefined;
  return tokens.find(({ startOffset }) => startOffset === value.start);
}

export function claimsOf(word: string, row: WordRow, { args }: BoundArguments, key: string): readonly string[] {
  const [id] = textsIn(args.id);
  const run = row.opens === "way" && id !== undefined ? wayRun(id) : undefined;
  if (run) return run.map((number) => `${word} ${number}`);
  // No two observations of an inspection have one number, and no item two results.
  const numbers = textsIn(args.number).map((number) => `${word} #${number}`);
  const items = word === "inspected" ? textsIn(args.items).flatMap(itemsNamed) : [];
  const claims = [key, ...(row.opens ? [] : numbers), ...items.map((item) => `${word} ${item}`)];
  const beside = saidBeside({ word, args });
  // Of several RCDs each has a button of its own; what is said beside a test is said of the way's, or of that outlet's.
  if (beside === "test-button") return [...claims, `${beside} - ${textOf(args.point)}`];
  return beside === undefined ? claims : [...claims, beside];
}

const textsIn = (value: Args[string] | undefined): string[] =>
  [value ?? []].flat().flatMap((one) => ("value" in one ? [String(one.value)] : []));
