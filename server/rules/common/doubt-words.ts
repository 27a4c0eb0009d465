/** What is said of a reading that passes its limit, or keeps it, by less than its instrument may be out. */

import type { Step } from "../../calc/result.ts";
import type { Doubt } from "../../readings/doubt.ts";

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

/** Two or more readings held against each other may each be out, and each the other way. */
export function together(doubts: readonly (Doubt | undefined)[], show: (value: number) => string): Doubt | undefined {
  const known = doubts.filter((doubt) => doubt !== undefined);
  const [first] = known;
  if (!first) return undefined;
  const value = known.reduce((sum, doubt) => sum + doubt.value, 0);
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
