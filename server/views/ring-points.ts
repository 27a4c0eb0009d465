/** The points of a ring: how far round each lies, and what was read there beside the band of what is expected. */
import { ringTolerance } from "../calc/ring.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Mark } from "../drawings/shapes.ts";
import { planDead } from "../readings/plan-dead.ts";
import type { PlannedTest } from "../readings/planned.ts";
import { expectationAt, fractionOf, type RingValue, type Round, rounds, studyRing } from "../readings/ring.ts";
import { markOf } from "./way-state.ts";

export interface Reading {
  readonly round: Round;
  readonly value: RingValue | undefined;
  readonly band: { readonly least: number; readonly most: number } | undefined;
  readonly expectedText: string;
  readonly inside: boolean;
}

export interface Point {
  readonly name: string;
  /** How far round, from 0 to 1; of a spur, where it leaves. */
  readonly along: number;
  readonly depth: number;
  readonly spur: number | undefined;
  readonly from: string | undefined;
  readonly readings: readonly Reading[];
  readonly mark: Mark;
}

export function pointsOf(study: WayStudy): Point[] {
  const ring = studyRing(study);
  const read = new Map(ring.points.map((point) => [point.name, point] as const));
  const plan = planDead(study).filter(({ point }) => point !== undefined);
  const drawn = study.runs?.closed ? [...study.runs.places.values()] : [];
  const names = [...new Set([...drawn.map(({ name }) => name.value), ...read.keys()])];
  return names.map((name, index): Point => {
    const place = study.runs?.places.get(name);
    const fact = read.get(name)?.fact;
    return {
      name,
      along: (place && fractionOf(study, place)) ?? (index + 1) / (names.length + 1),
      depth: place?.spur?.depth ?? 0,
      spur: place?.spur?.length,
      from: place?.spur?.from,
      readings: rounds.map((round) => readingAt(study, name, round, read.get(name)?.readings[round], plan)),
      mark: fact ? { segment: fact.segment, offset: fact.start } : markOf(study),
    };
  });
}

function readingAt(
  study: WayStudy,
  name: string,
  round: Round,
  value: RingValue | undefined,
  plan: readonly PlannedTest[],
): Reading {
  const planned = plan.find((test) => test.point === name && test.name.startsWith(round))?.expected;
  const byEnds = expectationAt(study, name, round);
  const tolerance = ringTolerance.value;
  const band = byEnds
    ? { least: Math.max(0, byEnds.least - byEnds.tolerance), most: byEnds.greatest + byEnds.tolerance }
    : planned
      ? { least: Math.max(0, planned.value - tolerance), most: planned.value + tolerance }
      : undefined;
  const read = value?.value;
  const inside = !value || !band ? true : read !== undefined && read >= band.least - 1e-9 && read <= band.most + 1e-9;
  return { round, value, band, expectedText: planned?.text ?? "", inside };
}
