/** Earthing and bonding conductors at the origin: what they have to be, and what they should read. */

import { adiabaticFactor, adiabaticSize } from "../calc/adiabatic.ts";
import { fallsShort } from "../calc/compare.ts";
import { expectedResistance, resistancePerMetre } from "../calc/conductor-resistance.ts";
import { faultCurrent } from "../calc/fault-current.ts";
import { sizes } from "../calc/minimum-size.ts";
import { practiceOf } from "../calc/practice.ts";
import {
  buriedEarthingConductor,
  leastMainBonding,
  mainBonding,
  mainBondingPme,
  pmeEarthing,
  selectedOfOther,
  selectedProtective,
} from "../calc/protective-size.ts";
import { type Calculated, kiloamps, remark, squareMillimetres, step } from "../calc/result.ts";
import { memoOfBoards } from "../circuit/kept.ts";
import { testsOf } from "../circuit/supply.ts";
import { operatingCurrent, tripTimeOf } from "../circuit/trip.ts";
import type { Installation } from "../model/installation.ts";
import { exact, type FactOf, type Facts } from "../model/values.ts";
import type { Edition } from "../tables/editions.ts";
import { asWritten, combine, fromFormula } from "../tables/source.ts";
import { familyOf } from "../tables/standard-values.ts";
import { nominalVoltage } from "../tables/supply.ts";

const system = (supply: Facts<"supply">) => supply.one("earthing")?.args.system.value;

/** Metals an earthing conductor may be of. */
type Metal = "copper" | "aluminium" | "steel";

const metalOf = (supply: Facts<"supply">): Metal => supply.one("earthing-conductor")?.args.metal?.value ?? "copper";

const protectiveK = (metal: Metal) => adiabaticFactor({ use: "separate", material: metal, insulation: "pvc70" });

/**
 * The earthing conductor the tails ask for, by Table 54.7; of another metal, by k1 and k2. An electrode lets so little flow
 * that the table would ask for far too much, so in TT nothing is said.
 */
export function earthingNeed(supply: Facts<"supply">): Calculated | undefined {
  const tails = supply.one("tails")?.args.size.value;
  if (tails === undefined || !["TN-S", "TN-C-S"].includes(system(supply) ?? "")) return undefined;
  const metal = metalOf(supply);
  if (metal === "copper") return selectedProtective(tails);
  const k1 = adiabaticFactor({ use: "line", material: "copper", insulation: "pvc70", csa: tails });
  const k2 = protectiveK(metal);
  return k1 && k2 && selectedOfOther(tails, k1, k2);
}

/** What the heat of an earth fault at the origin asks of it, and whether the cut-out may be quicker than was calculated. */
interface EarthingHeat {
  readonly need: Calculated;
  readonly atMost: boolean;
}

/** By the earth fault current at the origin and the time the cut-out takes for it. */
export function earthingHeat(supply: Facts<"supply">, edition: Edition | undefined): EarthingHeat | undefined {
  const cutout = supply.one("cutout");
  const k = protectiveK(metalOf(supply));
  const current = originFault(supply);
  if (!cutout || !k || !current || !edition || !["TN-S", "TN-C-S"].includes(system(supply) ?? "")) return undefined;
  const { standard, rating } = cutout.args;
  const device = {
    standard: standard.value,
    family: familyOf(standard.value),
    curve: undefined,
    own: [],
    rating: rating.value,
    U0: voltage(supply),
    edition,
  };
  const trip = tripTimeOf(device, current.value);
  // Beyond what is kept of a fuse's curve it lets less energy through than at the last point of it: that point bounds it.
  const last = trip?.atMost ? operatingCurrent(device, trip.time.value) : undefined;
  const size = trip && adiabaticSize(last?.value ?? current.value, trip.time.value, k);
  if (!trip || !size) return undefined;
  const steps = [
    ...current.steps,
    ...trip.time.steps,
    ...(last ? [remark("a greater current lets no more energy through the fuse than that one")] : []),
    ...k.steps,
    ...size.steps,
  ];
  const source = combine(size.source, trip.time.source, current.source);
  return { need: { ...size, steps, source }, atMost: trip.atMost };
}

const voltage = (supply: Facts<"supply">): number => supply.one("U0")?.args.value.value ?? nominalVoltage.toEarth;

/** As it was measured between line and earth, else by Ze. */
function originFault(supply: Facts<"supply">): Calculated | undefined {
  const noted = exact(supply.one("PEFC")?.args.value);
  if (noted !== undefined) {
    const steps = [step("PEFC, as the schedule has it", "", kiloamps(noted))];
    return { value: noted, unit: "A", steps, source: asWritten };
  }
  const Ze = exact(supply.one("Ze")?.args.value);
  return Ze !== undefined && Ze > 0 ? faultCurrent(voltage(supply), Ze) : undefined;
}

/** What the ground asks of it: Table 54.1. Protected on both counts it is sized like any other. */
export function soilNeed(supply: Facts<"supply">): Calculated | undefined {
  const { buried, protected: against } = supply.one("earthing-conductor")?.args ?? {};
  const metal = metalOf(supply);
  if (!buried || metal === "aluminium") return undefined;
  const protection = against?.value ?? "neither";
  return buriedEarthingConductor(protection === "damage" ? "mechanical" : protection, metal);
}

/** With PME it is no thinner than the main bonding has to be: 542.3.1. */
export const pmeBondingNeed = (supply: Facts<"supply">): Calculated | undefined =>
  system(supply) === "TN-C-S" && metalOf(supply) === "copper" ? bondingNeed(supply) : undefined;

/** The most of all that is asked of it. Where the fault has been calculated and it bears that, the table is not asked. */
export function earthingLeast(supply: Facts<"supply">, edition: Edition | undefined): Calculated | undefined {
  const own = supply.one("earthing-conductor")?.args.size.value;
  const heat = earthingHeat(supply, edition)?.need;
  const bears = heat && own !== undefined && !fallsShort(own, heat.value);
  const asked = [bears ? heat : earthingNeed(supply), soilNeed(supply), pmeBondingNeed(supply)];
  return asked.reduce((most, one) => (one && (!most || one.value > most.value) ? one : most), undefined);
}

/** What a distributor asks for beyond the table. */
export const pmeNeed = (supply: Facts<"supply">): Calculated | undefined =>
  system(supply) === "TN-C-S" && metalOf(supply) === "copper" ? pmeEarthing() : undefined;

/** Main bonding: by the supply's neutral with PME, else by half the earthing conductor. */
export function bondingNeed(supply: Facts<"supply">, metal: "copper" | "aluminium" = "copper"): Calculated | undefined {
  const copper = bondingOfCopper(supply);
  return copper && (metal === "copper" ? copper : sameConductance(copper, metal));
}

function bondingOfCopper(supply: Facts<"supply">): Calculated | undefined {
  const earthing = system(supply);
  if (earthing === "TN-C-S") {
    // Tails carry the neutral of the same size. Without them the least of the table still holds.
    return mainBondingPme(supply.one("tails")?.args.size.value ?? 1);
  }
  if (earthing !== undefined && earthing !== "TN-S" && earthing !== "TT") return undefined;
  const own = supply.one("earthing-conductor")?.args.size.value;
  // Whatever the earthing and its conductor are, nothing thinner than the least of all will do.
  if (own === undefined || metalOf(supply) !== "copper" || earthing === undefined) return leastMainBonding();
  return mainBonding(own);
}

/** The least size of another metal that conducts as well: what the standard means by copper equivalent. */
function sameConductance(copper: Calculated, metal: "aluminium"): Calculated | undefined {
  const asked = resistancePerMetre(copper.value);
  const found = asked && sizes.find((csa) => (resistancePerMetre(csa, metal)?.value ?? Number.NaN) <= asked.value);
  const own = found && resistancePerMetre(found, metal);
  if (!asked || !found || !own) return undefined;
  const steps = [
    ...copper.steps,
    ...asked.steps,
    ...own.steps,
    step(`of ${metal}, to conduct as well as copper`, "", squareMillimetres(found)),
  ];
  return { value: found, unit: "mm²", steps, source: fromFormula(combine(copper.source, asked.source, own.source)) };
}

export type Bonding = FactOf<"supply", "bonding">;

/** The main bonding as the supply has it, and as the dead tests of the boards do. */
export const allBonding = (installation: Pick<Installation, "head" | "supply" | "boards">): Bonding[] =>
  [...(installation.supply?.all("bonding") ?? []), ...testedOnBoards(installation).flat()].filter(bondsSomething);

const testedOnBoards = memoOfBoards((board) =>
  testsOf<"boardDead">(board.head.facts.all("dead")).flatMap((test) => test.facts.all("bonding")),
);

/** `bonding none` is a statement of the designer, `bonding gas missing` one of an inspector: neither is a conductor. */
export const bondsSomething = ({ args }: Bonding): boolean => args.service.value !== "none" && !args.missing;

/** What a bonding conductor may read at most: its own length with a margin, and something for clamps and leads. */
export function bondingReading(
  csa: number,
  length: number,
  metal: "copper" | "aluminium" = "copper",
): { expected: Calculated; most: Calculated } | undefined {
  const perMetre = resistancePerMetre(csa, metal);
  if (!perMetre) return undefined;
  const expected = expectedResistance(perMetre, length);
  const share = practiceOf("bond-share");
  const floor = practiceOf("bond-floor");
  const value = Math.max(expected.value * share.value, expected.value + floor.value);
  const steps = [...expected.steps, ...share.steps, ...floor.steps];
  return { expected, most: { value, unit: "Ω", steps, source: combine(expected.source, share.source, floor.source) } };
}
