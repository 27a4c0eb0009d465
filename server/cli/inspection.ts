import { inspectionReport } from "../reports/inspection/inspection.ts";
import { wholeResult } from "../workspace/project.ts";
import { type PaperOptions, writePaper } from "./papers.ts";
import type { Terminal } from "./terminal.ts";

/** `wayfile inspection`: the paper of the latest inspection, or why it may not be given. */
export const inspection = (path: string, options: PaperOptions, terminal: Terminal): Promise<number> =>
  writePaper(path, options, terminal, {
    report: (_, check) => {
      const checked = check();
      return inspectionReport(checked.installations, wholeResult(checked).findings);
    },
  });
