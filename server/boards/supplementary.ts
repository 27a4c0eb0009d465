/** What the supplementary bonding of a place may read, by the devices of the place. */

import { greatestBy } from "../calc/compare.ts";
import { supplementaryByCpc, supplementaryResistance, supplementaryTime } from "../calc/protective-size.ts";
import { type Calculated, milliamps, remark, step } from "../calc/result.ts";
import { deviceName, rcdName } from "../circuit/describe.ts";
import { operatingCurrent, trippingOf } from "../circuit/trip.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { FactOf } from "../model/values.ts";
import { asWritten, combine } from "../tables/source.ts";

export type Supplementary = FactOf<"board", "supplementary-bonding">;

/** What it may read at most, and the way that decides it; or why that is not known. */
type SupplementaryLimit = { readonly limit: Calculated; readonly study: WayStudy } | { readonly missing: string };

/** The circuit whose device needs the most current decides: 50 V / Ia is the least for it. */
export function supplementaryLimit({ args }: Supplementary, studies: readonly WayStudy[]): SupplementaryLimit {
  const place = args.place.value;
  const found = there(place, studies);
  if (found.length === 0) return { missing: `no circuit of this board says that it is in the place (${place})` };
  let most: { study: WayStudy; current: Calculated } | undefined;
  for (const study of found) {
    const current = clearingCurrent(study);
    if (!current) return { missing: `what clears a fault on way ${study.way.id} is not known here` };
    if (!most || current.value > most.current.value) most = { study, current };
  }
  if (!most) return { missing: "no device is known" };
  return { limit: supplementaryResistance(most.current), study: most.study };
}

/** By the largest core that serves as protective conductor in the place, where that asks for more than the least size. */
export function supplementaryOfCpc(
  { args }: Supplementary,
  studies: readonly WayStudy[],
): { readonly need: Calculated; readonly study: WayStudy } | undefined {
  const largest = greatestBy(there(args.place.value, studies), ({ cable }) =>
    cable?.material === "copper" ? cable.cpc : undefined,
  );
  const need = largest && supplementaryByCpc(largest.figure, !!args.shielded);
  return need && { need, study: largest.one };
}

const there = (place: string, studies: readonly WayStudy[]): WayStudy[] =>
  studies.filter(({ isSpare, places, uses }) => !isSpare && places.has(place) && !uses.has("selv"));

/** IΔn of the most sensitive RCD, or what operates the overcurrent device in 5 s. */
function clearingCurrent(study: WayStudy): Calculated | undefined {
  const [rcd] = study.rcds.toSorted((one, other) => one.sensitivity - other.sensitivity);
  if (rcd) {
    const steps = [step(`Ia = IΔn of ${rcdName(rcd)}, way ${study.way.id}`, "", milliamps(rcd.sensitivity))];
    return { value: rcd.sensitivity, unit: "A", steps, source: asWritten };
  }
  const device = trippingOf(study);
  const time = supplementaryTime();
  const current = device && operatingCurrent(device, time.value);
  if (!current || !study.device) return undefined;
  const steps = [remark(`Ia of way ${study.way.id}: ${deviceName(study.device)}`), ...current.steps];
  return { ...current, steps, source: combine(current.source, time.source) };
}
