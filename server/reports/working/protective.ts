/** The protective conductor: by the table, or by the heat of the fault. */

import { squareMillimetres } from "../../calc/result.ts";
import { enclosureNeed, suffices } from "../../circuit/protective.ts";
import type { Cable, WayStudy } from "../../circuit/way.ts";
import { protectiveAtFault } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { type Block, calculate, compareWithLimit, gap, part, type Section } from "../setting/document.ts";

export const protectivePart = (study: WayStudy): Section[] => part("Protective conductor", protectiveBlocks(study));

function protectiveBlocks(study: WayStudy): Block[] {
  const { cable } = study;
  if (!cable) return [gap("The protective conductor", "the cable is not described")];
  if (cable.cpcBy === "none") return [gap("The protective conductor", "the cable has none")];
  if (cable.construction === "busbar-trunking")
    return [gap("The protective conductor", "of busbar trunking it is what its maker tested, by Icw")];
  if (cable.material !== "copper") return [gap("The protective conductor", `no table here is for ${cable.material}`)];
  const found = protectiveAtFault(study);
  if (!found) return [...enclosureBlocks(study), gap("The protective conductor", whyNotJudged(study))];
  const { need, has, method, certain } = found;
  const by = method === "table" ? "by Table 54.7" : "by the heat of the fault";
  const holds = suffices(found);
  const name = `${found.of === "armour" ? "armour" : "cpc"}${ofEach(cable)}`;
  const text = `${name} ${squareMillimetres(has.value)} ${holds ? "≥" : "<"} ${squareMillimetres(need.value)}`;
  const judged = compareWithLimit(
    holds,
    text,
    combine(need.source, has.source),
    { value: has.value, limit: need.value },
    by,
  );
  const uncertainty =
    method === "table"
      ? "the heat of the fault could not be calculated"
      : "the device may trip sooner than its curve is drawn";
  return [
    ...(found.of === "armour" ? [calculate(`The armour${ofEach(cable)}`, has, squareMillimetres(has.value), "")] : []),
    calculate(`Least size ${by}`, need, squareMillimetres(need.value), ""),
    !holds && !certain ? { ...judged, verdict: "advises", remark: uncertainty } : judged,
  ];
}

/** What is asked of the protective conductor is asked of each of those in parallel: a fault may be in one of them. */
const ofEach = ({ parallel }: Cable): string => (parallel.cpc > 1 ? ` of each of ${parallel.cpc} in parallel` : "");

/** Of conduit and trunking only what is required is known, not what it has. */
function enclosureBlocks(study: WayStudy): Block[] {
  const need = enclosureNeed(study);
  return need ? [calculate("Least section of steel by Table 54.7", need, squareMillimetres(need.value), "")] : [];
}

function whyNotJudged({ cable }: WayStudy): string {
  const by = cable?.cpcBy;
  if (by === "armour") {
    if (cable?.cores === undefined) return "the armour goes by the number of cores, which is not written";
    return "no table here gives the section of this armour";
  }
  if (by === "conduit" || by === "trunking")
    return `the section of the steel ${by} goes by its make: hold the maker's figure against it`;
  if (by) return `it is the ${by}, whose equivalent section is not given here`;
  if (cable?.cpc === undefined) return "its size is not stated";
  return "neither Table 54.7 nor the heat of the fault could be asked";
}
