/** R1+R2 of a ring against its ends and its points. */

import { round } from "../calc/result.ts";
import { ringTolerance } from "../calc/ring.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { FactOf, Quantity } from "../model/values.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { hasDead, latestDead } from "./dead.ts";
import { type RingPoint, ringValue, studyRing } from "./ring.ts";

interface RecordedR1R2 {
  readonly fact: FactOf<"dead", "R1+R2">;
  readonly quantity: Quantity;
}

export function recordedR1R2(study: WayStudy): RecordedR1R2 | undefined {
  const fact = latestDead(study, "R1+R2")?.fact;
  const quantity = ringValue(fact?.args.value)?.quantity;
  return fact && quantity?.sign === "=" ? { fact, quantity } : undefined;
}

/** The point that reads highest to earth: R1+R2 of the circuit. */
export function highestPoint(study: WayStudy): { readonly point: RingPoint; readonly value: number } | undefined {
  const read = studyRing(study).points.flatMap((point) => {
    const value = point.readings["L-E"]?.value;
    return value === undefined ? [] : [{ point, value }];
  });
  return read.sort((a, b) => b.value - a.value)[0];
}

/** R1+R2 is (r1 + r2)/4 to the digit, posing as a reading, and no point was read. */
export function equalsQuarter(study: WayStudy): RecordedR1R2 | undefined {
  const recorded = recordedR1R2(study);
  const quarter = studyRing(study).quarter["L-E"];
  if (!study.isRing || !recorded || !quarter || hasDead(study, "at")) return undefined;
  const { fact, quantity } = recorded;
  if (fact.provenance !== "measured") return undefined;
  return quantity.value === round(quarter.value, quantity.decimals) ? recorded : undefined;
}

/** How a recorded R1+R2 departs from what the ring gives. */
export type R1R2Mismatch = "undivided" | "halved" | "above" | "below";

export function r1r2Mismatch(study: WayStudy, value: number): R1R2Mismatch | undefined {
  const { values } = studyRing(study);
  const [r1, r2] = [values.r1?.value, values.r2?.value];
  const whole = r1 === undefined || r2 === undefined ? undefined : r1 + r2;
  const { sameShare, undivided } = deadTestPractice;
  const tolerance = ringTolerance.value + 1e-9;
  const highest = highestPoint(study);
  const known = highest ? value - highest.value : undefined;
  if (known !== undefined && Math.abs(known) <= tolerance) return undefined;
  if (whole !== undefined && value - whole / 4 > tolerance) {
    if (Math.abs(value / whole - 1) <= sameShare.value) return "undivided";
    if (Math.abs((2 * value) / whole - 1) <= sameShare.value) return "halved";
    if (value > undivided.value * whole) return "undivided";
  }
  if (known !== undefined) return known > 0 ? (allRead(study) ? "above" : undefined) : "below";
  return r1 === undefined || r2 === undefined ? undefined : againstSpan(study, value, r1, r2);
}

/** Without points: between what the ring gives at the board and half way round, and its longest spur. */
function againstSpan(study: WayStudy, value: number, r1: number, r2: number): R1R2Mismatch | undefined {
  const tolerance = ringTolerance.value + 1e-9;
  if (value < (r1 * r2) / (r1 + r2) - tolerance) return "below";
  const spurs =
    (study.facts.one("spurs")?.args.count.value ?? 0) > 0 ||
    [...(study.runs?.places.values() ?? [])].some((place) => place.spur);
  return !spurs && value > (r1 + r2) / 4 + tolerance ? "above" : undefined;
}

/** Whether every point the schedule knows of was read to earth: another could be the highest. */
function allRead(study: WayStudy): boolean {
  const read = new Set(
    studyRing(study)
      .points.filter(({ readings }) => readings["L-E"])
      .map(({ name }) => name),
  );
  const count = study.facts.one("points")?.args.count.value;
  if (count !== undefined && count > read.size) return false;
  return (
    [...(study.runs?.places.keys() ?? [])].every((name) => read.has(name)) &&
    (count !== undefined || study.runs !== undefined)
  );
}
