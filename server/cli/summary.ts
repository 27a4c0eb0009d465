import { none } from "../reports/common/target.ts";
import { summariesOf } from "../reports/summary/summary.ts";
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
    return summariesOf(installations, all) ?? none;
  });
}
