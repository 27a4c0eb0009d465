/** What is said of a reading that passes its limit, or keeps it, by less than its instrument may be out. */
import type { Doubt } from "../analysis/doubt.ts";
import type { Step } from "../calc/result.ts";

/** A reading that fails stays failed: that it is within the doubt says only that a finer reading may settle it. */
export function withinDoubt(doubt: Doubt | undefined, by: number): string {
  if (!doubt || by >= doubt.value) return "";
  return ` The difference is within the doubt of ${doubt.instrument}, ${doubt.shown}: repeat it with a finer instrument, and act on it as it stands until then.`;
}

export const nearLimit = (doubt: Doubt, shown: string, side: "under" | "over", limit: string): string =>
  `${shown} is ${side} the limit of ${limit} by less than ${doubt.instrument} may be out, ${doubt.shown}: repeat it with a finer instrument, or look for what brings it so near.`;

/** What the instruments of two days may be out by together. */
export const driftDoubt = (...taken: readonly { readonly doubt: Doubt | undefined }[]): readonly Step[] =>
  taken.flatMap(({ doubt }) => doubtSteps(doubt));

export const doubtSteps = (doubt: Doubt | undefined): readonly Step[] => doubt?.steps ?? [];
