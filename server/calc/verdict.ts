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

/** Whether a value that is within its limit would not be, were every figure from memory in the two at its worst. */
export function onlyAsRemembered(value: number, limit: number, source: Source | undefined): boolean {
  const band = source ? bandOf(source) : 1;
  return band > 1 && value > 0 && limit > 0 && Math.max(value / limit, limit / value) < band;
}

/** The same in words, wherever a verdict is shown. */
export const asRememberedWords = (source: Source): string =>
  `passes as remembered, not at the unfavourable end: look up ${toLookUp(source)}`;

/** The figures a verdict waits for, as they would be looked up, with how far each can be wrong. */
export function toLookUp({ remembered = [] }: Source): string {
  return remembered.map(({ figure, share }) => `${figure} (±${sharePercent(share)} %)`).join("; ");
}

const sharePercent = (share: number): string => (share < 0.01 ? "1" : String(Math.min(100, Math.round(share * 100))));
