import type { Context } from "../../model/installation.ts";
import type { FactOf } from "../../model/values.ts";
import type { InstallationRule, Reporter } from "../frame/rule.ts";

export type SurgeDevice = FactOf<"supply" | "board", "spd">;

/** The same question about the surge protective device of the supply and that of each board. */
export const ofSurgeDevices = (
  judge: (spd: SurgeDevice, part: Pick<Context, "installation">, report: Reporter) => void,
): Required<Pick<InstallationRule, "check" | "checkBoard">> => ({
  check({ head, supply }, report) {
    const spd = supply?.one("spd");
    if (spd) judge(spd, { installation: head }, report);
  },
  checkBoard({ board, context }, report) {
    const spd = board.head.facts.one("spd");
    if (spd) judge(spd, context, report);
  },
});
