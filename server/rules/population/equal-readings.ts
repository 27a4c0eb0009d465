import { megohms, ohms } from "../../calc/result.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { exact, type Fact } from "../../model/values.ts";
import { comparison } from "../../tables/comparison.ts";
import { listed } from "../../text/words.ts";
import { amount, boardRule, factSpot, type Reporter } from "../frame/rule.ts";

interface Figure {
  readonly study: WayStudy;
  readonly fact: Fact;
  readonly value: number;
  /** What the figure should grow with: the reading expected, or the length. */
  readonly size: number;
  readonly by: "reading" | "length";
}

type Column = readonly [name: string, show: (value: number) => string, read: (study: WayStudy) => Figure | undefined];

const looped =
  (reading: "Zs" | "R1R2") =>
  (study: WayStudy): Figure | undefined => {
    const number = exactReading(study[reading]);
    const expected = study.expectedR1R2?.value;
    const size = expected ?? study.length?.value;
    if (!number || size === undefined || number.fact.provenance !== "measured") return undefined;
    return { study, fact: number.fact, value: number.value, size, by: expected === undefined ? "length" : "reading" };
  };

function insulated(study: WayStudy): Figure | undefined {
  const fact = study.dead?.facts.all("insulation").find((one) => one.args["L-E"]);
  // Off scale is a bound: any number of sound circuits share it.
  const value = fact && exact(fact.args["L-E"]);
  const size = study.length?.value;
  return fact && value !== undefined && size !== undefined ? { study, fact, value, size, by: "length" } : undefined;
}

const columns: readonly Column[] = [
  ["R1+R2", ohms, looped("R1R2")],
  ["Zs", ohms, looped("Zs")],
  ["insulation to earth", megohms, insulated],
];

function differ(figures: readonly Figure[]): boolean {
  const sizes = figures.map(({ size }) => size);
  const lengths = new Set(figures.map(({ study }) => study.length?.value));
  if (lengths.size < comparison.equalReadings.value) return false;
  const least = Math.min(...sizes);
  const greatest = Math.max(...sizes);
  const apart = figures.every(({ by }) => by === "reading");
  return apart
    ? greatest - least >= comparison.differingReading.value
    : greatest >= least * comparison.differingLength.value;
}

function checkColumn([name, show, read]: Column, studies: readonly WayStudy[], report: Reporter): void {
  const groups = Map.groupBy(
    studies.flatMap((study) => (study.isSpare ? [] : (read(study) ?? []))),
    ({ value }) => value,
  );
  for (const [value, figures] of groups) {
    const [first] = figures;
    if (!first || !differ(figures)) continue;
    report(factSpot(first.fact), {
      message: `Ways ${listed(figures.map(({ study }) => study.way.id))} differ in length and all read ${name} ${show(value)}: were they measured, or copied?`,
      value: amount(value, "Ω"),
      source: comparison.equalReadings.source,
      related: figures.slice(1).map(({ study, fact }) => ({
        spot: factSpot(fact),
        message: `Way ${study.way.id}: ${name} ${show(value)}.`,
      })),
    });
  }
}

const sample = (readings: readonly string[]): string =>
  readings
    .map(
      (R, index) => `way ${index + 1} radial "Bench ${index + 1}" {
  cable        singles  line 2.5 mm²  cpc 2.5 mm²
  length       ${10 + index * 4} m
  dead 2026-03-04 {
    R1+R2        ${R} Ω
  }
}`,
    )
    .join("\n");

export default boardRule({
  id: "population/equal-readings",
  severity: "warning",
  since: "0.1",
  title: "Circuits of different length all read the same.",
  why: "A longer cable reads more. A figure that repeats down the column was copied and not measured, and hides whatever is wrong with those circuits.",
  clauses: ["643.2.1", "643.3"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: sample(["0.22", "0.22", "0.22", "0.22"]).replace(
        "R1+R2        0.22 Ω",
        "R1+R2        0.22 Ω\n    ^^^^^^^^^^^^^^^^^^^",
      ),
      good: sample(["0.15", "0.21", "0.27", "0.33"]),
    },
  ],
  check({ studies }, report) {
    for (const column of columns) checkColumn(column, studies, report);
  },
});
