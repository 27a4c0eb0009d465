import type { WayStudy } from "../circuit/way.ts";
import type { CableCandidate } from "./cable.ts";
import { verdictsOf } from "./criteria.ts";
import type { Demand } from "./demand.ts";
import type { Draft } from "./draft.ts";
import { type CableChoice, type DeviceChoice, sizeText } from "./lines.ts";
import { trialOf } from "./trial.ts";
import type { Place, Verdict } from "./verdict.ts";

export interface ChosenCable {
  readonly candidate: CableCandidate;
  readonly trial: WayStudy;
  readonly verdicts: readonly Verdict[];
}

interface Asked {
  readonly study: WayStudy;
  readonly device: DeviceChoice;
  readonly demand: Demand;
  readonly place: Place;
}

/** The smallest cable of which nothing says that it does not fit. */
export function chooseCable(
  { study, device, demand, place }: Asked,
  candidates: readonly CableCandidate[],
  draft: Draft,
  except?: string,
): ChosenCable | undefined {
  for (const candidate of candidates) {
    const trial = trialOf(study, device, candidate.choice);
    if (!trial) continue;
    const verdicts = verdictsOf(trial, demand, place, except);
    const failed = verdicts.find(({ holds }) => holds === false);
    if (!failed) return { candidate, trial, verdicts };
    const { title, text, source } = failed;
    draft.ruledOut.push({
      candidate: sizesOf(candidate.choice),
      why: `${title.toLowerCase()}: ${text}`,
      by: title,
      ...(source ? { source } : {}),
    });
  }
  return undefined;
}

export const sizesOf = ({ line, cpc }: CableChoice): string =>
  `${sizeText(line)}${cpc === undefined ? "" : `, cpc ${sizeText(cpc)}`}`;
