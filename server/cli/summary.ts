import { none } from "../reports/common/target.ts";
import { summariesOf } from "../reports/summary/summary.ts";
import type { CheckResult } from "../rules/frame/departures.ts";
import { type PaperOptions, writeReportOrPaper } from "./papers.ts";
import type { Terminal } from "./terminal.ts";

export type SummaryOptions = PaperOptions;

/** `wayfile summary`: one page to sign off against. */
export function summary(path: string, options: SummaryOptions, terminal: Terminal): Promise<number> | number {
  return writeReportOrPaper(path, options, terminal, (_, check) => {
    const { files, installations, suppressed } = check();
    const all: CheckResult = { findings: files.flatMap(({ findings }) => [...findings]), suppressed };
    return summariesOf(installations, all) ?? none;
  });
}
