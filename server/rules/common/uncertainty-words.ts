/** The words for a reading that fails or passes by less than the uncertainty of its instrument. */

import type { Step } from "../../calc/result.ts";
import type { Uncertainty } from "../../readings/uncertainty.ts";

/**
 * A reading that fails stays failed: that it is within the uncertainty means only that a more accurate reading may settle
 * it. `by` is how far it is beyond what was allowed, a tolerance included.
 */
export function withinUncertainty(uncertainty: Uncertainty | undefined, by: number): string {
  if (!uncertainty || by >= uncertainty.value) return "";
  return ` That is beyond the limit by less than the uncertainty of ${uncertainty.instrument} (${uncertainty.shown}): treat it as failed until a more accurate reading settles it.`;
}

/** The same for readings that are compared with each other, where the limit is a tolerance that the message need not give. */
export function beyondTolerance(uncertainty: Uncertainty | undefined, by: number): string {
  if (!uncertainty || by >= uncertainty.value) return "";
  return ` That exceeds the tolerance by less than the uncertainty of ${uncertainty.instrument} (${uncertainty.shown}): a more accurate reading would settle it.`;
}

export const nearLimit = (uncertainty: Uncertainty, shown: string, side: "under" | "over", limit: string): string =>
  `${shown} is ${side} the limit of ${limit} by less than the uncertainty of ${uncertainty.instrument} (${uncertainty.shown}): repeat it more accurately.`;

/** The uncertainty of the instruments of two days together. */
export const driftUncertainty = (
  ...taken: readonly { readonly uncertainty: Uncertainty | undefined }[]
): readonly Step[] => taken.flatMap(({ uncertainty }) => uncertaintySteps(uncertainty));

export const uncertaintySteps = (uncertainty: Uncertainty | undefined): readonly Step[] => uncertainty?.steps ?? [];

/** Readings that are compared with each other may each be out, and each the other way. */
export function together(
  uncertainties: readonly (Uncertainty | undefined)[],
  show: (value: number) => string,
): Uncertainty | undefined {
  const known = uncertainties.filter((uncertainty) => uncertainty !== undefined);
  const [first] = known;
  if (!first) return undefined;
  const value = known.reduce((sum, uncertainty) => sum + uncertainty.value, 0);
  const names = [...new Set(known.map(({ instrument }) => instrument))].join(" and ");
  const count = known.length > 1 ? `, ${known.length} readings together` : "";
  return {
    ...first,
    instrument: names,
    value,
    shown: `±${show(value)}${count}`,
    steps: known.flatMap(({ steps }) => steps),
  };
}
