/** What the cable of a way carries on each stretch of its route. */

import {
  type CapacityQuestion,
  type Conditions,
  correctedCapacity,
  factorsOfOne,
  type Method,
  tabulatedCapacity,
} from "../calc/capacity.ts";
import { capacityBound } from "../calc/capacity-bound.ts";
import type { Arrangement } from "../calc/capacity-factors.ts";
import { otherCapacity } from "../calc/capacity-other.ts";
import { reproducible } from "../calc/reproducible.ts";
import { amps, type Calculated, plain, type Step, worked } from "../calc/result.ts";
import type { FactOf, Facts } from "../model/values.ts";
import { busbarAmbient } from "../tables/busbar.ts";
import { fireResistingRating, tabulatedAt } from "../tables/factors.ts";
import { parallelSources } from "../tables/parallel.ts";
import { combine, fromFormula, type Sourced } from "../tables/source.ts";
import type { Cable } from "./cable.ts";
import type { Device } from "./device.ts";

/** What of a circuit decides what its cable carries. */
interface Loading {
  readonly cable: Cable | undefined;
  readonly device: Device | undefined;
  readonly isRing: boolean;
  readonly threePhase: boolean;
}

/** The capacity of one stretch of the route. */
export interface SectionCapacity {
  readonly fact: FactOf<"way", "route">;
  /** Iz, A; or why it could not be calculated. */
  readonly capacity: Calculated | { readonly missing: string };
}

export function capacitiesOf(study: Loading & { readonly facts: Facts<"way"> }): SectionCapacity[] {
  return study.facts.all("route").map((fact) => ({ fact, capacity: sectionCapacity(study, fact) }));
}

const usualMethod: Readonly<Record<string, Method>> = {
  conduit: "B",
  trunking: "B",
  clipped: "C",
  tray: "E",
  ladder: "E",
  "free-air": "E",
  overhead: "E",
  duct: "D",
  buried: "D",
};

const arrangements: Readonly<Record<string, Arrangement>> = {
  bunched: "bunched",
  layer: "wall",
  "tray-layer": "tray",
  "ladder-layer": "ladder",
};

/** The reference method that is written, or the one the kind of route implies. */
export function methodOf(fact: FactOf<"way", "route">): Method | undefined {
  const written = fact.args.method?.value;
  if (written !== undefined) return written === "F" ? undefined : written;
  const kind = fact.args.kind?.value;
  if (kind !== undefined) return usualMethod[kind];
  // What a route is in is a conduit or a trunking, and both are meant by the same method.
  return fact.args.in && usualMethod.conduit;
}

/** Whether a stretch lies in the ground, in a duct or without. */
export const isInGround = ({ args: { kind, method } }: FactOf<"way", "route">): boolean =>
  kind?.value === "buried" || kind?.value === "duct" || method?.value === "D";

const layOf = ({ args }: FactOf<"way", "route">): Arrangement =>
  arrangements[args.arrangement?.value ?? ""] ?? "bunched";

/** What is stated of the ground a stretch lies in. */
const earthOf = ({ args: { kind, soil, depth, apart } }: FactOf<"way", "route">): NonNullable<Conditions["earth"]> => ({
  lie: kind?.value === "duct" ? "duct" : "buried",
  ...(soil ? { soil: soil.value } : {}),
  ...(depth ? { depth: depth.value } : {}),
  ...(apart ? { apart: apart.value } : {}),
});

/** What else than the cable as it is a capacity is asked for. */
interface CapacityWish {
  /** Another size, mm², to see what would serve. */
  readonly size?: number;
  /** Conductors that may get no hotter than that, °C. */
  readonly hottest?: 70;
  /** Not what the cable carries but what none of its kind exceeds, known better. */
  readonly atMost?: boolean;
}

/** Iz of one stretch of the route: of cables in parallel, the sum of what each of them carries (433.4.1). */
export function sectionCapacity(
  study: Loading,
  fact: FactOf<"way", "route">,
  wish: CapacityWish = {},
): SectionCapacity["capacity"] {
  const one = capacityOfOne(study, fact, wish);
  return "missing" in one ? one : capacityOfAll(one, study.cable?.parallel.line ?? 1);
}

/** Of so many cables in parallel that carry alike. */
export function capacityOfAll(one: Calculated, count: number): Calculated {
  if (count === 1) return one;
  const value = one.value * count;
  return worked(value, one.unit, fromFormula(combine(one.source, parallelSources.capacity)), () => [
    ...one.steps,
    reproducible(
      `Iz of ${count} in parallel`,
      [[one.value, amps]],
      { write: (Iz) => `${count} × ${Iz}`, compute: (Iz) => count * Iz },
      [value, amps],
    ),
  ]);
}

function capacityOfOne(
  study: Loading,
  fact: FactOf<"way", "route">,
  { size, hottest, atMost = false }: CapacityWish,
): SectionCapacity["capacity"] {
  const { cable } = study;
  if (!cable) return { missing: "the cable is not described" };
  // What is stated of a cable is of its own size, and for terminals of its own temperature.
  const stated = size === undefined && hottest === undefined && !atMost ? cable.own?.carries : undefined;
  const method = methodOf(fact) ?? (stated && "C");
  if (!method) {
    const written = fact.args.method?.value;
    return { missing: written ? `no table here gives method ${written}` : "the reference method is not stated" };
  }
  if (cable.construction === "busbar-trunking") return busbarCapacity(fact, stated);
  if (stated) return correctedCapacity({ It: stated, ...conditionsOf(study, fact, method, cable.insulation) });
  if (cable.material !== "copper")
    return { missing: `no table here gives the capacity of ${cable.material} ${cable.construction} cable` };
  const insulation = hottest ?? cable.insulation;
  const csa = size ?? cable.line;
  const { construction } = cable;
  const question = { insulation, method, loaded: study.threePhase ? 3 : 2, csa } as const;
  const It =
    construction === "mineral" || construction === "flex"
      ? otherCapacity({ ...question, construction })
      : ordinaryCapacity({ ...question, construction }, cable, atMost);
  if (!It) return { missing: notTabled(study, construction, csa, method) };
  return correctedCapacity({ It, ...conditionsOf(study, fact, method, insulation) });
}

/** Of singles, flat, multicore and armoured cable; `atMost` bounds what is remembered only. */
function ordinaryCapacity(
  question: CapacityQuestion,
  { fireResisting }: Cable,
  atMost: boolean,
): Sourced<number> | undefined {
  const It = atMost ? capacityBound(question) : tabulatedCapacity(question);
  return It && fireResisting ? { ...It, source: combine(It.source, fireResistingRating) } : It;
}

/** Two loaded conductors are what is meant; three are said, for a table may well have the cable with two. */
const notTabled = ({ threePhase }: Loading, construction: string, csa: number, method: string): string =>
  `no table here gives ${construction} ${csa} mm² by method ${method}${threePhase ? " on three lines" : ""}`;

/** What the maker of busbar trunking rates it for, and beyond his temperature by his factor alone. */
function busbarCapacity(
  { args: { ambient, factor, by } }: FactOf<"way", "route">,
  stated: Sourced<number> | undefined,
): SectionCapacity["capacity"] {
  if (!stated) return { missing: "busbar trunking is rated by its maker: write carries" };
  const usual = busbarAmbient.value;
  if (ambient && ambient.value > usual && !factor)
    return {
      missing: `busbar trunking is rated at ${plain(usual)} °C: write its maker's factor for ${plain(ambient.value)} °C`,
    };
  const ref = by ? `As stated, “${by.value}”` : "As stated for this route";
  return correctedCapacity({
    It: stated,
    insulation: 70,
    ...(factor ? { own: { value: factor.value / 100, source: { ref, standing: "quoted" as const } } } : {}),
  });
}

/** The factors of a stretch that are 1, for a working that shows them all. */
export function factorsOfOneOn(study: Loading, fact: FactOf<"way", "route">): readonly Step[] {
  const { cable } = study;
  const method = methodOf(fact) ?? "C";
  if (cable?.construction === "busbar-trunking") return [];
  return cable ? factorsOfOne(conditionsOf(study, fact, method, cable.insulation), method === "D") : [];
}

function conditionsOf(
  study: Loading,
  fact: FactOf<"way", "route">,
  method: Method,
  insulation: 70 | 90,
): Omit<Conditions, "It"> {
  const { device } = study;
  const construction = study.cable?.construction;
  const { grouped, ambient, insulated, factor, by } = fact.args;
  const ref = by ? `As stated, “${by.value}”` : "As stated for this route";
  const inGround = method === "D";
  // Each of several cables in parallel warms the others as a circuit does (523.7, 523.5).
  const together = (grouped?.value ?? 1) + (study.cable?.parallel.line ?? 1) - 1;
  return {
    insulation,
    ...(ambient && !inGround ? { ambient: ambient.value } : {}),
    // Colder ground than the tables assume only helps.
    ...(ambient && inGround && ambient.value > tabulatedAt.ground ? { ground: ambient.value } : {}),
    ...(together > 1 ? { grouped: { circuits: together, arrangement: layOf(fact) } } : {}),
    ...(inGround ? { earth: earthOf(fact) } : {}),
    ...(insulated ? { insulated: insulated.value } : {}),
    ...(construction === "mineral" || construction === "flex" ? { other: construction } : {}),
    ...(factor ? { own: { value: factor.value / 100, source: { ref, standing: "quoted" as const } } } : {}),
    // The 20 A of a ring are its cable's own, whichever of the permitted devices stands before it.
    ...(device?.family === "BS 3036" && !study.isRing ? { semiEnclosed: true } : {}),
  };
}
