/** The fault current the device has to break, as it is noted or as it is calculated along the feeders. */

import { type FaultLevels, faultLevels, leastFaults } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { faultCurrent, prospective } from "../../calc/fault-current.ts";
import { type Calculated, kiloamps } from "../../calc/result.ts";
import { breakingOf, conditionalAt } from "../../circuit/breaking.ts";
import { greatestFault } from "../../circuit/faults.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { isThreePhase } from "../../model/three-lines.ts";
import { combine } from "../../tables/source.ts";
import { originText } from "../common/written.ts";
import {
  type Block,
  type Comparison,
  calculate,
  compareWithLimit,
  gap,
  paragraph,
  part,
  type Section,
} from "../setting/document.ts";

export const faultPart = (study: WayStudy, node: BoardNode | undefined): Section[] =>
  part("Fault current and breaking capacity", faultBlocks(study, node));

function faultBlocks(study: WayStudy, node: BoardNode | undefined): Block[] {
  const { context, device, boardImpedance, supply } = study;
  const fault = greatestFault(context);
  const levels = fault ? undefined : node && faultLevels(node);
  const loop = boardImpedance && boardImpedance.value > 0 ? faultCurrent(supply.U0, boardImpedance.value) : undefined;
  const capacity = breakingOf(study);
  const least = node && leastFaults(node, study).earth;
  const noMark = device ? "it is not marked, and its standard takes none for granted" : "no device is described";
  const blocks: Block[] = [
    ...(fault ? [noted(fault)] : calculated(levels)),
    ...(loop ? [calculate("Earth fault current by the loop at the board", loop, prospective(loop.value), "")] : []),
    ...(least
      ? [calculate("Least earth fault current at the far point, hot", least, prospective(least.value), "")]
      : []),
    calculate("Breaking capacity of the device", capacity, kiloamps(capacity?.value ?? 0), noMark),
  ];
  if (!capacity || (!fault && !levels))
    return [...blocks, gap("Breaking capacity against fault current", "one of the two is not known")];
  const verdict = fault ? against(fault.name, fault.value, capacity) : levels && byLevels(levels, capacity);
  const most = fault?.value ?? levels?.bound.value ?? 0;
  const remark =
    isThreePhase(study.context) && fault
      ? [paragraph("At a three-phase board the figure has to be that between lines.")]
      : [];
  return [...blocks, ...(verdict ? [excused(study, verdict, most)] : []), ...remark];
}

function noted(fault: NonNullable<ReturnType<typeof greatestFault>>): Block {
  const origin = originText(fault.fact);
  const name = `Fault current to break (${fault.name}, noted at the ${fault.at}${origin ? `, ${origin}` : ""})`;
  return calculate(name, { steps: [], source: { ref: "", standing: "printed" } }, kiloamps(fault.value), "");
}

function calculated(levels: FaultLevels | undefined): Block[] {
  if (!levels)
    return [gap("Fault current to break", "none is noted for this board, and what lies upstream does not give it")];
  const { greatest, bound } = levels;
  return [
    calculate("Fault current to break, calculated along the feeders", greatest, kiloamps(greatest.value), ""),
    ...(bound.value === greatest.value ? [] : [calculate("No more than", bound, kiloamps(bound.value), "")]),
  ];
}

function against(name: string, value: number, capacity: Calculated): Comparison {
  const holds = !exceeds(value, capacity.value);
  const text = `${name} ${kiloamps(value)} ${holds ? "≤" : ">"} Icn ${kiloamps(capacity.value)}`;
  const figures = { value, limit: capacity.value };
  return compareWithLimit(holds, text, capacity.source, figures, `${kiloamps(capacity.value - value)} left`);
}

/** Only what surely flows fails a device; only what cannot be passed clears it. */
function byLevels({ greatest, bound }: FaultLevels, capacity: Calculated): Comparison {
  const surely = exceeds(greatest.value, capacity.value);
  const judged = against("I", surely ? greatest.value : bound.value, capacity);
  const source = combine(surely ? greatest.source : bound.source, capacity.source);
  const questionable = !surely && judged.verdict === "fails";
  return { ...judged, source, ...(questionable ? { verdict: "advises", remark: "it may be less: measure it" } : {}) };
}

/** What is tested or backed up as a whole need not break it alone. */
function excused({ context, device }: WayStudy, judged: Comparison, most: number): Comparison {
  if (judged.verdict === "holds") return judged;
  const conditional = conditionalAt(context);
  if (conditional !== undefined && most <= conditional)
    return { ...judged, verdict: "holds", remark: `by the board's conditional rating of ${kiloamps(conditional)}` };
  if (device?.fact.args.class?.value !== "back-up") return judged;
  return { ...judged, verdict: "advises", remark: "it is backed up upstream, as its maker has to state" };
}
