/** What is said of the readings of a circuit: the checks that speak of them, and what the diagnosis puts first. */
import { check } from "../../server/library/index.ts";
import { rules } from "../../server/rules/list.ts";

interface Said {
  /** Checks of readings against each other, or against the drawing, that spoke for themselves. */
  readonly apart: readonly string[];
  readonly severity: string;
  /** The likeliest explanation, as it stands in the message; empty where there is none. */
  readonly first: string;
  /** All that are listed. */
  readonly listed: readonly string[];
}

const compares = new Set(rules.flatMap((rule) => (rule.scope === "way" && rule.compares ? [rule.id] : [])));

export function verdictsOf(text: string): Said {
  const findings = check(text).files.flatMap((file) => file.findings);
  const joint = findings.find((finding) => finding.check.startsWith("diagnosis/"));
  return {
    apart: findings.flatMap((finding) => (compares.has(finding.check) ? [finding.check] : [])),
    severity: joint?.severity ?? "",
    first: joint?.message ?? "",
    listed: (joint?.related ?? []).map(({ message }) => message),
  };
}
