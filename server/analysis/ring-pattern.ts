/** What all the readings of a ring say together: a fault of the whole ring, or a slip of the test, is said once. */

import { resistancePerMetre } from "../calc/conductor-resistance.ts";
import type { Calculated } from "../calc/result.ts";
import { cpcRatio, readingAt, ringTolerance } from "../calc/ring.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { doubtOf, expectedConductorAt } from "./dead.ts";
import { type EndName, fractionOf, type RingPoint, type RingStudy, type Round, rounds, studyRing } from "./ring.ts";
import type { WayStudy } from "./way.ts";

const hair = 1e-9;

/** How r1 and rn stand to each other, sizes allowed for. */
export interface LineNeutral {
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
export interface CpcRatio {
  readonly ratio: Calculated;
  readonly expected: number;
  readonly r2: number;
  /** The sounder of line and neutral, which the protective conductor is held against. */
  readonly base: number;
  readonly verdict: "high" | "low" | undefined;
}

export function ringCpcRatio(study: WayStudy): CpcRatio | undefined {
  const { values } = studyRing(study);
  const { cable } = study;
  const [r1, rn, r2] = [values.r1?.value, values.rn?.value, values.r2?.value];
  if (!cable || cable.cpc === undefined || r2 === undefined || r1 === undefined) return undefined;
  if (cable.construction === "mineral" || cable.construction === "flex") return undefined;
  const ratio = cpcRatio(cable.line, cable.cpc);
  if (!ratio) return undefined;
  const base = cable.neutral === cable.line && rn !== undefined ? Math.min(r1, rn) : r1;
  const expected = base * ratio.value;
  const doubt = deadTestPractice.meterDoubt.value * (1 + ratio.value);
  const room = Math.max(deadTestPractice.ringRatio.value * expected, doubt);
  const verdict = r2 > expected + room ? "high" : r2 < expected - room ? "low" : undefined;
  return { ratio, expected, r2, base, verdict };
}

export type Pattern =
  | { readonly kind: "open-ends"; readonly ends: readonly EndName[] }
  | { readonly kind: "nothing-read"; readonly points: readonly RingPoint[] }
  | { readonly kind: "links-not-crossed"; readonly points: readonly RingPoint[] }
  | { readonly kind: "doubled"; readonly points: readonly RingPoint[] }
  | { readonly kind: "bridged"; readonly points: readonly RingPoint[] };

const kept = new WeakMap<WayStudy, { readonly pattern: Pattern | undefined }>();

export function ringPattern(study: WayStudy): Pattern | undefined {
  const before = kept.get(study);
  if (before) return before.pattern;
  const pattern = findPattern(study);
  kept.set(study, { pattern });
  return pattern;
}

function findPattern(study: WayStudy): Pattern | undefined {
  if (!study.isRing) return undefined;
  const ring = studyRing(study);
  const ends = (["r1", "rn", "r2"] as const).filter((end) => ring.values[end]?.open);
  if (ends.length > 0) return { kind: "open-ends", ends };
  const read = ring.points.filter(({ readings }) => readings["L-N"] || readings["L-E"]);
  if (read.length > 1 && read.every(({ readings }) => rounds.every((round) => readings[round]?.open ?? true)))
    return { kind: "nothing-read", points: read };
  if (!lineNeutral(study)?.uneven) {
    const whole = notCrossed(study, ring) ?? doubled(ring);
    if (whole) return whole;
  }
  return bridged(study, ring);
}

/** Points on the ring itself, as far as is known, that read something in a round. */
const readIn = (points: readonly RingPoint[], round: Round) =>
  points.flatMap((point) => {
    const value = point.readings[round]?.value;
    return value === undefined || point.place?.spur ? [] : [{ point, value }];
  });

/** Both links on one leg: the readings rise from nothing at the board to the quarter value half way round. */
function notCrossed(study: WayStudy, { points, values }: RingStudy): Pattern | undefined {
  const total = (values.r1?.value ?? Number.NaN) + (values.rn?.value ?? Number.NaN);
  const read = readIn(points, "L-N");
  if (!(total > 0) || read.length < 3) return undefined;
  const tolerance = ringTolerance.value + hair;
  const low = read.filter(({ value }) => value < total / 4 - tolerance);
  if (low.length < 2) return undefined;
  const fractions = read.map(({ point }) => point.place && fractionOf(study, point.place));
  const fits = fractions.every((fraction) => fraction !== undefined)
    ? read.every(({ value }, index) => {
        const x = fractions[index] ?? 0;
        return Math.abs(value - x * (1 - x) * total) <= tolerance;
      })
    : rises(read.map(({ value }) => value)) && read.every(({ value }) => value <= total / 4 + tolerance);
  return fits ? { kind: "links-not-crossed", points: read.map(({ point }) => point) } : undefined;
}

/** Up to a highest and down again, from well below it: in the order of the points. */
function rises(values: readonly number[]): boolean {
  const top = values.indexOf(Math.max(...values));
  const step = deadTestPractice.meterStep.value + hair;
  const up = values.slice(1, top + 1).every((value, index) => value >= (values[index] ?? 0) - step);
  const down = values.slice(top + 1).every((value, index) => value <= (values[top + index] ?? 0) + step);
  return up && down && Math.max(values[0] ?? 0, values.at(-1) ?? 0) < (values[top] ?? 0) / 2;
}

/** All line-neutral readings twice what they should be: one link missing, or a live conductor open since. */
function doubled({ points, values }: RingStudy): Pattern | undefined {
  const half = ((values.r1?.value ?? Number.NaN) + (values.rn?.value ?? Number.NaN)) / 2;
  const read = readIn(points, "L-N");
  const tolerance = ringTolerance.value + hair;
  if (!(half > 0) || read.length < 2 || half / 2 <= tolerance) return undefined;
  const all = read.every(
    ({ value, point }) =>
      Math.abs(value - half) <= Math.max(tolerance, half * deadTestPractice.sameShare.value) || point.mayBeSpur,
  );
  const far = read.every(({ value }) => value > half / 2 + tolerance);
  return all && far ? { kind: "doubled", points: read.map(({ point }) => point) } : undefined;
}

/** Neighbours on the ring that read above the quarter value in both rounds while the ends are too low for the length. */
function bridged(study: WayStudy, ring: RingStudy): Pattern | undefined {
  const { r1 } = ring.values;
  const expected = ring.endsTest && expectedConductorAt(study, "line", ring.endsTest);
  if (!r1 || !expected || doubtOf(r1.quantity, expected.value)?.kind !== "low") return undefined;
  const high = ring.points.filter(
    (point) => !point.place?.spur && rounds.every((round) => (excess(point, round) ?? 0) > ringTolerance.value + hair),
  );
  return high.length >= 2 ? { kind: "bridged", points: high } : undefined;
}

/** By how much a point reads above the most, or (negative) below the least it should, Ω. Within both: 0. */
export function excess({ readings, expected }: RingPoint, round: Round): number | undefined {
  const value = readings[round]?.value;
  const expectation = expected[round];
  if (value === undefined || !expectation) return undefined;
  if (value > expectation.greatest) return value - expectation.greatest;
  return value < expectation.least ? value - expectation.least : 0;
}

/** What is wrong at one point, where the ring as a whole does not explain it. */
export interface PointDoubt {
  readonly kind: "open" | "contact" | "high" | "low" | "spur-unknown";
  readonly rounds: readonly Round[];
  /** Excess over the expectation, Ω, by round. */
  readonly excess: { readonly [R in Round]?: number };
  /** Metres of spur that the excess would be. */
  readonly spur: number | undefined;
}

export function pointDoubt(study: WayStudy, point: RingPoint): PointDoubt | undefined {
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
    const alike = LN !== undefined && LE !== undefined && Math.abs(LN - LE) <= deadTestPractice.meterDoubt.value + hair;
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
  const cpc = cable?.cpc === undefined ? undefined : resistancePerMetre(cable.cpc, cable.material)?.value;
  if (line === undefined || LN === undefined) return undefined;
  const length = LN / (2 * line);
  if (length <= 0) return undefined;
  if (LE === undefined || cpc === undefined) return undefined;
  const doubt = deadTestPractice.meterDoubt.value;
  return Math.abs(LE - length * (line + cpc)) <= doubt + hair ? length : undefined;
}

/** Spread of the readings round a sound ring, between the points as they lie or evenly spaced, Ω. */
export function expectedSpread(study: WayStudy, points: readonly RingPoint[], round: Round): number | undefined {
  const { values } = studyRing(study);
  const first = values.r1?.value;
  const second = round === "L-N" ? values.rn?.value : values.r2?.value;
  if (first === undefined || second === undefined) return undefined;
  const at = points.flatMap((point, index) => {
    const known = point.place && fractionOf(study, point.place);
    return readingAt(first, second, known ?? (index + 1) / (points.length + 1))?.value ?? [];
  });
  return at.length === 0 ? undefined : Math.max(...at) - Math.min(...at);
}
