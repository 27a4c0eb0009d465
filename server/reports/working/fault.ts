/** The fault current the device has to break, as it is noted or as it is reckoned along the feeders. */

import { type FaultLevels, faultLevels, leastFaults } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { type Calculated, faultCurrent } from "../../calc/index.ts";
import { amps, kiloamps } from "../../calc/result.ts";
import { breakingOf, conditionalAt } from "../../circuit/breaking.ts";
import { greatestFault } from "../../circuit/faults.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact } from "../../model/values.ts";
import { combine } from "../../tables/source.ts";
import { originText } from "../common/written.ts";
import { type Block, gap, type Judgement, judge, paragraph, part, reckon, type Section } from "../setting/document.ts";

/** Through an electrode so little flows that kA would show nothing. */
export const faultText = (value: number): string => (value < 100 ? amps(value) : kiloamps(value));

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
    ...(fault ? [noted(fault)] : reckoned(levels)),
    ...(loop ? [reckon("Earth fault current by the loop at the board", loop, faultText(loop.value), "")] : []),
    ...(least ? [reckon("Least earth fault current at the far point, hot", least, faultText(least.value), "")] : []),
    reckon("Breaking capacity of the device", capacity, kiloamps(capacity?.value ?? 0), noMark),
  ];
  if (!capacity || (!fault && !levels))
    return [...blocks, gap("Breaking capacity against fault current", "one of the two is not known")];
  const verdict = fault ? against(fault.name, fault.value, capacity) : levels && byLevels(levels, capacity);
  const most = fault?.value ?? levels?.bound.value ?? 0;
  const remark =
    supply.threePhase && fault ? [paragraph("At a three-phase board the figure has to be that between lines.")] : [];
  return [...blocks, ...(verdict ? [excused(study, verdict, most)] : []), ...remark];
}

function noted(fault: NonNullable<ReturnType<typeof greatestFault>>): Block {
  const origin = originText(fault.fact as Fact);
  const name = `Fault current to break (${fault.name}, noted at the ${fault.at}${origin ? `, ${origin}` : ""})`;
  return reckon(name, { steps: [], source: { ref: "", standing: "published" } }, kiloamps(fault.value), "");
}

function reckoned(levels: FaultLevels | undefined): Block[] {
  if (!levels)
    return [gap("Fault current to break", "none is noted for this board, and what lies upstream does not give it")];
  const { greatest, bound } = levels;
  return [
    reckon("Fault current to break, reckoned along the feeders", greatest, kiloamps(greatest.value), ""),
    ...(bound.value === greatest.value ? [] : [reckon("No more than", bound, kiloamps(bound.value), "")]),
  ];
}

function against(name: string, value: number, capacity: Calculated): Judgement {
  const holds = !exceeds(value, capacity.value);
  const text = `${name} ${kiloamps(value)} ${holds ? "≤" : ">"} Icn ${kiloamps(capacity.value)}`;
  return judge(holds, text, capacity.source, `${kiloamps(capacity.value - value)} left`);
}

/** Only what surely flows fails a device; only what cannot be passed clears it. */
function byLevels({ greatest, bound }: FaultLevels, capacity: Calculated): Judgement {
  const surely = exceeds(greatest.value, capacity.value);
  const judged = against("I", surely ? greatest.value : bound.value, capacity);
  const source = combine(surely ? greatest.source : bound.source, capacity.source);
  const doubtful = !surely && judged.verdict === "fails";
  return { ...judged, source, ...(doubtful ? { verdict: "advises", remark: "it may be less: measure it" } : {}) };
}

/** What is tested or backed up as a whole need not break it alone. */
function excused({ context, device }: WayStudy, judged: Judgement, most: number): Judgement {
  if (judged.verdict === "holds") return judged;
  const conditional = conditionalAt(context);
  if (conditional !== undefined && most <= conditional)
    return { ...judged, verdict: "holds", remark: `by the board's conditional rating of ${kiloamps(conditional)}` };
  if (device?.fact.args.class?.value !== "back-up") return judged;
  return { ...judged, verdict: "advises", remark: "it is backed up upstream, as its maker has to state" };
}
