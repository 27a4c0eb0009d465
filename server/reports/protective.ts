/** The protective conductor: by the table, or by the heat of the fault. */
import { protectiveNeed } from "../analysis/protective.ts";
import type { WayStudy } from "../analysis/way.ts";
import { squareMillimetres } from "../calc/result.ts";
import { type Block, gap, judge, part, reckon, type Section } from "./document.ts";

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
