/** What the checks say, what is excused, what could not be calculated and what stands on memory. */

import type { CheckResult } from "../../rules/frame/departures.ts";
import { type Finding, severities } from "../../rules/frame/rule.ts";
import {
  type Calculation,
  type Comparison,
  type Gap,
  gapText,
  paragraph,
  part,
  type Section,
  sourceText,
  table,
} from "../setting/document.ts";

type Segment = Finding["spot"]["segment"];

export function findingsPart(
  { findings, suppressed }: CheckResult,
  segments: Pick<ReadonlySet<Segment>, "has">,
): Section[] {
  const own = findings.filter(({ spot }) => segments.has(spot.segment));
  const excused = suppressed.filter(({ finding }) => segments.has(finding.spot.segment));
  const rows = [...own]
    .sort((a, b) => grave(a) - grave(b))
    .map(({ check, severity, message }) => [severity, check, message]);
  return part("Findings and departures", [
    ...(own.length === 0
      ? [paragraph("The checks find nothing here.")]
      : table(["severity", "check", "finding"], rows)),
    ...table(
      ["departure", "reason given", "what it covers"],
      excused.map(({ finding, departure }) => [
        departure.rule,
        departure.reason,
        `${finding.check}: ${finding.message}`,
      ]),
    ),
  ]);
}

const grave = ({ severity }: Finding): number => severities.indexOf(severity);

/** Every gap of the parts before, once more in one place. */
export function openPart(parts: readonly Section[]): Section[] {
  const gaps = unique(parts.flatMap(({ blocks }) => blocks.filter((block): block is Gap => block.kind === "gap")));
  return part(
    "What could not be calculated",
    gaps.length === 0
      ? [paragraph("Every figure above could be calculated.")]
      : table(
          ["figure", "why"],
          gaps.map(({ what, why }) => [what, why]),
        ),
  );
}

/** Figures whose source nobody has seen printed. */
export function memoryPart(parts: readonly Section[]): Section[] {
  const weak = parts.flatMap(({ blocks }) =>
    blocks.filter(
      (block): block is Calculation | Comparison =>
        (block.kind === "calculation" || block.kind === "judgement") && block.source?.standing === "memory",
    ),
  );
  const rows = weak.map((block) => [
    block.kind === "calculation" ? `${block.name}: ${block.result}` : block.text,
    block.source ? sourceText(block.source) : "",
  ]);
  return part(
    "Figures to verify in your own copy",
    rows.length === 0
      ? [paragraph("No figure above is from memory alone.")]
      : [paragraph("Check these in your own copy before you rely on them."), ...table(["figure", "source"], rows)],
  );
}

function unique(gaps: readonly Gap[]): Gap[] {
  const seen = new Set<string>();
  return gaps.filter((one) => !seen.has(gapText(one)) && seen.add(gapText(one)));
}
