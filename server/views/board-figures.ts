/** What a board is known by: its loop, its fault level, the drop up to it, its demand. */
import { demandOf } from "../boards/demand.ts";
import { boardDrop } from "../boards/drop-path.ts";
import { faultLevels } from "../boards/fault-levels.ts";
import type { BoardNode } from "../boards/network.ts";
import { amps, kiloamps, ohms, percent } from "../calc/result.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import type { Mark } from "../drawings/shapes.ts";
import { coldBoardImpedance } from "../readings/expected.ts";

export interface NamedFigure {
  readonly name: string;
  readonly text: string;
  /** Whether it follows from other figures; otherwise it stands in the schedule. */
  readonly calculated: boolean;
  readonly mark?: Mark;
}

export function boardFigures(node: BoardNode): NamedFigure[] {
  return [...loop(node), ...fault(node), ...drop(node), ...demand(node)];
}

function loop({ context }: BoardNode): NamedFigure[] {
  const noted = boardImpedance(context);
  if (noted) {
    const { fact } = noted;
    const calculated = fact.provenance === "calculated";
    return [
      { name: noted.name, text: ohms(noted.value), calculated, mark: { segment: fact.segment, offset: fact.start } },
    ];
  }
  const cold = coldBoardImpedance(context);
  return cold ? [{ name: cold.name, text: ohms(cold.value), calculated: true }] : [];
}

function fault(node: BoardNode): NamedFigure[] {
  const levels = faultLevels(node);
  return levels ? [{ name: "Ipf", text: kiloamps(levels.greatest.value), calculated: !levels.recorded }] : [];
}

function drop(node: BoardNode): NamedFigure[] {
  if (!node.parent) return [];
  const { drop: own, whole } = boardDrop(node);
  if (!whole && own.value === 0) return [];
  return [{ name: "drop", text: `${whole ? "" : "at least "}${percent(own.value)}`, calculated: true }];
}

function demand(node: BoardNode): NamedFigure[] {
  const found = demandOf(node);
  if (!found) return [];
  const { greatest, unknown, diverse } = found;
  const where = greatest.line === "L" ? "" : ` on ${greatest.line}`;
  return [
    {
      name: "demand",
      text: `${unknown.length > 0 ? "at least " : diverse ? "" : "up to "}${amps(greatest.value)}${where}`,
      calculated: true,
    },
  ];
}
