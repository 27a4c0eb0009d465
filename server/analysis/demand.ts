/** The demand of each board, line by line, from its circuits and up the feeders. */
import type { Calculated } from "../calc/index.ts";
import { amps, percent, step } from "../calc/result.ts";
import { combine } from "../tables/source.ts";
import { type Line, linesOf } from "./circuit-load.ts";
import { ownPart, type Part, plainPart, summed } from "./demand-own.ts";
import { keptWith } from "./kept.ts";
import type { BoardNode } from "./network.ts";
import type { WayStudy } from "./way.ts";

/** What is drawn at once through a board, as far as the schedule tells. */
export interface BoardDemand {
  readonly lines: ReadonlyMap<Line, Calculated>;
  /** The line that carries most. */
  readonly greatest: Calculated & { readonly line: Line };
  /**
   * Whether diversity is accounted for: by the published table, or by the designer. Where it is not, all circuits are
   * taken in full, which is more than will be drawn.
   */
  readonly diverse: boolean;
  /** Circuits taken at the rating of their device, for want of anything better. */
  readonly assumed: readonly WayStudy[];
  /** Circuits of which nothing tells what they take: the demand is at least what is reckoned. */
  readonly unknown: readonly WayStudy[];
  /** Single-phase circuits of a three-phase board without their line: spread evenly. */
  readonly unplaced: readonly WayStudy[];
}

/** The demand of a board; nothing where none of its circuits tells what it takes. */
export const demandOf = keptWith((node: BoardNode): BoardDemand | undefined => {
  const own = ownPart(node);
  const fed = feedsOf(node, own.feeders);
  if (own.count === 0 && fed.known.length === 0) return undefined;
  const lines = new Map([...own.lines].map(([line, parts]) => [line, lineDemand(node, line, parts, own.spread, fed)]));
  return {
    lines,
    greatest: greatestOf(lines),
    diverse: node.context.board.facts.has("diversity") || (own.diverse && fed.known.every(({ diverse }) => diverse)),
    assumed: [...own.assumed, ...fed.known.flatMap(({ assumed }) => assumed)],
    unknown: [...own.unknown, ...fed.unknown],
    unplaced: [...own.unplaced, ...fed.known.filter(({ lines: on }) => on.length === 0).map(({ study }) => study)],
  };
});

/** The line that carries most. */
export function greatestOf(lines: ReadonlyMap<Line, Calculated>): BoardDemand["greatest"] {
  const all = [...lines].map(([line, demand]) => ({ ...demand, line }));
  return all.reduce((greatest, one) => (one.value > greatest.value ? one : greatest));
}

/** What a feeder draws from its board. */
interface Fed {
  readonly study: WayStudy;
  readonly lines: readonly Line[];
  readonly on: (line: Line) => number;
  /** For a circuit whose line is not known. */
  readonly most: number;
  readonly diverse: boolean;
  readonly assumed: readonly WayStudy[];
}

interface Feeds {
  readonly known: readonly Fed[];
  readonly unknown: readonly WayStudy[];
}

function feedsOf(node: BoardNode, feeders: readonly WayStudy[]): Feeds {
  const known: Fed[] = [];
  const unknown: WayStudy[] = [];
  for (const study of feeders) {
    const fed = fedBy(
      study,
      node.children.find(({ feeder }) => feeder === study),
    );
    if (fed) known.push(fed);
    else unknown.push(study);
  }
  return { known, unknown };
}

/** A stated design current is the designer's word; another check holds it against what is reckoned. */
function fedBy(study: WayStudy, child: BoardNode | undefined): Fed | undefined {
  const lines = linesOf(study);
  const share = (study.facts.one("diversity")?.args.share.value ?? 100) / 100;
  const stated = study.designCurrent;
  if (stated) {
    const value = stated.value * share;
    return { study, lines, on: () => value, most: value, diverse: true, assumed: [] };
  }
  const demand = child && demandOf(child);
  if (!demand) return undefined;
  const most = demand.greatest.value * share;
  const on = (line: Line) => (demand.lines.get(line)?.value ?? demand.greatest.value) * share;
  return { study, lines, on, most, diverse: demand.diverse, assumed: demand.assumed };
}

function lineDemand(node: BoardNode, line: Line, own: readonly Part[], unplaced: number, fed: Feeds): Calculated {
  const spread = fed.known.reduce((sum, { lines, most }) => (lines.length === 0 ? sum + most : sum), unplaced);
  const parts: Part[] = [
    ...own,
    ...fed.known
      .filter(({ lines }) => lines.includes(line))
      .map(({ study, on }) => plainPart(`feeder, way ${study.way.id}`, on(line))),
    ...(spread > 0 ? [plainPart("circuits whose line is not stated, a third", spread / 3)] : []),
  ];
  const total = parts.reduce((sum, { value }) => sum + value, 0);
  const board = node.context.board.facts.one("diversity")?.args.share.value;
  const value = board === undefined ? total : (total * board) / 100;
  const name = line === "L" ? "demand" : `demand of ${line}`;
  const steps = [
    ...parts.flatMap((part) => part.steps),
    step(name, parts.map((part) => amps(part.value)).join(" + "), amps(total)),
    ...(board === undefined ? [] : [step("diversity of the board", `${percent(board)} × ${amps(total)}`, amps(value))]),
  ];
  return { value, unit: "A", steps, source: combine(summed, ...parts.map(({ source }) => source)) };
}
