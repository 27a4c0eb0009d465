import { none } from "../reports/common/target.ts";
import { inspectionReport } from "../reports/inspection/inspection.ts";
import type { CheckResult } from "../rules/frame/departures.ts";
import { type PaperOptions, writePaper } from "./papers.ts";
import type { Terminal } from "./terminal.ts";

/** `wayfile inspection`: the paper of the latest inspection, or why it may not be given. */
export const inspection = (path: string, options: PaperOptions, terminal: Terminal): Promise<number> =>
  writePaper(path, options, terminal, {
    report: (_, check) => {
      const { files, installations, suppressed } = check();
      const [first, ...others] = installations;
      if (!first) return none;
      if (others.length > 0)
        return {
          failure: "This file holds several installations: a paper is of one, so keep each in a file of its own.",
        };
      const all: CheckResult = { findings: files.flatMap(({ findings }) => [...findings]), suppressed };
      return inspectionReport(first, all);
    },
  });
