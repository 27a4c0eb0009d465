import { amps, milliamps } from "../calc/result.ts";
import { workOf } from "./supply.ts";
import type { Rcd } from "./way.ts";

interface Named {
  readonly standard: string;
  readonly curve?: string | undefined;
  /** A. */
  readonly rating?: number | undefined;
}

/** A device as a person names it: "B32 BS EN 60898", "30 A BS 3036". */
export function deviceName({ curve, rating, standard }: Named): string {
  if (rating === undefined) return standard;
  if (curve !== undefined && Number(curve) > 0) return `type ${curve} ${amps(rating)} ${standard}`;
  return `${curve === undefined ? amps(rating) : `${curve}${rating}`} ${standard}`;
}

/** An RCD as a person names it: "30 mA type A BS EN 61009". */
export function rcdName({ sensitivity, type, standard, delayed }: Rcd): string {
  return [milliamps(sensitivity), ...(type ? [`type ${type}`] : []), ...(delayed ? ["delayed"] : []), standard].join(
    " ",
  );
}

/** Existing work is informed of a later rule, never failed by it. */
export function laterRule(part: Parameters<typeof workOf>[0]): {
  readonly severity?: "information";
  readonly words: string;
} {
  if (workOf(part) !== "existing") return { words: "" };
  return {
    severity: "information",
    words: " The rule may be later than this work: noted, not a fault.",
  };
}

/**
 * How grave it is that a required test is not recorded. New work is not certified without it, so that leaving it out is
 * no lighter than stating a limitation; of work that is in service, or not known to be new, it is asked.
 */
export const gradeOfMissing = (part: Parameters<typeof workOf>[0]): { readonly severity: "error" | "warning" } => ({
  severity: workOf(part) === "new" ? "error" : "warning",
});
