/** Which devices come into question: standard, type and ratings, breaking capacity, and the RCD function. */
import { additionalProtection } from "../analysis/additional-protection.ts";
import { conditionalAt, nextBreaking } from "../analysis/breaking.ts";
import { greatestFault } from "../analysis/faults.ts";
import type { WayStudy } from "../analysis/way.ts";
import { ratings, rcdCovers, residuals } from "../calc/index.ts";
import { rcdLimit } from "../calc/practice.ts";
import { milliamps } from "../calc/result.ts";
import { breakerLoop } from "../tables/loop-breakers.ts";
import { rcdLoads } from "../tables/rcd-limits.ts";
import { sizingValues, usualCurves } from "../tables/sizing-practice.ts";
import type { Source } from "../tables/source.ts";
import { type Family, familyOf } from "../tables/standard-values.ts";
import { cellOf, known, sourceOf } from "../tables/table.ts";
import type { DeviceChoice } from "./lines.ts";

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
export interface RatingCandidate {
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
  const written = study.device?.breaking;
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

export interface RcdChoice {
  readonly parts: Pick<DeviceChoice, "standard" | "sensitivity" | "type" | "direction">;
  readonly words: string;
  readonly source?: Source;
  readonly open: readonly string[];
}

/** The RCD function of the device, where a rule asks for one and nothing else gives it. */
export function rcdFor(trial: WayStudy, kind: DeviceKind): RcdChoice {
  const written = trial.facts.one("device")?.args;
  const others = trial.rcds.filter(({ at }) => at !== "device");
  const most = rcdLimit("additional");
  const [need] = additionalProtection(trial);
  const charger = trial.uses.has("ev-charger") && !others.some(({ at }) => at === "way");
  const fine = others.some(({ sensitivity }) => sensitivity <= most.value) && !charger;
  const forFault = trial.supply.earthing === "TT" && trial.isFinal && !trial.facts.has("class-II");
  const asked = (need !== undefined && !fine) || (forFault && others.length === 0);
  const before = written?.sensitivity?.value;
  const plain = { standard: kind.standard };
  if (!asked && before === undefined) {
    const words = need || forFault ? "by an RCD that stands before it already" : "no rule asks for one here";
    return { parts: plain, words, ...(need ? { source: need.source } : {}), open: [] };
  }
  if (kind.family !== "breaker") {
    return {
      parts: plain,
      words: "asked for",
      open: [
        `A rule asks for an RCD of ${milliamps(most.value)} here, which a ${kind.standard} device does not give: put one before it.`,
      ],
    };
  }
  const sensitivity = before !== undefined && (!need || before <= most.value) ? before : nearestBelow(most.value);
  const least = leastType(trial);
  const type = written?.type && rcdCovers(written.type.value, least.type) ? written.type.value : least.type;
  const direction = written?.direction?.value;
  const standard = kind.standard.includes("61009") ? kind.standard : "BS EN 61009";
  return {
    parts: { standard, sensitivity, type, ...(direction ? { direction } : {}) },
    words: reasonWords(need?.reason, forFault, before !== undefined),
    ...(need ? { source: need.source } : least.source ? { source: least.source } : {}),
    open:
      charger && type !== "B"
        ? [
            `The charging unit must itself detect direct current above ${milliamps(rcdLimit("ev-dc").value)}: note that it does, or fit type B.`,
          ]
        : [],
  };
}

const reasons = {
  sockets: "socket-outlets",
  outdoors: "use outdoors",
  "dwelling-lighting": "lighting in a dwelling",
  concealed: "a cable concealed in a wall",
  bathroom: "a room with a bath or shower",
  ev: "a charging point",
} as const;

function reasonWords(need: keyof typeof reasons | undefined, forFault: boolean, before: boolean): string {
  if (need) return `asked for by ${reasons[need]}`;
  return forFault ? "asked for by the TT supply" : before ? "as written" : "";
}

const nearestBelow = (most: number): number => residuals.filter((residual) => residual <= most).at(-1) ?? most;

/** The weakest type that is not blinded by what is served. Type AC is proposed nowhere. */
function leastType({ uses }: WayStudy): { readonly type: "A" | "F" | "B"; readonly source?: Source } {
  const rows = rcdLoads.rows.filter(({ facts }) => uses.has(facts.use));
  const [first] = rows;
  if (!first) return { type: "A" };
  const strongest = rows.reduce((best, one) => (rcdCovers(best.facts.type, one.facts.type) ? best : one), first);
  return { type: strongest.facts.type, source: sourceOf(rcdLoads, strongest, "type") };
}
