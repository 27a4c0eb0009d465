/** The loop impedance at a board against what its feeder brings there. */
import { exceeds, fallsShort } from "../calc/compare.ts";
import { totalLoop } from "../calc/loop-impedance.ts";
import { practiceOf } from "../calc/practice.ts";
import type { Calculated } from "../calc/result.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import { type ExactReading, exactReading, studySupply } from "../circuit/supply.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import type { Fact } from "../model/values.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { combine } from "../tables/source.ts";

interface FeederLoop {
  readonly own: ExactReading;
  readonly expected: number;
  readonly by: "reading" | "sum" | "length";
  readonly steps: Calculated["steps"];
  readonly facts: readonly Fact[];
  readonly tolerance: Calculated;
  /** The loop where the feeder begins, Ω, and whether metal is on record beside it. */
  readonly start: number | undefined;
  readonly parallel: boolean;
}

/** What stands at the far end of a feeder is read twice: on the feeder, and at the board it feeds. */
export function feederLoop(context: Context): FeederLoop | undefined {
  const own = boardImpedance(context);
  const [above, ...further] = context.upstream;
  if (own?.name !== "Zdb" || !above?.feeder || studySupply(context).earthing === "TT") return undefined;
  const upstream: Context = { ...context, board: above.board, upstream: further };
  const study = studyWay(above.feeder, upstream);
  const Zs = exactReading(study.Zs);
  const start = boardImpedance(upstream);
  const R1R2 = exactReading(study.R1R2);
  const sum = start && R1R2 ? totalLoop(start.value, R1R2.value) : undefined;
  const expected = Zs?.value ?? sum?.value;
  if (expected === undefined) return own && start ? byLength(own, start, study) : undefined;
  const floor = practiceOf("loop-floor");
  const share = practiceOf("loop-share");
  const byShare = share.value * expected;
  const tolerance = byShare > floor.value ? { ...share, steps: share.steps, value: byShare, unit: "Ω" } : floor;
  const facts = Zs ? [Zs.fact] : [start?.fact, R1R2?.fact].filter((fact) => fact !== undefined);
  return {
    own,
    expected,
    by: Zs ? "reading" : "sum",
    steps: Zs ? [] : (sum?.steps ?? []),
    facts,
    tolerance,
    start: start?.value,
    parallel: study.facts.has("parallel-path"),
  };
}

/** A length is stated less surely than a reading: half as much again of its cable is let pass, as with R1+R2. */
function byLength(own: ExactReading, start: ExactReading, study: WayStudy): FeederLoop | undefined {
  const { cable, length } = study;
  const cold = study.expectedR1R2;
  if (!cable || !length || !cold || study.facts.has("parallel-path")) return undefined;
  const { highShare, highLeast } = deadTestPractice;
  const sum = totalLoop(start.value, cold.value);
  const byShare = (highShare.value - 1) * cold.value;
  const [most, source] = byShare > highLeast.value ? [byShare, highShare.source] : [highLeast.value, highLeast.source];
  return {
    own,
    expected: sum.value,
    by: "length",
    steps: [...cold.steps, ...sum.steps],
    facts: [start.fact, cable.fact, ...length.facts.slice(0, 1)],
    start: start.value,
    parallel: false,
    tolerance: { value: most, unit: "Ω", steps: [], source: combine(cold.source, source) },
  };
}

/** Whether Zdb is below what was read at the end of the feeder, the same place, with no metal on record to explain it. */
export const isReadLow = ({ own, expected, by, tolerance, parallel }: FeederLoop): boolean =>
  by === "reading" && !parallel && fallsShort(own.value, expected - tolerance.value);

/** Whether Zdb is above what the feeder brings. */
export const isAboveFeeder = ({ own, expected, tolerance }: FeederLoop): boolean =>
  exceeds(own.value, expected + tolerance.value);
