/** What is wrong at single points of a ring, where the ring as a whole does not explain it. */
import { resistancePerMetre } from "../calc/conductor-resistance.ts";
import { conductorPerMetre } from "../circuit/cpc.ts";
import type { WayStudy } from "../circuit/way.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { type RingPoint, type Round, rounds, studyRing } from "./ring.ts";
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
  const [LN, LE] = [over["L-N"], over["L-E"]];
  const spur = spurLength(study, LN, LE);
  const kind = () => {
    if (off.some((round) => (over[round] ?? 0) < 0)) return "low";
    if (point.mayBeSpur) return "spur-unknown";
    const alike =
      LN !== undefined && LE !== undefined && Math.abs(LN - LE) <= deadTestPractice.meterUncertainty.value + hair;
    if (alike && (point.place || spur === undefined)) return "contact";
    return "high";
  };
  return { kind: kind(), rounds: off, excess: over, spur };
}

/**
 * Excess beyond the tolerance. A poor joint makes the quarter value too high, never too low, so where the ends
 * disagree only what is above it counts.
 */
function excessesOf(study: WayStudy, point: RingPoint): { [R in Round]?: number } {
  const over: { [R in Round]?: number } = {};
  for (const round of rounds) {
    const amount = excess(point, round);
    const tolerance = (point.expected[round]?.tolerance ?? 0) + hair;
    if (amount === undefined || Math.abs(amount) <= tolerance) continue;
    if (amount < 0 && unsure(study, round)) continue;
    if (amount > 0 && unsure(study, round) && aboveQuarter(study, point, round) <= tolerance) continue;
    over[round] = amount;
  }
  return over;
}

const unsure = (study: WayStudy, round: Round): boolean =>
  (lineNeutral(study)?.uneven ?? false) || (round === "L-E" && ringCpcRatio(study)?.verdict === "high");

function aboveQuarter(study: WayStudy, point: RingPoint, round: Round): number {
  const quarter = studyRing(study).quarter[round]?.value ?? Number.POSITIVE_INFINITY;
  const own = point.expected[round]?.greatest ?? 0;
  const value = point.readings[round]?.value ?? 0;
  return value - Math.max(quarter, own);
}

/** Metres of unfused spur that would explain both excesses, if one does. */
function spurLength(study: WayStudy, LN: number | undefined, LE: number | undefined): number | undefined {
  const { cable } = study;
  const line = cable && resistancePerMetre(cable.line, cable.material)?.value;
  const cpc = cable && conductorPerMetre(cable, "cpc")?.value;
  if (line === undefined || LN === undefined) return undefined;
  const length = LN / (2 * line);
  if (length <= 0) return undefined;
  if (LE === undefined || cpc === undefined) return undefined;
  const uncertainty = deadTestPractice.meterUncertainty.value;
  return Math.abs(LE - length * (line + cpc)) <= uncertainty + hair ? length : undefined;
}
