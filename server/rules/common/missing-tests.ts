import type { Finding } from "../frame/rule.ts";

/** The checks that speak of a test which the stage asks for and which is not there. */
export const missingTests: readonly string[] = [
  "continuity/missing",
  "insulation/missing",
  "insulation/pair-missing",
  "live/not-tested",
  "live/phase-sequence-missing",
  "live/zs-missing",
  "polarity/missing",
  "afdd/test-button-missing",
  "rcd/test-button-missing",
  "rcd/test-missing",
  "rcd/test-without-result",
  "ring/ends-missing",
  "ring/points-missing",
];

const known: ReadonlySet<string> = new Set(missingTests);

export const isMissingTest = ({ check }: Pick<Finding, "check">): boolean => known.has(check);
