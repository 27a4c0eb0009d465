/** What all the readings of a ring say together: a fault of the whole ring, or a slip of the test, is said once. */
import { readingAt, ringTolerance } from "../calc/ring.ts";
import { memoByObject } from "../circuit/kept.ts";
import type { WayStudy } from "../circuit/way.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { expectedConductorAt, lengthMismatch } from "./dead.ts";
import { type EndName, fractionOf, type RingPoint, type RingStudy, type Round, rounds, studyRing } from "./ring.ts";
import { hair, lineNeutral } from "./ring-ends.ts";

type Pattern =
  | { readonly kind: "open-ends"; readonly ends: readonly EndName[] }
  | { readonly kind: "nothing-read"; readonly points: readonly RingPoint[] }
  | { readonly kind: "links-not-crossed"; readonly points: readonly RingPoint[] }
  | { readonly kind: "doubled"; readonly points: readonly RingPoint[] }
  | { readonly kind: "bridged"; readonly points: readonly RingPoint[] };

export const ringPattern = memoByObject(findPattern);

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

/** Points on the ring itself, as far as is known, that read something between line and neutral. */
const readBetweenLives = (points: readonly RingPoint[]) =>
  points.flatMap((point) => {
    const value = point.readings["L-N"]?.value;
    return value === undefined || point.place?.spur ? [] : [{ point, value }];
  });

/** Both links on one leg: the readings rise from nothing at the board to the quarter value half way round. */
function notCrossed(study: WayStudy, { points, values }: RingStudy): Pattern | undefined {
  const total = (values.r1?.value ?? Number.NaN) + (values.rn?.value ?? Number.NaN);
  const read = readBetweenLives(points);
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
  const read = readBetweenLives(points);
  const tolerance = ringTolerance.value + hair;
  if (!(half > 0) || read.length < 2 || half / 2 <= tolerance) return undefined;
  const room = Math.max(ringTolerance.value, half * deadTestPractice.sameShare.value) + hair;
  const all = read.every(({ value, point }) => Math.abs(value - half) <= room || point.mayBeSpur);
  const far = read.every(({ value }) => value > half / 2 + tolerance);
  return all && far ? { kind: "doubled", points: read.map(({ point }) => point) } : undefined;
}

/** Neighbours on the ring that read above the quarter value in both rounds while the ends are too low for the length. */
function bridged(study: WayStudy, ring: RingStudy): Pattern | undefined {
  const { r1 } = ring.values;
  const expected = ring.endsTest && expectedConductorAt(study, "line", ring.endsTest);
  if (!r1 || !expected || lengthMismatch(r1.quantity, expected.value)?.kind !== "low") return undefined;
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
