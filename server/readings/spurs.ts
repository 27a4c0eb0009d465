/** Spurs of a ring as the runs draw them. */

import type { PlaceOnRun } from "../circuit/runs.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Fact, FactOf, Path, Val } from "../model/values.ts";
import { fractionOf } from "./ring.ts";

interface SpurPoint {
  readonly place: PlaceOnRun;
  /** The place the cable comes from. */
  readonly from: string;
  readonly fact: FactOf<"way", "run">;
  /** Whether it, or a place before it on the same spur, has a fused connection unit. */
  readonly fused: boolean;
  /** Whether the place it comes from is itself on the spur, with no fuse in between. */
  readonly offSpur: boolean;
}

/** Every point on a spur, in the order of the runs. */
export function spurPoints(study: WayStudy): SpurPoint[] {
  const { runs } = study;
  if (!runs || study.facts.isUnread("run")) return [];
  const fused = new Set(study.facts.all("fused").map((fact) => fact.args.point.value));
  const protectedBehind = new Set<string>();
  const found: SpurPoint[] = [];
  for (const fact of study.facts.all("run").slice(1)) {
    let from = fact.args.path.from.value;
    for (const { to } of fact.args.path.legs) {
      const place = runs.places.get(to.value);
      const behindFuse = protectedBehind.has(from) || (fused.has(from) && runs.places.get(from)?.spur !== undefined);
      if (place?.spur && place.name === to) {
        const isFused = fused.has(to.value) || behindFuse;
        if (isFused) protectedBehind.add(to.value);
        found.push({
          place,
          from,
          fact,
          fused: isFused,
          offSpur: runs.places.get(from)?.spur !== undefined && !behindFuse,
        });
      }
      from = to.value;
    }
  }
  return found;
}

/** Unfused spurs are counted by where they leave the ring. */
export const unfusedSpurs = (study: WayStudy): SpurPoint[] => spurPoints(study).filter(({ fused }) => !fused);

/** Metres of cable from where a spur leaves the ring to the point of the ring farthest from it: half way round from there. */
export function farthestFromSpur(study: WayStudy, { place }: SpurPoint): number | undefined {
  const { runs } = study;
  if (!runs?.closed || fractionOf(study, place) === undefined) return undefined;
  return runs.mainLength / 2;
}

/** The run line a path stands on. */
export const runOf = (study: WayStudy, path: Path): Fact | undefined =>
  study.facts.all("run").find((fact) => fact.args.path === path);

/** The run line a name stands on as a place it reaches. */
export const runReaching = (study: WayStudy, name: Val<string>): FactOf<"way", "run"> | undefined =>
  study.facts.all("run").find((fact) => fact.args.path.legs.some(({ to }) => to === name));
