/** Earthing and bonding conductors at the origin: what they have to be, and what they should read. */
import {
  type Calculated,
  expectedResistance,
  mainBonding,
  mainBondingPme,
  pmeEarthing,
  resistancePerMetre,
  selectedProtective,
} from "../calc/index.ts";
import { practiceOf } from "../calc/practice.ts";
import type { Facts } from "../model/values.ts";
import { combine } from "../tables/source.ts";

const system = (supply: Facts<"supply">) => supply.one("earthing")?.args.system.value;

/**
 * The earthing conductor the tails ask for, by Table 54.7. An electrode lets so little flow that the table would ask for
 * far too much, so in TT nothing is said.
 */
export function earthingNeed(supply: Facts<"supply">): Calculated | undefined {
  const tails = supply.one("tails")?.args.size.value;
  if (tails === undefined || !["TN-S", "TN-C-S"].includes(system(supply) ?? "")) return undefined;
  return selectedProtective(tails);
}

/** What a distributor asks for beyond the table. */
export const pmeNeed = (supply: Facts<"supply">): Calculated | undefined =>
  system(supply) === "TN-C-S" ? pmeEarthing() : undefined;

/** Main bonding: by the supply's neutral with PME, else by half the earthing conductor. */
export function bondingNeed(supply: Facts<"supply">): Calculated | undefined {
  const earthing = system(supply);
  if (earthing === "TN-C-S") {
    // Tails carry the neutral of the same size. Without them the least of the table still holds.
    return mainBondingPme(supply.one("tails")?.args.size.value ?? 1);
  }
  const own = supply.one("earthing-conductor")?.args.size.value;
  if (own === undefined || (earthing !== "TN-S" && earthing !== "TT")) return undefined;
  return mainBonding(own);
}

/** What a bonding conductor may read at most: its own length with a margin, and something for clamps and leads. */
export function bondingReading(csa: number, length: number): { expected: Calculated; most: Calculated } | undefined {
  const perMetre = resistancePerMetre(csa);
  if (!perMetre) return undefined;
  const expected = expectedResistance(perMetre, length);
  const share = practiceOf("bond-share");
  const floor = practiceOf("bond-floor");
  const value = Math.max(expected.value * share.value, expected.value + floor.value);
  const steps = [...expected.steps, ...share.steps, ...floor.steps];
  return { expected, most: { value, unit: "Ω", steps, source: combine(expected.source, share.source, floor.source) } };
}
