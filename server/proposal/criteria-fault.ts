/** What a fault to earth asks of a cable: a loop that trips its device, and a protective conductor that bears it. */

import { heatBehindFuse } from "../boards/energy.ts";
import { exceeds } from "../calc/compare.ts";
import { amps, kiloamps, ohms, plain, squareMillimetres } from "../calc/result.ts";
import { conductorPerMetre, whyNoCpc } from "../circuit/cpc.ts";
import { greatestFault } from "../circuit/faults.ts";
import { enclosureNeed, suffices } from "../circuit/protective.ts";
import { greatestWithstand } from "../circuit/withstand.ts";
import { designLoop, protectiveAtFault } from "../readings/loop.ts";
import { aboveBound, boundWords } from "../readings/loop-bound.ts";
import { combine } from "../tables/source.ts";
import { noLength } from "./drop.ts";
import { asRememberedNote, type Criterion, type Verdict } from "./verdict.ts";

export const loopTitle = "Loop impedance";
const protectiveTitle = "Protective conductor";
/** What a gentler device eases. */
export const faultTitles: readonly string[] = [loopTitle, protectiveTitle];

export const loop: Criterion = (trial) => {
  const title = loopTitle;
  const { disconnection, device } = trial;
  const unknown = (text: string): Verdict => ({ title, holds: undefined, text, steps: [] });
  if (!trial.length) return unknown(noLength);
  if (!trial.context.edition) return unknown("No edition is named: the loop was not judged.");
  if (!trial.supply.earthing) return unknown("The earthing is not written: the loop was not judged.");
  const above = aboveBound(trial);
  if (above) {
    const { loop: found, bound } = above;
    const source = combine(found.source, bound.limit.source);
    const text = `Zs ${ohms(found.value)} warm against no more than the ${boundWords(bound)}`;
    return { title, holds: false, text, steps: [...found.steps, ...bound.limit.steps], source };
  }
  if (!disconnection) {
    const name = device?.rating === undefined ? "this device" : `${amps(device.rating)} ${device.standard}`;
    return unknown(`No table here gives the limit of Zs for ${name}: the loop was not judged.`);
  }
  const found = designLoop(trial);
  if (!found) {
    const why =
      trial.cable && !conductorPerMetre(trial.cable, "cpc") ? whyNoCpc(trial.cable) : "no Ze or Zdb is written";
    return unknown(`The loop was not calculated: ${why}.`);
  }
  const { limit } = disconnection;
  const holds = found.value <= limit.value;
  const source = combine(found.source, limit.source);
  const note = asRememberedNote(holds, found.value, limit.value, source);
  return {
    title,
    holds,
    text: `Zs ${ohms(found.value)} warm against ${ohms(limit.value)}${note}`,
    steps: [...found.steps, ...limit.steps],
    source,
  };
};

export const protective: Criterion = (trial) => {
  const title = protectiveTitle;
  const { cable } = trial;
  if (cable?.cpcBy === "none") return undefined;
  const found = protectiveAtFault(trial);
  if (!found) {
    const how = cable?.cpcBy ?? "protective conductor";
    const need = enclosureNeed(trial);
    const asked = need ? ` Table 54.7 requires ${squareMillimetres(need.value)} of steel.` : "";
    return {
      title,
      holds: undefined,
      text: `Whether the ${how} is enough for a fault was not calculated.${asked}`,
      steps: need?.steps ?? [],
    };
  }
  const { need, has, method } = found;
  const by = method === "table" ? "Table 54.7" : "the heat of the fault";
  return {
    title,
    holds: suffices(found),
    text: `${squareMillimetres(has.value)}${found.of === "armour" ? " of armour" : ""} against ${plain(need.value)} mm² by ${by}`,
    steps: found.of === "armour" ? [...has.steps, ...need.steps] : need.steps,
    source: combine(need.source, has.source),
  };
};

/** The smallest fault lasts longest: what carries the load together need not bear it in one of several in parallel. */
export const liveConductors: Criterion = (trial, _demand, { node }) => {
  const heat = node && heatBehindFuse(node, trial);
  if (!heat || !trial.cable) return undefined;
  const { need, fails, fault, where } = heat;
  return {
    title: "Live conductors in a fault",
    holds: !fails,
    text: `${squareMillimetres(trial.cable.line)} against the ${squareMillimetres(need.value)} that ${kiloamps(fault.value)} ${where} needs`,
    steps: need.steps,
    source: need.source,
  };
};

/** The fault current where busbar trunking begins against what its maker has it withstand. */
export const withstand: Criterion = (trial) => {
  const most = greatestWithstand(trial.cable);
  const fault = greatestFault(trial.context);
  if (!most || !fault) return undefined;
  return {
    title: "Short-circuit withstand",
    holds: !exceeds(fault.value, most.value),
    text: `${most.name} ${kiloamps(most.value)} against ${fault.name} ${kiloamps(fault.value)}`,
    steps: most.steps,
    source: most.source,
  };
};
