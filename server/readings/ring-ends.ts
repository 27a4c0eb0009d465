/** The ends of a ring against each other. */
import { resistancePerMetre } from "../calc/conductor-resistance.ts";
import type { Calculated } from "../calc/result.ts";
import { cpcRatio, ringTolerance } from "../calc/ring.ts";
import { isTabled } from "../circuit/cable.ts";
import type { WayStudy } from "../circuit/way.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { studyRing } from "./ring.ts";

/** Binary noise: two readings that differ by exactly the tolerance do not pass it. */
export const hair = 1e-9;

/** How r1 and rn stand to each other, sizes allowed for. */
interface LineNeutral {
  readonly r1: number;
  readonly rn: number;
  /** What rn should be. */
  readonly expected: number;
  readonly difference: number;
  readonly uneven: boolean;
}

export function lineNeutral(study: WayStudy): LineNeutral | undefined {
  const { values } = studyRing(study);
  const r1 = values.r1?.value;
  const rn = values.rn?.value;
  if (r1 === undefined || rn === undefined) return undefined;
  const { cable } = study;
  const line = cable && resistancePerMetre(cable.line, cable.material);
  const neutral = cable && resistancePerMetre(cable.neutral, cable.material);
  const expected = line && neutral ? (r1 * neutral.value) / line.value : r1;
  const difference = Math.abs(rn - expected);
  return { r1, rn, expected, difference, uneven: difference > ringTolerance.value + hair };
}

/** How r2 stands to r1 by the sizes of the cable. */
interface CpcRatio {
  readonly ratio: Calculated;
  readonly expected: number;
  readonly r2: number;
  /** The sounder of line and neutral, which the protective conductor is compared with. */
  readonly base: number;
  readonly verdict: "high" | "low" | undefined;
}

export function ringCpcRatio(study: WayStudy): CpcRatio | undefined {
  const { values } = studyRing(study);
  const { cable } = study;
  const [r1, rn, r2] = [values.r1?.value, values.rn?.value, values.r2?.value];
  if (!cable || cable.cpc === undefined || cable.cpcBy === "armour" || r2 === undefined || r1 === undefined)
    return undefined;
  if (!isTabled(cable)) return undefined;
  const ratio = cpcRatio(cable.line, cable.cpc);
  if (!ratio) return undefined;
  const base = cable.neutral === cable.line && rn !== undefined ? Math.min(r1, rn) : r1;
  const expected = base * ratio.value;
  const uncertainty = deadTestPractice.meterUncertainty.value * (1 + ratio.value);
  const room = Math.max(deadTestPractice.ringRatio.value * expected, uncertainty);
  const verdict = r2 > expected + room ? "high" : r2 < expected - room ? "low" : undefined;
  return { ratio, expected, r2, base, verdict };
}
