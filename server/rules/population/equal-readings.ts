import type { WordRow } from "../../../grammar/params.ts";
import { readArgs } from "../../../grammar/readings.ts";
import type { ReadingFigures } from "../../../grammar/traits.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import { megohms, ohms } from "../../calc/result.ts";
import { memoByObject } from "../../circuit/kept.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { expectedConductor } from "../../circuit/way-resistance.ts";
import { Memo } from "../../memo/memo.ts";
import { exact, type Fact, readingAt } from "../../model/values.ts";
import { expectedCircuit } from "../../readings/expected.ts";
import { readingName, thingsOf } from "../../readings/reading-name.ts";
import { comparison } from "../../tables/comparison.ts";
import { listedUpTo } from "../../text/words.ts";
import { amount, boardRule, factSpot, type Reporter } from "../frame/rule.ts";

interface Figure {
  readonly study: WayStudy;
  readonly fact: Fact;
  readonly row: WordRow;
  readonly arg: string;
  readonly value: number;
  /** Readings of one word that repeat on the same circuits are one copied column. */
  readonly column: string;
}

interface Sized extends Figure {
  /** What the figure should grow with: the reading expected, or the length. */
  readonly size: number;
  readonly by: "reading" | "length";
}

type Expected = (study: WayStudy, arg: string) => number | undefined;

const loop: Expected = (study) => study.expectedR1R2?.value;
const ends: Expected = (study, arg) => expectedCircuit(study)?.ends[arg as "r1"]?.value;
const cpc: Expected = (study) => (study.cable ? expectedConductor(study, "cpc")?.value : undefined);

/**
 * What a reading of a whole circuit should be by its length; nothing known, and its length stands for it. A fault current
 * is shown in steps too coarse to tell circuits apart, and what is left has nothing to do with length.
 */
const grows: Readonly<Record<ReadingFigures, Expected | undefined>> = {
  loop,
  continuity: loop,
  cpc,
  "ring-ends": ends,
  insulation: () => undefined,
  "board-loop": undefined,
  "supply-loop": undefined,
  fault: undefined,
  "dead-point": undefined,
  conductor: undefined,
  supplementary: undefined,
  electrode: undefined,
  "rcd-time": undefined,
  "trip-current": undefined,
  leakage: undefined,
  voltage: undefined,
  verdict: undefined,
};

/** The readings of a circuit as a whole that grow with its length, of each word those of the latest test that has it. */
const figuresOf = memoByObject((study: WayStudy): readonly Figure[] => {
  if (study.isSpare) return [];
  const seen = new Set<string>();
  return [...study.deadTests, ...study.liveTests].flatMap(({ facts }) => {
    const list = facts.list.filter(({ word }) => !seen.has(word) && !facts.broken.includes(word));
    for (const { word } of list) seen.add(word);
    for (const word of facts.broken) seen.add(word);
    return list.flatMap((fact) => figuresIn(fact, rowOf(facts.kind, fact.word), study));
  });
});

function figuresIn(fact: Fact, row: WordRow | undefined, study: WayStudy): Figure[] {
  if (!row || fact.provenance !== "measured") return [];
  return columnsOf.of(row, columnsIn).flatMap((arg) => {
    // Off scale is a bound: any number of sound circuits share it.
    const value = exact(readingAt(fact, arg));
    return value === undefined ? [] : [{ study, fact, row, arg, value, column: `${fact.word} ${arg} ${value}` }];
  });
}

const columnsOf = new Memo<WordRow, readonly string[]>();

/** The arguments of a row that are read of a whole circuit and grow with its length. */
function columnsIn(row: WordRow): readonly string[] {
  const grow = row.reads && grows[row.figures as ReadingFigures];
  return grow && thingsOf(row).length === 0
    ? readArgs(row).flatMap(({ name, meter }) => (meter === undefined ? [] : [name]))
    : [];
}

/** What is expected is asked of readings alone that repeat, which few do. */
function sized(figure: Figure): Sized[] {
  const { study, row, arg } = figure;
  const reading = grows[row.figures as ReadingFigures]?.(study, arg);
  const size = reading ?? study.length?.value;
  return size === undefined ? [] : [{ ...figure, size, by: reading === undefined ? "length" : "reading" }];
}

function differ(figures: readonly Sized[]): boolean {
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

function checkColumn(figures: readonly Sized[], reported: Set<Fact>, report: Reporter): void {
  const [first] = figures;
  const ways = figures.map(({ study }) => study.way.id);
  // Of lines that are marked for one of their figures the others are seen too.
  if (!first || !differ(figures) || figures.every(({ fact }) => reported.has(fact))) return;
  for (const { fact } of figures) reported.add(fact);
  const show = first.row.figures === "insulation" ? megohms : ohms;
  const name = `${readingName(first.row, first.fact, first.arg)} ${show(first.value)}`;
  report(factSpot(first.fact), {
    message: `Ways ${listedUpTo(8, ways)} differ in length and all read ${name}: were they measured, or copied?`,
    value: amount(first.value, "Ω"),
    source: comparison.equalReadings.source,
    related: figures.slice(1).map(({ study, fact }) => ({
      spot: factSpot(fact),
      message: `Way ${study.way.id}: ${name}.`,
    })),
  });
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
    const figures = studies.flatMap((study) => figuresOf(study));
    const reported = new Set<Fact>();
    const columns = [...Map.groupBy(figures, (figure) => figure.column).values()];
    const repeated = columns.filter(({ length }) => length >= comparison.equalReadings.value);
    for (const column of repeated.sort((one, other) => other.length - one.length))
      checkColumn(column.flatMap(sized), reported, report);
  },
});
