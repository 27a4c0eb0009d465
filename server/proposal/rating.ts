import { fallsShort } from "../calc/compare.ts";
import { amps, relation } from "../calc/result.ts";
import { ringRatings } from "../calc/ring.ts";
import { inrushCurrent, startingCurrent, tripsOnStart } from "../circuit/motor-start.ts";
import type { WayStudy } from "../circuit/way.ts";
import { ringRules } from "../tables/ring.ts";
import { combine } from "../tables/source.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import type { Demand } from "./demand.ts";
import { type DeviceKind, ratingsOf } from "./device.ts";
import { type Draft, decision } from "./draft.ts";
import type { RuledOut, Wants } from "./proposal.ts";

const ringRow = rowOf(ringRules, { key: "device" });
const ringSource = ringRow && sourceOf(ringRules, ringRow, "value");
const ringRating = ringRow?.facts.value;

/**
 * The smallest rating that carries the load, in A; nothing where none does. A ring has one of its own. What was passed
 * over goes into `draft.ruledOut` with its reason, what was chosen into `draft.decisions`.
 */
export function chooseRating(
  study: WayStudy,
  kind: DeviceKind,
  demand: Demand,
  { keepDevice }: Wants,
  draft: Draft,
): number | undefined {
  const written = keepDevice ? study.device?.rating : undefined;
  for (const candidate of ratingsOf(kind)) {
    const { rating } = candidate;
    if (fallsShort(rating, demand.value)) {
      ruleOutTooSmall(draft, nameOf(kind, rating), rating, demand);
      continue;
    }
    if (written !== undefined && rating !== written) continue;
    const objection = objectionTo(study, kind, demand, candidate, written !== undefined);
    if (objection) {
      draft.ruledOut.push({ candidate: nameOf(kind, rating), ...objection });
      continue;
    }
    const result = `In = ${amps(rating)}${written === undefined ? "" : ", as written"}`;
    const steps = [relation("In ≥ Ib", amps(rating, demand.value), amps(demand.value, rating), true)];
    draft.decisions.push(decision("Rating of the device", result, steps, study.isRing ? ringSource : undefined));
    return rating;
  }
  return undefined;
}

/** Only the next smaller is of interest: that it does not carry the load goes for all below it. */
function ruleOutTooSmall({ ruledOut }: Draft, candidate: string, rating: number, { value }: Demand): void {
  const before = ruledOut.findIndex((one) => one.why.startsWith("In "));
  if (before >= 0) ruledOut.splice(before, 1);
  ruledOut.push({ candidate, why: `In ${amps(rating, value)} is below Ib ${amps(value, rating)}` });
}

type Objection = Omit<RuledOut, "candidate">;

/** Why a rating that carries the load is not taken. One that is written has to suit the circuit, and no more. */
function objectionTo(
  study: WayStudy,
  kind: DeviceKind,
  demand: Demand,
  { rating, against }: ReturnType<typeof ratingsOf>[number],
  isWritten: boolean,
): Objection | undefined {
  const { behind } = demand;
  if (behind !== undefined && rating < behind && !isWritten)
    return { why: `a device of ${amps(behind)} is downstream: this one would open first` };
  if (study.isRing && !ringRatings.includes(rating))
    return { why: `a ring is protected by a ${ringRating} A device`, ...(ringSource ? { source: ringSource } : {}) };
  return isWritten ? undefined : (startTrip(study, kind, rating, demand) ?? against);
}

/** Why a breaker would open on the start of its motor or transformer: the type is as it is, and a larger one holds. */
function startTrip(study: WayStudy, { family, curve }: DeviceKind, rating: number, { value }: Demand) {
  const started = family === "breaker" && study.isFinal;
  const inrush = started ? inrushCurrent(study, value) : undefined;
  const start = inrush ?? (started ? startingCurrent(study, value) : undefined);
  const trip = start && curve && tripsOnStart(start, curve, rating);
  if (!start || !trip?.certain) return undefined;
  const what = inrush
    ? `the transformer draws ${amps(inrush.value)} as it is switched on`
    : `the motor starts with ${amps(start.value)}`;
  const why = `${what}, and type ${curve} opens between ${amps(trip.least)} and ${amps(trip.most)}`;
  return { why, source: combine(start.source, trip.source) };
}

export const nameOf = ({ standard, curve }: DeviceKind, rating: number): string =>
  curve ? `${curve}${rating} ${standard}` : `${amps(rating)} ${standard}`;

export function noRating(study: WayStudy, kind: DeviceKind, demand: Demand): string {
  if (study.isRing)
    return `A ring is protected by a ${ringRating} A device, which does not carry ${amps(demand.value)}.`;
  return `No ${kind.standard} device of a usual rating carries ${amps(demand.value)}, or the one that is written does not.`;
}
