import { breakingCapacity, conditionalRating } from "../calc/fault-current.ts";
import { type Calculated, kiloamps, step } from "../calc/result.ts";
import { serviceFuse } from "../calc/supply-declared.ts";
import type { Context } from "../model/installation.ts";
import { breakingCapacities } from "../tables/devices.ts";
import { quotedIn } from "../tables/source.ts";
import type { WayStudy } from "./way.ts";

/** What the device of a way can break, A: as marked, or what its standard takes for granted. */
export function breakingOf({ device }: WayStudy): Calculated | undefined {
  if (!device) return undefined;
  const marked = device.breaking;
  if (marked !== undefined) {
    const source = quotedIn("434.5.1");
    return { value: marked, unit: "A", steps: [step("Icn as marked", "", kiloamps(marked))], source };
  }
  return breakingCapacity({ standard: device.standard });
}

/**
 * The conditional rating of the board as an assembly, A, where it is stated and holds: at the origin, behind a fuse no
 * larger than the one assemblies are tested with.
 */
export function conditionalAt({ board, supply }: Pick<Context, "board" | "supply">): number | undefined {
  const stated = board.facts.one("conditional-rating")?.args.value.value;
  return isTestedPlace({ board, supply }) ? stated : undefined;
}

/** A consumer unit that may be rated on condition, A, where nothing is stated of it: at the origin, behind such a fuse. */
export function conditionalPossible({ board, supply }: Pick<Context, "board" | "supply">): Calculated | undefined {
  const three = supply?.one("phases")?.args.count.value === "three";
  const unsaid = !board.facts.has("conditional-rating") && supply?.has("cutout");
  return unsaid && !three && isTestedPlace({ board, supply }) ? conditionalRating() : undefined;
}

/** Whether a board stands where its assembly was tested to stand. */
function isTestedPlace({ board, supply }: Pick<Context, "board" | "supply">): boolean {
  const cutout = supply?.one("cutout")?.args.rating.value;
  const atOrigin = board.facts.one("fed-from")?.args.from.value === "supply";
  return atOrigin && (cutout === undefined || cutout <= serviceFuse());
}

/** The next breaking capacity breakers are made with, A, that is at least a fault current. */
export function nextBreaking(fault: number): number | undefined {
  // The table lists them from the least up.
  return breakingCapacities.rows
    .filter(({ facts }) => facts.standard === "BS EN 60898")
    .map(({ facts }) => facts.icn * amperesPerKiloampere)
    .find((capacity) => capacity >= fault);
}

const amperesPerKiloampere = 1000;
