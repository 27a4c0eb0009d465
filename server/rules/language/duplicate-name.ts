import { allContainments } from "../../conduits/containment.ts";
import type { Installation } from "../../model/installation.ts";
import { conflictMark, type Fact, type Facts, type Val } from "../../model/values.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

type Named = readonly [fact: Fact, name: Val<string> | undefined];

/** Reports all but the first of one name: the first is where a reference would lead. */
function duplicates(what: string, defined: readonly Named[], report: Reporter): void {
  const first = new Map<string, readonly [Fact, Val<string>]>();
  for (const [fact, name] of defined) {
    if (!name) continue;
    const before = first.get(name.value);
    if (!before) first.set(name.value, [fact, name]);
    else {
      report(valueSpot(fact, name), {
        message: `${what} ${name.value} is defined twice, so a reference could mean either: give one of them another name.`,
        related: [{ spot: valueSpot(before[0], before[1]), message: `${what} ${name.value} is first defined here.` }],
      });
    }
  }
}

const unique = <T>(items: readonly T[]): T[] => [...new Set(items)];

function instrumentsAndCables({ names }: Installation, report: Reporter): void {
  for (const facts of names.instruments.values())
    duplicates(
      "Instrument",
      unique(facts).map((fact) => [fact, fact.args.name]),
      report,
    );
  for (const facts of names.cableTypes.values())
    duplicates(
      "Cable type",
      unique(facts).map((fact) => [fact, fact.args.name]),
      report,
    );
}

function circuitTypes({ names }: Installation, report: Reporter): void {
  for (const facts of names.circuitTypes.values())
    duplicates(
      "Circuit type",
      unique(facts).map((fact) => [fact, fact.args.name]),
      report,
    );
}

const containments = (facts: Facts<"installation"> | Facts<"board">, report: Reporter): void =>
  duplicates(
    "Containment",
    allContainments(facts).map((fact) => [fact, fact.args.name]),
    report,
  );

export default installationRule({
  id: "language/duplicate-name",
  severity: "error",
  since: "0.1",
  title: "A name is defined twice.",
  why: "Results are attached to names: with two ways of one number, or two boards of one name, a reading may be attributed to the wrong circuit. Give one of them another name.",
  clauses: [],
  examples: [
    {
      bad: `way 3 radial "Oven"
way 3 radial "Water heater"
    ^`,
      good: `way 3 radial "Oven"
way 4 radial "Water heater"`,
    },
  ],
  check(installation, report) {
    if (installation.head.facts.broken.includes(conflictMark)) return;
    duplicates(
      "Board",
      installation.boards.map(({ board: { head } }) => [head.header, head.header.args.name]),
      report,
    );
    instrumentsAndCables(installation, report);
    circuitTypes(installation, report);
    containments(installation.head.facts, report);
  },
  checkBoard({ board }, report) {
    // Both sides of a merge conflict are read: what each says of one thing is not twice.
    if (board.head.facts.broken.includes(conflictMark)) return;
    duplicates(
      "Way",
      board.ways.map((way) => [way.header, way.header.args.id]),
      report,
    );
    duplicates(
      "RCD",
      board.head.facts.all("rcd").map((rcd) => [rcd, rcd.args.name]),
      report,
    );
    containments(board.head.facts, report);
  },
});
