import { exceeds, fallsShort } from "../calc/compare.ts";
import type { Calculated, Step } from "../calc/result.ts";
import { beyondLimit } from "../calc/verdict.ts";
import { asWritten, combine, type Source } from "../tables/source.ts";

/**
 * "holds": within the limit. "fails": not, even with what is from memory at its favourable end. "unproven": beyond the
 * limit by less than that can be wrong. "ask": beyond an estimate, or guidance that may be met in another way. "figure": a value without a limit. "open": could not be calculated, and `reason` says why.
 */
export type Verdict = "holds" | "fails" | "unproven" | "ask" | "figure" | "open";

export interface Figure {
  readonly value: number;
  readonly unit: string;
}

/** One answer of a design: what was asked, the working, and how it stands. */
export interface DesignLine {
  readonly title: string;
  readonly verdict: Verdict;
  readonly value?: Figure;
  readonly limit?: Figure;
  readonly steps: readonly Step[];
  readonly source?: Source;
  /** Why it is open, or what the verdict leaves out. */
  readonly reason?: string;
  /** It is asked of a source that takes over, by this name. */
  readonly on?: string;
}

/** The same answer, on a source that takes over. */
export const onSource = (line: DesignLine, name: string): DesignLine => ({
  ...line,
  title: `${line.title} on “${name}”`,
  on: name,
});

const figureOf = ({ value, unit }: Calculated): Figure => ({ value, unit });

export const figure = (title: string, value: Calculated, reason?: string): DesignLine => ({
  title,
  verdict: "figure",
  value: figureOf(value),
  steps: value.steps,
  source: value.source,
  ...(reason === undefined ? {} : { reason }),
});

export const open = (title: string, reason: string): DesignLine => ({ title, verdict: "open", steps: [], reason });

interface Comparison {
  readonly title: string;
  readonly value: Calculated;
  readonly limit: Calculated;
  /** The limit is the least, not the most. */
  readonly least?: boolean;
  /** What is beyond it is a question, not a fault. */
  readonly guidance?: boolean;
  readonly reason?: string;
}

/** A value against its limit. */
export function compared({ title, value, limit, least = false, guidance = false, reason }: Comparison): DesignLine {
  const source = combine(value.source, limit.source);
  const holds = least ? !fallsShort(value.value, limit.value) : !exceeds(value.value, limit.value);
  return {
    title,
    verdict: holds ? "holds" : guidance ? "ask" : beyondLimit(value.value, limit.value, source),
    value: figureOf(value),
    limit: figureOf(limit),
    steps: [...value.steps, ...limit.steps],
    source,
    ...(reason === undefined ? {} : { reason }),
  };
}

/** A figure as the schedule gives it. */
export const stated = (value: number, unit: string): Calculated => ({
  value,
  unit,
  steps: [],
  source: asWritten,
});
