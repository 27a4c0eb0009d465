/** What a block says, by what a person calls each line, so that two versions of it can stand beside each other. */
import { type BlockKind, rowOf } from "../../../grammar/vocabulary.ts";
import { type Test, testsOf } from "../../circuit/supply.ts";
import type { Fact, Facts, Span } from "../../model/values.ts";
import { written, writtenValue } from "../common/written.ts";

/** Remarks are no part of what was built or read. */
const isRemark = (kind: BlockKind, word: string): boolean => rowOf(kind, word)?.remark === true;

/** What is said, by name. Lines that stand several times without a name of their own are read together. */
export type StatementTable = ReadonlyMap<string, string>;

/** The word, and what tells two lines of it apart. */
function nameOf(kind: BlockKind, fact: Fact): string {
  const row = rowOf(kind, fact.word);
  const defined = Object.entries(row?.params ?? {}).flatMap(([name, { accepts }]) =>
    accepts.kind === "define" ? [name] : [],
  );
  const parts = [...defined, ...(row?.reads?.key ?? [])].flatMap((name) => fact.args[name] ?? []) as Span[];
  return [fact.word, ...parts.map((part) => writtenValue(fact, part))].join(" ");
}

function add(said: Map<string, string>, kind: BlockKind, facts: readonly Fact[]): void {
  const lines = facts.filter(({ word, inner }) => !inner && !isRemark(kind, word));
  const groups = Map.groupBy(lines, (fact) => nameOf(kind, fact));
  for (const [name, of] of groups) if (!said.has(name)) said.set(name, of.map(written).join("; "));
}

/** The lines of a block, and of its dated tests what stands: the latest of each reading. */
export function statementsIn(facts: Facts): StatementTable {
  const said = new Map<string, string>();
  add(said, facts.kind, facts.list);
  for (const kind of ["dead", "live"] as const) {
    const headers = facts.list.filter(({ word, inner }) => word === kind && inner);
    const tests: Test<"dead">[] = testsOf(headers as unknown as Parameters<typeof testsOf>[0]);
    const days = tests.map(({ on }) => on);
    if (days.length > 0) said.set(`${kind} tests`, [...new Set(days)].toReversed().join(", "));
    for (const test of tests) add(said, test.facts.kind, test.facts.list);
  }
  return said;
}

/** What differs between two blocks: what, before, after. */
export function changes(
  before: StatementTable,
  after: StatementTable,
): [what: string, before: string, after: string][] {
  const names = [...new Set([...before.keys(), ...after.keys()])];
  return names.flatMap((name): [string, string, string][] => {
    const [was, is] = [before.get(name), after.get(name)];
    if (was === is) return [];
    const shown = (text: string | undefined) => (text === undefined ? "not there" : text === "" ? "there" : text);
    return [[name, shown(was), shown(is)]];
  });
}
