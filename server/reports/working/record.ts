/** What the checks say, what is excused, what could not be calculated and what stands on memory. */

import type { CheckResult } from "../../rules/frame/departures.ts";
import { type Finding, severities } from "../../rules/frame/rule.ts";
import { type Gap, gapText, paragraph, part, type Section, table } from "../setting/document.ts";

type Segment = Finding["spot"]["segment"];

/** What the checks find in these lines, what is excused there, and what could not be calculated in these parts. */
export function closingParts(
  result: CheckResult,
  segments: Pick<ReadonlySet<Segment>, "has">,
  parts: readonly Section[],
): Section[] {
  return [...findingsPart(result, segments), ...openPart(parts)];
}

function findingsPart({ findings, suppressed }: CheckResult, segments: Pick<ReadonlySet<Segment>, "has">): Section[] {
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

/** Every gap of the parts before, once more in one place; nothing where there is none. */
function openPart(parts: readonly Section[]): Section[] {
  const gaps = unique(parts.flatMap(({ blocks }) => blocks.filter((block): block is Gap => block.kind === "gap")));
  return part(
    "What could not be calculated",
    table(
      ["figure", "why"],
      gaps.map(({ what, why }) => [what, why]),
    ),
  );
}

/** Figures whose source nobody has seen printed, by source: which figure of which way or board rests on it. */
export function memoryPart(sections: readonly Section[]): Section[] {
  const weak: { readonly source: string; readonly figure: string }[] = [];
  let place = "";
  for (const { level, title, blocks } of sections) {
    if (level === 1) place = shortOf(title);
    for (const block of blocks) {
      if ((block.kind !== "calculation" && block.kind !== "judgement") || block.source?.standing !== "memory") continue;
      const figure = block.kind === "calculation" ? `${block.name}: ${block.result}` : block.text;
      weak.push({ source: block.source.ref, figure: `${place} ${figure}` });
    }
  }
  const bySource = Map.groupBy(weak, ({ source }) => source);
  const rows = [...bySource].map(([source, of]) => [source, of.map(({ figure }) => figure).join("; ")]);
  // Of several places it is no part of the last.
  const level = sections.filter((one) => one.level === 1).length > 1 ? 1 : 2;
  const blocks =
    rows.length === 0
      ? [paragraph("No figure above is from memory alone.")]
      : [
          paragraph("These are from memory: check them in your own copy before you rely on them."),
          ...table(["source", "figures that rest on it"], rows),
        ];
  return [{ level, title: "Figures to verify in your own copy", blocks }];
}

/** `Way A/1 “Sockets”, ring` is A/1. */
const shortOf = (title: string): string => title.replace(/^Way (\S+).*$/, "$1").replace(/^(Board \S+).*$/, "$1");

function unique(gaps: readonly Gap[]): Gap[] {
  const seen = new Set<string>();
  return gaps.filter((one) => !seen.has(gapText(one)) && seen.add(gapText(one)));
}
