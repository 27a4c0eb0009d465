/** What is said of a reading that passes its limit, or keeps it, by less than its instrument may be out. */

import type { Step } from "../../calc/result.ts";
import type { Uncertainty } from "../../readings/uncertainty.ts";

/** A reading that fails stays failed: that it is within the uncertainty says only that a finer reading may settle it. */
export function withinUncertainty(uncertainty: Uncertainty | undefined, by: number): string {
  if (!uncertainty || by >= uncertainty.value) return "";
  return ` The difference is within the uncertainty of ${uncertainty.instrument}, ${uncertainty.shown}: repeat it with a finer instrument, and act on it as it stands until then.`;
}

export const nearLimit = (uncertainty: Uncertainty, shown: string, side: "under" | "over", limit: string): string =>
  `${shown} is ${side} the limit of ${limit} by less than ${uncertainty.instrument} may be out, ${uncertainty.shown}: repeat it with a finer instrument, or look for what brings it so near.`;

/** What the instruments of two days may be out by together. */
export const driftUncertainty = (
  ...taken: readonly { readonly uncertainty: Uncertainty | undefined }[]
): readonly Step[] => taken.flatMap(({ uncertainty }) => uncertaintySteps(uncertainty));

export const uncertaintySteps = (uncertainty: Uncertainty | undefined): readonly Step[] => uncertainty?.steps ?? [];

/** Two or more readings held against each other may each be out, and each the other way. */
export function together(
  uncertainties: readonly (Uncertainty | undefined)[],
  show: (value: number) => string,
): Uncertainty | undefined {
  const known = uncertainties.filter((uncertainty) => uncertainty !== undefined);
  const [first] = known;
  if (!first) return undefined;
  const value = known.reduce((sum, uncertainty) => sum + uncertainty.value, 0);
  const names = [...new Set(known.map(({ instrument }) => instrument))].join(" and ");
  const count = known.length > 1 ? ` for the ${known.length} readings together` : "";
  return {
    ...first,
    instrument: names,
    value,
    shown: `±${show(value)}${count}`,
    steps: known.flatMap(({ steps }) => steps),
  };
}
