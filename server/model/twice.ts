import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { apart, saidBeside } from "./beside.ts";
import type { Fact } from "./values.ts";

/**
 * The word of a line that stands in a block already: one that stands once, or a result that stands once for each thing it
 * is of. Of two, one is wrong.
 */
export function writtenTwice(kind: BlockKind, fact: Fact, before: readonly Fact[]): string | undefined {
  return apart(fact).find((line) => {
    const row = rowOf(kind, line.word);
    const key = row?.times === "once" ? [] : row?.figures === "verdict" ? row.reads?.key : undefined;
    if (!key) return false;
    const says = ({ word, args }: Fact): boolean =>
      word === line.word && key.every((name) => alike(args[name], line.args[name]));
    return before.some(
      (other) => (other.word === line.word || saidBeside(other) === line.word) && apart(other).some(says),
    );
  })?.word;
}

/** Whether two arguments say the same, wherever they stand. */
const alike = (a: unknown, b: unknown): boolean => JSON.stringify(plainOf(a)) === JSON.stringify(plainOf(b));

const plainOf = (argument: unknown): unknown =>
  Array.isArray(argument)
    ? argument.map(plainOf)
    : ((argument as { readonly value?: unknown } | undefined)?.value ?? null);
