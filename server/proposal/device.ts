/** Which devices come into question: standard, type and ratings, and breaking capacity. */

import { ratings } from "../calc/minimum-size.ts";
import { conditionalAt, nextBreaking } from "../circuit/breaking.ts";
import { greatestFault } from "../circuit/faults.ts";
import type { WayStudy } from "../circuit/way.ts";
import { breakerLoop } from "../tables/loop-breakers.ts";
import { sizingValues, usualCurves } from "../tables/sizing-practice.ts";
import type { Source } from "../tables/source.ts";
import { type Family, familyOf } from "../tables/standard-values.ts";
import { cellOf, known, sourceOf } from "../tables/table.ts";

/** A device without its rating. */
export interface DeviceKind {
  readonly standard: string;
  readonly family: Family;
  readonly curve?: "B" | "C" | "D";
  readonly class?: string;
  readonly words: string;
  readonly source?: Source;
}

/** As the schedule has it, or a breaker whose type follows from the load; or why there is nothing to go by. */
export function kindOf(study: WayStudy): DeviceKind | { readonly missing: string } {
  const fact = study.facts.one("device");
  const standard = fact?.args.standard.value ?? "BS EN 60898";
  const family = familyOf(standard);
  if (!family) return { missing: `the standard ratings of ${standard} devices, which are not tabulated here` };
  const kept = fact?.args.class?.value;
  const base = { standard, family, ...(kept ? { class: kept } : {}) };
  if (family !== "breaker") {
    const curve = fact?.args.curve?.curve;
    return { ...base, ...(curve ? { curve } : {}), words: `${standard}, as written` };
  }
  const curve = fact?.args.curve?.curve;
  if (curve) return { ...base, curve, words: `${standard} type ${curve}, as written` };
  const row = usualCurves.rows.find(({ facts }) => study.uses.has(facts.use));
  if (!row) return { ...base, curve: "B", words: `${standard} type B: nothing here is known to draw an inrush` };
  const { source } = cellOf(usualCurves, row, "curve");
  return { ...base, curve: row.facts.curve, words: `${standard} type ${row.facts.curve}: ${row.facts.reason}`, source };
}

/** A rating of the family with what speaks against it before any cable is looked at. */
interface RatingCandidate {
  readonly rating: number;
  readonly against?: { readonly why: string; readonly source: Source };
}

/** The ratings of a family, the smallest first. Those that no table of loop limits knows are passed over. */
export function ratingsOf({ family, curve }: DeviceKind): RatingCandidate[] {
  if (family !== "breaker") return ratings(family).map((rating) => ({ rating }));
  const floor = known(sizingValues, { key: "least-breaker" }, "value");
  return ratings(family).map((rating) => {
    if (rating < floor.value)
      return { rating, against: { why: "smaller than is usually fitted", source: floor.source } };
    const row = breakerLoop.rows.find(({ facts }) => facts.curve === curve && facts.rating === rating);
    const first = breakerLoop.rows[0];
    if (row || !first) return { rating };
    const source = sourceOf(breakerLoop, first, "zs");
    return { rating, against: { why: "not a usual rating: the table of loop limits does not print it", source } };
  });
}

/** The breaking capacity a device is written with, A; `none` where no breaker is made for the fault. */
export function breakingFor(study: WayStudy, { family, class: kept }: DeviceKind): number | "none" | undefined {
  // What another kind of device breaks says nothing of this one.
  const written = study.device?.family === family ? study.device.breaking : undefined;
  const fault = greatestFault(study.context)?.value ?? 0;
  const conditional = conditionalAt(study.context);
  const asked = conditional !== undefined && fault <= conditional ? 0 : fault;
  if (written !== undefined && written >= asked) return written;
  // Together with the device before it a back-up device breaks more than it is marked with.
  if (kept === "back-up") return written;
  if (family !== "breaker") return written;
  const least = known(sizingValues, { key: "least-breaking" }, "value").value;
  return nextBreaking(Math.max(asked, least)) ?? "none";
}
