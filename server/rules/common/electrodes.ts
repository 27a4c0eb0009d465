import { type ElectrodeStudy, originElectrode, ownElectrodes } from "../../readings/electrode.ts";
import { type Uncertainty, uncertaintyOnSupply } from "../../readings/uncertainty.ts";
import type { InstallationRule, Reporter } from "../frame/rule.ts";

type Judge = (electrode: ElectrodeStudy, report: Reporter, meter?: Uncertainty) => void;

/** A question put to every electrode: the installation's, each board's and each circuit's own. */
export const ofElectrodes = (judge: Judge): Required<Pick<InstallationRule, "check" | "checkBoard">> => ({
  check(installation, report) {
    for (const electrode of originElectrode(installation)) {
      judge(electrode, report, uncertaintyOnSupply(installation, electrode.fact, electrode.reading));
    }
  },
  checkBoard(subject, report) {
    for (const electrode of ownElectrodes(subject)) judge(electrode, report);
  },
});
