import { exceeds } from "../calc/compare.ts";
import { overload, overloadByRelay, type Relation } from "../calc/overload.ts";
import type { Calculated } from "../calc/result.ts";
import { isParallel } from "./cable.ts";
import { overloadRelay } from "./overload-relay.ts";
import type { WayStudy } from "./way.ts";

/**
 * The relations of 433.1.1 that are to hold for a way. A ring shares its load between its legs and has a capacity of its
 * own to reach; the capacity behind a BS 3036 fuse already holds what its I2 asks for.
 */
export function overloadRelations(study: WayStudy, Iz: Calculated): readonly Relation[] {
  const { device, designCurrent, isRing } = study;
  if (device?.rating === undefined) return [];
  const { standard, rating } = device;
  const Ib = designCurrent?.value ?? 0;
  const relay = overloadRelay(study);
  if (relay && !isRing && exceeds(rating, Iz.value)) return overloadByRelay({ Ib, In: rating, Iz, relay });
  const all = overload({ standard, Ib, In: rating, Iz });
  if (isRing) return all.filter(({ name }) => name === "Ib ≤ In");
  return device.family === "BS 3036" ? all.filter(({ name }) => name !== "I2 ≤ 1.45 × Iz") : all;
}

/** Whether the device protects the cable against overload, so that 435.1 takes it to be protected against faults too. */
export function overloadProtected(study: WayStudy): boolean {
  const { cable, device, capacity } = study;
  if (device?.rating === undefined || !capacity || study.isRing) return false;
  // What carries the load together does not so carry a fault in one of them.
  if (cable && isParallel(cable)) return false;
  return overloadRelations(study, capacity.value).every(({ name, holds }) => holds || name === "Ib ≤ In");
}
