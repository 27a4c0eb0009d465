/** The protective conductor, and the fault current the device has to break. */
import { breakingOf, conditionalAt } from "../analysis/breaking.ts";
import { greatestFault } from "../analysis/faults.ts";
import { protectiveNeed } from "../analysis/protective.ts";
import type { WayStudy } from "../analysis/way.ts";
import { faultCurrent } from "../calc/index.ts";
import { amps, kiloamps, squareMillimetres } from "../calc/result.ts";
import type { Fact } from "../model/values.ts";
import { type Block, gap, judge, paragraph, part, reckon, type Section } from "./document.ts";
import { originText } from "./written.ts";

export const protectivePart = (study: WayStudy): Section[] => part("Protective conductor", protectiveBlocks(study));

function protectiveBlocks(study: WayStudy): Block[] {
  const { cable } = study;
  if (!cable) return [gap("The protective conductor", "the cable is not described")];
  if (cable.cpc === undefined) return [gap("The protective conductor", withoutSize(study))];
  if (cable.material !== "copper") return [gap("The protective conductor", `no table here is for ${cable.material}`)];
  const found = protectiveNeed(study);
  if (!found) return [gap("The protective conductor", "neither Table 54.7 nor the heat of the fault could be asked")];
  const { need, method, certain } = found;
  const by = method === "table" ? "by Table 54.7" : "by the heat of the fault";
  const holds = cable.cpc >= need.value * (1 - 1e-9);
  const text = `cpc ${squareMillimetres(cable.cpc)} ${holds ? "≥" : "<"} ${squareMillimetres(need.value)}`;
  const judged = judge(holds, text, need.source, holds ? by : "");
  const doubt =
    method === "table"
      ? "the heat of the fault could not be reckoned"
      : "the device may trip sooner than its curve is drawn";
  return [
    reckon(`Least size ${by}`, need, squareMillimetres(need.value), ""),
    !holds && !certain ? { ...judged, verdict: "advises", remark: doubt } : judged,
  ];
}

function withoutSize({ cable }: WayStudy): string {
  const by = cable?.cpcBy;
  if (by === undefined) return "its size is not stated";
  return by === "none" ? "the cable has none" : `it is the ${by}, whose equivalent section is not given here`;
}

/** Through an electrode so little flows that kA would show nothing. */
export const faultText = (value: number): string => (value < 100 ? amps(value) : kiloamps(value));

export const faultPart = (study: WayStudy): Section[] =>
  part("Fault current and breaking capacity", faultBlocks(study));

function faultBlocks(study: WayStudy): Block[] {
  const { context, device, boardImpedance, supply } = study;
  const fault = greatestFault(context);
  const loop = boardImpedance && boardImpedance.value > 0 ? faultCurrent(supply.U0, boardImpedance.value) : undefined;
  const capacity = breakingOf(study);
  const noted = { steps: [], source: { ref: "", standing: "published" } as const };
  const origin = fault ? originText(fault.fact as Fact) : "";
  const blocks: Block[] = [
    reckon(
      `Fault current to break${fault ? ` (${fault.name}, noted at the ${fault.at}${origin ? `, ${origin}` : ""})` : ""}`,
      fault && noted,
      kiloamps(fault?.value ?? 0),
      "no prospective fault current is noted for this board",
    ),
    ...(loop ? [reckon("Earth fault current by the loop at the board", loop, faultText(loop.value), "")] : []),
    reckon(
      "Breaking capacity of the device",
      capacity,
      kiloamps(capacity?.value ?? 0),
      device ? "it is not marked, and its standard takes none for granted" : "no device is described",
    ),
  ];
  if (!fault || !capacity)
    return [...blocks, gap("Breaking capacity against fault current", "one of the two is not known")];
  const holds = fault.value <= capacity.value * (1 + 1e-9);
  const text = `${fault.name} ${kiloamps(fault.value)} ${holds ? "≤" : ">"} Icn ${kiloamps(capacity.value)}`;
  const judged = judge(holds, text, capacity.source, `${kiloamps(capacity.value - fault.value)} left`);
  const conditional = conditionalAt(context);
  if (!holds && conditional !== undefined && fault.value <= conditional) {
    return [
      ...blocks,
      { ...judged, verdict: "holds", remark: `by the board's conditional rating of ${kiloamps(conditional)}` },
    ];
  }
  if (!holds && device?.fact.args.class?.value === "back-up") {
    return [
      ...blocks,
      { ...judged, verdict: "advises", remark: "it is backed up upstream, as its maker has to state" },
    ];
  }
  return [
    ...blocks,
    judged,
    ...(supply.threePhase ? [paragraph("At a three-phase board the figure has to be that between lines.")] : []),
  ];
}
