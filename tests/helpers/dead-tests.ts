/** Findings of the dead-test families alone, as `id at line`, for tests of several checks together. */

import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "./sample.ts";

export const deadFamilies = ["ring", "continuity", "insulation", "polarity"] as const;

const usual: Setting = { stage: "installed" };

interface DeadFinding {
  readonly check: string;
  /** Counted in the sample, from 1. */
  readonly line: number;
  readonly severity: string;
  readonly message: string;
}

/** What the dead-test checks say of a way's lines. */
export function deadFindings(lines: string, setting: Setting = usual, families: readonly string[] = deadFamilies) {
  const { text, above } = inSetting(lines, setting);
  const all = findingsOf(text);
  const broken = all.filter(({ check }) => check.startsWith("language/") && !check.startsWith("language/unknown-name"));
  if (broken.length > 0) throw new Error(`The sample is not sound: ${broken.map(({ message }) => message).join(" ")}`);
  return all
    .filter(({ check }) => families.some((family) => check.startsWith(`${family}/`)))
    .map((finding): DeadFinding => ({ ...finding, line: finding.line - above }));
}

export const idsOf = (findings: readonly DeadFinding[]): string[] =>
  [...new Set(findings.map(({ check }) => check))].sort();
