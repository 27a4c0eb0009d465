import { type Doubt, doubtOnSupply } from "../analysis/doubt.ts";
import { type ElectrodeStudy, originElectrode, ownElectrodes } from "../analysis/electrode.ts";
import type { InstallationRule, Reporter } from "./rule.ts";

type Judge = (electrode: ElectrodeStudy, report: Reporter, meter?: Doubt) => void;

/** A question put to every electrode: the installation's, each board's and each circuit's own. */
export const ofElectrodes = (judge: Judge): Required<Pick<InstallationRule, "check" | "checkBoard">> => ({
  check(installation, report) {
    for (const electrode of originElectrode(installation)) {
      judge(electrode, report, doubtOnSupply(installation, electrode.fact, electrode.reading));
    }
  },
  checkBoard(subject, report) {
    for (const electrode of ownElectrodes(subject)) judge(electrode, report);
  },
});
