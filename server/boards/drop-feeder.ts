/** Voltage drop of a feeder, line by line as the board behind it loads it. */
import { fallsShort } from "../calc/compare.ts";
import type { Calculated } from "../calc/result.ts";
import { type CableDrop, cableDrop, type LineCurrents, unequalDrops } from "../circuit/drop.ts";
import type { WayStudy } from "../circuit/way.ts";
import { asWritten } from "../tables/source.ts";
import { type Line, threeLines } from "./circuit-load.ts";
import { demandOf, lineOf } from "./demand.ts";
import type { BoardNode } from "./network.ts";

/** The current of a feeder, A, and whether it is stated or calculated with diversity. */
export type FeederCurrent = Calculated & { readonly certain: boolean };

/** What a feeder carries: its stated design current, or the demand of the board it feeds. */
export function feederCurrent(node: BoardNode, feeder: WayStudy): FeederCurrent | undefined {
  const stated = feeder.designCurrent;
  if (stated) return { value: stated.value, unit: "A", steps: [], source: asWritten, certain: true };
  const demand = demandOf(node);
  return demand && { ...demand.greatest, steps: demand.greatest.steps, certain: demand.diverse };
}

/** The drops of a feeder by the lines of the board behind it, with the greatest of them. */
interface FeederDrop {
  readonly lines: ReadonlyMap<Line, CableDrop>;
  readonly worst: CableDrop;
  readonly current: FeederCurrent;
  /** Whether all lines carry the one current; otherwise the working of each drop says what they carry. */
  readonly equal: boolean;
}

/** The drop of the feeder of a board, with its own size of cable or another. */
export function feederDrop(node: BoardNode, size?: number): FeederDrop | { readonly missing: string } {
  const { feeder } = node;
  const current = feeder && feederCurrent(node, feeder);
  if (!feeder || !current)
    return { missing: "its design current is not stated, and what the board behind it takes is not known" };
  const currents = feeder.threePhase ? currentsOf(node, current.value) : undefined;
  if (!currents) {
    const found = cableDrop(feeder, current.value, size);
    if ("missing" in found) return found;
    return { lines: new Map(linesBehind(node).map((line) => [line, found])), worst: found, current, equal: true };
  }
  const found = unequalDrops(feeder, currents, size);
  if ("missing" in found) return found;
  const worst = [...found.values()].reduce((most, one) => (one.drop.value > most.drop.value ? one : most));
  return { lines: node.threePhase ? found : new Map([["L", worst]]), worst, current, equal: false };
}

export const linesBehind = ({ threePhase }: BoardNode): readonly Line[] => (threePhase ? threeLines : ["L"]);

/**
 * The currents of three lines where they differ. A stated design current is that of the line that carries most, and the
 * others are less in the proportion of the demand; where a circuit has no line yet the lines are taken as equal.
 */
function currentsOf(node: BoardNode, greatest: number): LineCurrents | undefined {
  if (!node.threePhase) {
    const only = lineOf(node) ?? "L1";
    return { L1: 0, L2: 0, L3: 0, [only]: greatest };
  }
  const demand = demandOf(node);
  if (!demand || demand.unplaced.length > 0 || demand.unknown.length > 0 || demand.unlined.length > 0) return undefined;
  const most = demand.greatest.value;
  if (most <= 0) return undefined;
  const on = (line: Line): number => ((demand.lines.get(line)?.value ?? 0) / most) * greatest;
  const currents = { L1: on("L1"), L2: on("L2"), L3: on("L3") };
  const least = Math.min(currents.L1, currents.L2, currents.L3);
  return fallsShort(least, greatest) ? currents : undefined;
}
