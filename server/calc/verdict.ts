import { bandOf, type Source } from "../tables/source.ts";

/** How a value stands to its limit: "unproven" fails by a figure from memory, but not if that is wrong in its favour. */
export type LimitVerdict = "passes" | "unproven" | "fails";

/**
 * What a value that is beyond its limit comes to (both in one unit, and positive), once every figure from memory in the
 * two is taken at the end that favours it.
 */
export function beyondLimit(value: number, limit: number, source: Source | undefined): Exclude<LimitVerdict, "passes"> {
  const band = source ? bandOf(source) : 1;
  if (band === 1) return "fails";
  if (value === 0 || limit === 0) return value === limit ? "unproven" : "fails";
  return Math.max(value / limit, limit / value) > band ? "fails" : "unproven";
}

/** The figures a verdict waits for, as they would be looked up, with how far each can be wrong. */
export function toLookUp({ remembered = [] }: Source): string {
  return remembered.map(({ figure, share }) => `${figure} (±${sharePercent(share)} %)`).join("; ");
}

const sharePercent = (share: number): string => (share < 0.01 ? "1" : String(Math.round(share * 100)));
