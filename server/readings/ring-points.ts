/** What is wrong at single points of a ring, where the ring as a whole does not explain it. */
import { resistancePerMetre } from "../calc/conductor-resistance.ts";
import { conductorPerMetre } from "../circuit/cpc.ts";
import type { WayStudy } from "../circuit/way.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { type Expectation, type RingPoint, type Round, rounds, studyRing } from "./ring.ts";
import { hair, lineNeutral, ringCpcRatio } from "./ring-ends.ts";
import { excess, ringPattern } from "./ring-pattern.ts";

/** What is wrong at one point, where the ring as a whole does not explain it. */
export interface PointMismatch {
  readonly kind: "open" | "contact" | "high" | "low" | "spur-unknown";
  readonly rounds: readonly Round[];
  /** Excess over the expectation, Ω, by round. */
  readonly excess: { readonly [R in Round]?: number };
  /** Metres of spur that the excess would be. */
  readonly spur: number | undefined;
}

export function pointMismatch(study: WayStudy, point: RingPoint): PointMismatch | undefined {
  const pattern = ringPattern(study);
  if (pattern && pattern.kind !== "bridged") return undefined;
  const open = rounds.filter((round) => point.readings[round]?.open);
  if (open.length > 0) return { kind: "open", rounds: open, excess: {}, spur: undefined };
  if (pattern?.points.includes(point)) return undefined;
  const over = excessesOf(study, point);
  const off = rounds.filter((round) => over[round] !== undefined);
  if (off.length === 0) return undefined;
  if (off.some((round) => (over[round] ?? 0) < 0)) return { kind: "low", rounds: off, excess: over, spur: undefined };
  const spur = spurLength(study, over);
  const kind = () => {
    if (point.mayBeSpur) return "spur-unknown";
    return isAlike(over) && (point.place || spur === undefined) ? "contact" : "high";
  };
  return { kind: kind(), rounds: off, excess: over, spur };
}

type Excess = PointMismatch["excess"];

/** Whether both rounds are as much too high, as a poor contact of the line makes them. */
const isAlike = ({ "L-N": LN, "L-E": LE }: Excess): boolean =>
  LN !== undefined && LE !== undefined && isWithinUncertainty(LN - LE);

const isWithinUncertainty = (difference: number): boolean =>
  Math.abs(difference) <= deadTestPractice.meterUncertainty.value + hair;

/**
 * Excess beyond the tolerance. A poor joint makes the quarter value too high, never too low, so where the ends
 * disagree only what is above it counts.
 */
function excessesOf(study: WayStudy, point: RingPoint): Excess {
  const over: { [R in Round]?: number } = {};
  for (const round of rounds) {
    const expected = point.expected[round];
    const amount = excess(point, round);
    if (!expected || amount === undefined) continue;
    const tolerance = expected.tolerance + hair;
    const beyond = unsure(study, round) ? amount - belowQuarter(study, round, expected) : Math.abs(amount);
    if (beyond > tolerance) over[round] = amount;
  }
  return over;
}

const unsure = (study: WayStudy, round: Round): boolean =>
  (lineNeutral(study)?.uneven ?? false) || (round === "L-E" && ringCpcRatio(study)?.verdict === "high");

/** How far the most that a point should read lies below the quarter value, Ω. */
function belowQuarter(study: WayStudy, round: Round, { greatest }: Expectation): number {
  const quarter = studyRing(study).quarter[round]?.value ?? greatest;
  return Math.max(0, quarter - greatest);
}

/** Metres of unfused spur that would explain both excesses, if one does. */
function spurLength({ cable }: WayStudy, { "L-N": LN, "L-E": LE }: Excess): number | undefined {
  const line = cable && resistancePerMetre(cable.line, cable.material)?.value;
  const cpc = cable && conductorPerMetre(cable, "cpc")?.value;
  if (!line || !cpc || !LN || !LE) return undefined;
  const length = LN / (2 * line);
  return isWithinUncertainty(LE - length * (line + cpc)) ? length : undefined;
}
