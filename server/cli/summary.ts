import { none } from "../reports/common/target.ts";
import { summariesOf } from "../reports/summary/summary.ts";
import { wholeResult } from "../workspace/project.ts";
import { type PaperOptions, writeReportOrPaper } from "./papers.ts";
import type { Terminal } from "./terminal.ts";

export type SummaryOptions = PaperOptions;

/** `wayfile summary`: one page to sign off against. */
export function summary(path: string, options: SummaryOptions, terminal: Terminal): Promise<number> | number {
  return writeReportOrPaper(path, options, terminal, (_, check) => {
    const checked = check();
    return summariesOf(checked.installations, wholeResult(checked)) ?? none;
  });
}
