/** What a block says, by what a person calls each line, so that two versions of it can stand beside each other. */
import { type Test, testsOf } from "../../circuit/supply.ts";
import type { Fact, Facts } from "../../model/values.ts";
import { written } from "../common/written.ts";

/** Remarks are no part of what was built or read. */
const remarks: ReadonlySet<string> = new Set(["note", "query", "answer", "departure"]);

/** Lines whose first value says which of several is meant. */
const named: ReadonlySet<string> = new Set(["rcd", "containment", "bonding", "at", "test-button", "trip-current"]);

/** What is said, by name. Lines that stand several times without a name of their own are read together. */
export type StatementTable = ReadonlyMap<string, string>;

function nameOf(fact: Fact): string {
  if (fact.word === "insulation") return `insulation ${written(fact).split(" ").slice(0, 2).join(" ")}`;
  if (!named.has(fact.word)) return fact.word;
  const { args } = fact;
  const first = args.name ?? args.service ?? args.point;
  const name = first && !Array.isArray(first) && "value" in first ? String(first.value) : "";
  const multiple =
    args.multiple && !Array.isArray(args.multiple) && "value" in args.multiple ? args.multiple.value : "";
  return [fact.word, name, multiple === "" ? "" : `${multiple}×`].filter((part) => part !== "").join(" ");
}

function add(said: Map<string, string>, facts: readonly Fact[]): void {
  const groups = Map.groupBy(facts, nameOf);
  for (const [name, lines] of groups) if (!said.has(name)) said.set(name, lines.map(written).join("; "));
}

/** The lines of a block, and of its dated tests what stands: the latest of each reading. */
export function statementsIn(facts: Facts): StatementTable {
  const said = new Map<string, string>();
  add(
    said,
    facts.list.filter(({ word, inner }) => !inner && !remarks.has(word)),
  );
  for (const kind of ["dead", "live"] as const) {
    const headers = facts.list.filter(({ word, inner }) => word === kind && inner);
    const tests: Test<"dead">[] = testsOf(headers as unknown as Parameters<typeof testsOf>[0]);
    const days = tests.map(({ on }) => on);
    if (days.length > 0) said.set(`${kind} tests`, [...new Set(days)].toReversed().join(", "));
    for (const test of tests)
      add(
        said,
        test.facts.list.filter(({ word }) => !remarks.has(word)),
      );
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
