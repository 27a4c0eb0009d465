/** Device against cable against load: what several checks and the hovers ask. */
import { fallsShort } from "../calc/compare.ts";
import { largerSizes, ratings } from "../calc/minimum-size.ts";
import { groundOverload, groundShare } from "../calc/overload.ts";
import { type Calculated, looked, squareMillimetres } from "../calc/result.ts";
import { ringRatings } from "../calc/ring.ts";
import type { FactOf } from "../model/values.ts";
import { type ConventionalCircuit, conventionalCircuits } from "../tables/ring.ts";
import { cellOf, type Row } from "../tables/table.ts";
import { methodOf, type SectionCapacity, sectionCapacity } from "./route-capacity.ts";
import type { WayStudy } from "./way.ts";

/** A stretch of the route with a capacity that could be calculated. */
interface RouteSection {
  readonly fact: FactOf<"way", "route">;
  readonly value: Calculated;
}

/** Of the stretches that could be calculated the one with the least capacity. */
const leastOf = (stretches: readonly SectionCapacity[]): RouteSection | undefined =>
  stretches
    .flatMap(({ fact, capacity }): RouteSection[] => ("missing" in capacity ? [] : [{ fact, value: capacity }]))
    .toSorted((one, other) => one.value.value - other.value.value)[0];

/**
 * The least capacity of the stretches that could be calculated. Another may be less still: enough to say that a device is
 * too large, never that it is right.
 */
export const leastKnownCapacity = (study: WayStudy): RouteSection | undefined => leastOf(study.capacities);

/**
 * What the device before a cable in the ground may be rated at most. Ground of 20 °C leaves less in hand for an overload
 * than air of 30 °C does, so the relation asks for more there than In ≤ Iz.
 */
export function groundLimit(study: WayStudy): RouteSection | undefined {
  if (study.isRing) return undefined;
  const least = leastOf(study.capacities.filter(({ fact }) => methodOf(fact) === "D"));
  return least && { fact: least.fact, value: groundOverload(least.value) };
}

/** The least capacity of the route with a cable of another size; nothing where a stretch cannot be calculated. */
export function capacityWith(study: WayStudy, csa: number, hottest?: 70): Calculated | undefined {
  let least: Calculated | undefined;
  for (const fact of study.facts.all("route")) {
    const capacity = sectionCapacity(study, fact, { size: csa, ...(hottest ? { hottest } : {}) });
    if ("missing" in capacity) return undefined;
    if (!least || capacity.value < least.value) least = capacity;
  }
  return least;
}

/** What no cable of this kind and size carries more than on this route; of the stretches the least that is known. */
export const capacityAtMost = (study: WayStudy): Calculated | undefined =>
  leastOf(study.facts.all("route").map((fact) => ({ fact, capacity: sectionCapacity(study, fact, { atMost: true }) })))
    ?.value;

/** The next size of cable whose capacity on this route is enough, mm². */
export function sizeFor(study: WayStudy, current: number, { hottest, from }: SizeWish = {}): number | undefined {
  const wanted = hottest === undefined && groundLimit(study) ? current / groundShare() : current;
  const least = from ?? study.cable?.line;
  if (least === undefined) return undefined;
  for (const size of largerSizes(least)) {
    const capacity = capacityWith(study, size, hottest);
    if (!capacity) return undefined;
    if (!fallsShort(capacity.value, wanted)) return size;
  }
  return undefined;
}

interface SizeWish {
  /** Conductors that may get no hotter than that, °C. */
  readonly hottest?: 70 | undefined;
  /** Sizes above this one, mm², where it is not the line conductor's. */
  readonly from?: number;
}

/** The smallest rating of the device's family that carries the load and that the cable bears. */
export function ratingFor(study: WayStudy): number | undefined {
  const { device, capacity, designCurrent } = study;
  if (!device?.family || !capacity || !designCurrent) return undefined;
  const most = Math.min(capacity.value.value, groundLimit(study)?.value.value ?? Number.POSITIVE_INFINITY);
  return ratings(device.family).find((rating) => rating >= designCurrent.value && rating <= most);
}

/** A radial socket circuit on the device of a ring, with the cable of a ring: half of a ring. */
export function radialShortfall(study: WayStudy): Calculated | undefined {
  const { cable, device, way } = study;
  if (way.kind !== "radial" || !study.servesSockets || !cable || device?.rating === undefined) return undefined;
  if (!ringRatings.includes(device.rating)) return undefined;
  // The convention is for thermoplastic cable; 90 °C conductors are judged by their capacity alone.
  if (cable.insulation !== 70 || cable.material !== "copper" || cable.construction === "mineral") return undefined;
  const row = conventionalRow("A2 radial");
  if (!row) return undefined;
  const { value, source } = cellOf(conventionalCircuits, row, "csa");
  if (cable.line >= value) return undefined;
  return { value, unit: "mm²", steps: [looked("radial, 30 or 32 A", source.ref, squareMillimetres(value))], source };
}

export const conventionalRow = (circuit: string): Row<ConventionalCircuit> | undefined =>
  conventionalCircuits.rows.find(({ facts }) => facts.circuit === circuit);

/** Why the capacity of a way cannot be calculated, with the stretch it is about. */
export function capacityGap(study: WayStudy) {
  const broken = study.facts.isUnread("route");
  if (broken || !study.cable || study.isSpare) return undefined;
  const gap = study.capacities.find(({ capacity }) => "missing" in capacity);
  if (!gap || !("missing" in gap.capacity)) return undefined;
  const stated = methodOf(gap.fact) !== undefined || gap.fact.args.method !== undefined;
  return { fact: gap.fact, missing: gap.capacity.missing, stated };
}
