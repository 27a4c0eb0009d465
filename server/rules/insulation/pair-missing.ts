import { gradeOfMissing } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type InsulationTest, insulationKind, insulationOf } from "../../readings/insulation.ts";
import { listed } from "../common/dead-words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/pair-missing",
  severity: "error",
  since: "0.1",
  title: "An insulation test leaves out a pair of conductors.",
  why: "Line to neutral, line to earth and neutral to earth each show a fault that the others do not. Where loads cannot be disconnected, join line and neutral, test them to earth, and write joined on the line.",
  opens: true,
  clauses: ["643.3.1", "643.3.3"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-E 280 MΩ
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-E 280 MΩ joined
  }
}`,
    },
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-E 280 MΩ  N-E 310 MΩ
    insulation   500 V  L-N LIM "Drivers in a sealed ceiling, agreed with the client"
  }
}`,
    },
  ],
  check(study, report) {
    const test = insulationOf(study);
    const [first] = test?.facts ?? [];
    if (study.isSpare || !test || !first || insulationKind(study) === "selv-pelv") return;
    const missing = missingPairs(study, test);
    if (missing.length === 0) return;
    const joined = missing.includes("L-N") ? " If line and neutral were joined, write joined." : "";
    report(factSpot(first), {
      ...gradeOfMissing(study),
      message: `${listed(missing)} ${missing.length === 1 ? "is" : "are"} not recorded: a fault there would not show.${joined}`,
      related: test.facts
        .slice(1)
        .map((fact) => ({ spot: factSpot(fact), message: "Another line of the same insulation test." })),
    });
  },
});

/** Where each line is written for itself, all three are: the general pair stands for them together. */
const ofThree: Readonly<Record<string, readonly string[]>> = {
  "L-L": ["L1-L2", "L2-L3", "L1-L3"],
  "L-N": ["L1-N", "L2-N", "L3-N"],
  "L-E": ["L1-E", "L2-E", "L3-E"],
};

/** A three-phase circuit may have no neutral: where nothing is read to one, nothing is missed. */
function missingOfThree(there: ReadonlySet<string>, without: ReadonlySet<string>): string[] {
  const gaps = Object.entries(ofThree).flatMap(([general, each]) => {
    if (there.has(general)) return [];
    const open = each.filter((pair) => !there.has(pair));
    if (open.length < each.length) return open;
    return general === "L-N" ? [] : [general];
  });
  const neutral = [...there].some((pair) => pair.endsWith("-N") && !without.has(pair));
  return [...gaps, ...(neutral && !there.has("N-E") ? ["N-E"] : [])];
}

function missingPairs(study: WayStudy, { facts, values, absent }: InsulationTest): string[] {
  const there = new Set([...values, ...absent].map(({ pair }) => pair));
  const notApplicable = new Set(absent.flatMap(({ pair, value }) => (value.absent === "N/A" ? [pair] : [])));
  const says = (ends: string) => [...there].some((pair) => pair.startsWith("L") && pair.endsWith(ends));
  const toEarth = says("-E");
  if (facts.some((fact) => fact.args.joined)) return toEarth ? [] : ["L-E"];
  if (study.threePhase) return missingOfThree(there, notApplicable);
  return [...(says("-N") ? [] : ["L-N"]), ...(toEarth ? [] : ["L-E"]), ...(there.has("N-E") ? [] : ["N-E"])];
}
