import type { MinimumSize } from "../tables/protective.ts";
import { minimumSizes } from "../tables/protective.ts";
import type { Family } from "../tables/standard-values.ts";
import { standardRatings, standardResiduals, standardSizes, switchRatings } from "../tables/standard-values.ts";
import { known } from "../tables/table.ts";
import { exceeds, fallsShort } from "./compare.ts";
import type { Calculated } from "./result.ts";
import { looked, squareMillimetres, worked } from "./result.ts";

/** Least conductor size (mm², copper) by use, Table 52.3. */
export function minimumSize(use: MinimumSize["key"]): Calculated {
  const { value, source } = known(minimumSizes, { key: use }, "copper");
  return worked(value, "mm²", source, () => [looked("least size", source.ref, squareMillimetres(value))]);
}

/** The standard sizes, mm², smallest first. */
export const sizes: readonly number[] = standardSizes.rows.map(({ facts }) => facts.csa);

/**
 * The standard size (mm²) that is at least the one asked for, and at least `from` (1 mm² where fixed wiring starts);
 * undefined above the largest.
 */
export function nextSizeUp(csa: number, from = 0): number | undefined {
  return sizes.find((size) => !fallsShort(size, csa) && size >= from);
}

/** The standard sizes above one, mm², smallest first: what could be taken in its place. */
export const largerSizes = (csa: number): number[] => sizes.filter((size) => exceeds(size, csa));

/** What a table gives for a size (mm²), or where it has none for the next larger size it has: the smaller never bears more. */
export function fromAbove<T>(csa: number, given: (csa: number) => T | undefined): T | undefined {
  for (const size of [csa, ...largerSizes(csa)]) {
    const found = given(size);
    if (found !== undefined) return found;
  }
  return undefined;
}

export function isStandardSize(csa: number): boolean {
  return sizes.includes(csa);
}

/** The standard ratings of a family, A, smallest first. */
export function ratings(family: Family): number[] {
  return standardRatings.rows.filter(({ facts }) => facts.family === family).map(({ facts }) => facts.rating);
}

/** The standard rating (A) of a family that is at least a current; undefined above the largest. */
export function nextRatingUp(family: Family, current: number): number | undefined {
  return ratings(family).find((rating) => rating >= current);
}

/** The rating (A) of a switch, an RCD or a busbar that is at least a current; undefined above the largest. */
export const nextSwitchUp = (current: number): number | undefined =>
  switchRatings.rows.find(({ facts }) => facts.rating >= current)?.facts.rating;

/** The standard rated residual currents, A. */
export const residuals: readonly number[] = standardResiduals.rows.map(({ facts }) => facts.residual);
