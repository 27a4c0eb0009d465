import { none, targetIn } from "../reports/common/target.ts";
import { together } from "../reports/setting/document.ts";
import { workingOf } from "../reports/working/working.ts";
import { type PaperOptions, writeReportOrPaper } from "./papers.ts";
import type { Terminal } from "./terminal.ts";

export interface WorkingOptions extends PaperOptions {
  readonly way?: string;
  readonly board?: string;
}

/** `wayfile working`: the calculation of a way, a board or the installation, as it is set out on paper. */
export function working(path: string, options: WorkingOptions, terminal: Terminal): Promise<number> | number {
  const { way, board } = options;
  return writeReportOrPaper(path, options, terminal, (installations) => {
    const target = targetIn(installations, {
      ...(way === undefined ? {} : { way }),
      ...(board === undefined ? {} : { board }),
    });
    if ("failure" in target) return target;
    if (target.place) return workingOf(target.installation, target);
    return together(installations.map((installation) => workingOf(installation))) ?? none;
  });
}
