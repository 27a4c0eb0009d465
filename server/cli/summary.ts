import type { Installation } from "../model/installation.ts";
import { none } from "../reports/common/target.ts";
import { together } from "../reports/setting/document.ts";
import { summaryOf } from "../reports/summary/summary.ts";
import type { CheckResult } from "../rules/frame/departures.ts";
import { type Setting, writeReport } from "./reporting.ts";
import type { Terminal } from "./terminal.ts";

export interface SummaryOptions {
  readonly format: Setting;
}

/** `wayfile summary`: one page to sign off against. */
export function summary(path: string, { format }: SummaryOptions, terminal: Terminal): number {
  return writeReport(path, format, terminal, (_, check) => {
    const { files, installations, suppressed } = check();
    const all: CheckResult = { findings: files.flatMap(({ findings }) => [...findings]), suppressed };
    return together(installations.map((one) => summaryOf(one, shareOf(one, all, installations)))) ?? none;
  });
}

/** What belongs to no other installation of the file. */
function shareOf(own: Installation, all: CheckResult, installations: readonly Installation[]): CheckResult {
  const others = new Set(installations.filter((one) => one !== own).flatMap(segmentsOf));
  return {
    findings: all.findings.filter(({ spot }) => !others.has(spot.segment)),
    suppressed: all.suppressed.filter(({ finding }) => !others.has(finding.spot.segment)),
  };
}

const segmentsOf = ({ head, supply, boards }: Installation) => [
  head.header.segment,
  ...head.facts.list.map(({ segment }) => segment),
  ...(supply?.list ?? []).map(({ segment }) => segment),
  ...boards.flatMap(({ board }) => board.segments),
];
