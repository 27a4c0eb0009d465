import type { Installation } from "../model/installation.ts";
import type { Fill } from "../reports/common/paper-kinds.ts";
import { none, targetIn } from "../reports/common/target.ts";
import { scheduleOf } from "../reports/schedule/schedule.ts";
import { valuesOf } from "../reports/schedule/values.ts";
import { together } from "../reports/setting/document.ts";
import { type PaperOptions, writePaper } from "./papers.ts";
import type { Terminal } from "./terminal.ts";

export interface ScheduleCommandOptions extends PaperOptions {
  readonly board?: string;
  readonly blank?: true;
  readonly last?: true;
}

/** `wayfile schedule`: circuit details and test results, one row a circuit. */
export function schedule(path: string, options: ScheduleCommandOptions, terminal: Terminal): Promise<number> {
  const fill: Fill = options.last ? "last" : options.blank ? "blank" : "filled";
  const target = (installations: readonly Installation[]) =>
    targetIn(installations, options.board === undefined ? {} : { board: options.board });
  return writePaper(path, options, terminal, {
    report: (installations) => {
      const found = target(installations);
      if ("failure" in found) return found;
      if (found.place) return scheduleOf(found.installation, { place: found.place, fill });
      return together(installations.map((one) => scheduleOf(one, { fill }))) ?? none;
    },
    values: (installations) => {
      const found = target(installations);
      return "failure" in found ? found : valuesOf(found.installation, { place: found.place, fill });
    },
  });
}
