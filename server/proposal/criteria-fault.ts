/** What a fault to earth asks of a cable: a loop that trips its device, and a protective conductor that bears it. */
import { designLoop } from "../analysis/loop.ts";
import { protectiveNeed } from "../analysis/protective.ts";
import { amps, ohms, plain, squareMillimetres } from "../calc/result.ts";
import { combine } from "../tables/source.ts";
import { noLength } from "./drop.ts";
import type { Criterion, Verdict } from "./verdict.ts";

export const loop: Criterion = (trial) => {
  const title = "Loop impedance";
  const { disconnection, device } = trial;
  const unknown = (text: string): Verdict => ({ title, holds: undefined, text, steps: [] });
  if (!trial.length) return unknown(noLength);
  if (!trial.context.edition) return unknown("No edition is named: the loop was not judged.");
  if (!trial.supply.earthing) return unknown("The earthing is not written: the loop was not judged.");
  if (!disconnection) {
    const name = device?.rating === undefined ? "this device" : `${amps(device.rating)} ${device.standard}`;
    return unknown(`No table here gives the limit of Zs for ${name}: the loop was not judged.`);
  }
  const found = designLoop(trial);
  if (!found) {
    const why =
      trial.cable?.cpc === undefined ? "the protective conductor has no size here" : "no Ze or Zdb is written";
    return unknown(`The loop was not reckoned: ${why}.`);
  }
  const { limit } = disconnection;
  return {
    title,
    holds: found.value <= limit.value,
    text: `Zs ${ohms(found.value)} warm against ${ohms(limit.value)}`,
    steps: [...found.steps, ...limit.steps],
    source: combine(found.source, limit.source),
  };
};

export const protective: Criterion = (trial) => {
  const title = "Protective conductor";
  const { cable } = trial;
  if (cable?.cpcBy === "none") return undefined;
  const found = protectiveNeed(trial);
  if (!found || cable?.cpc === undefined) {
    const how = cable?.cpcBy ?? "protective conductor";
    return { title, holds: undefined, text: `Whether the ${how} is enough for a fault was not reckoned.`, steps: [] };
  }
  const { need, method } = found;
  const by = method === "table" ? "Table 54.7" : "the heat of the fault";
  return {
    title,
    holds: cable.cpc >= need.value,
    text: `${squareMillimetres(cable.cpc)} against ${plain(need.value)} mm² by ${by}`,
    steps: need.steps,
    source: need.source,
  };
};
