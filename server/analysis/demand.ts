/** The demand of each board, line by line, from its circuits and up the feeders. */
import { type Calculated, diversified } from "../calc/index.ts";
import { amps, percent, type Step, step } from "../calc/result.ts";
import type { DiversityColumn } from "../tables/diversity-shares.ts";
import { combine, type Source } from "../tables/source.ts";
import { type CircuitLoad, columnOf, type Line, linesOf, ownLoads, threeLines } from "./circuit-load.ts";
import { keptWith } from "./kept.ts";
import { type BoardNode, isThreePhase, keptInPlace, studiesOn } from "./network.ts";
import { premisesOf } from "./supply.ts";
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

const summed: Source = { ref: "Sum of the circuits", standing: "computed" };

/** What a board's own final circuits come to, line by line, and which of its ways are feeders. */
interface OwnPart {
  readonly lines: ReadonlyMap<Line, readonly Part[]>;
  /** A of circuits whose line is not stated. */
  readonly spread: number;
  readonly diverse: boolean;
  readonly assumed: readonly WayStudy[];
  readonly unknown: readonly WayStudy[];
  readonly unplaced: readonly WayStudy[];
  readonly count: number;
  readonly feeders: readonly WayStudy[];
}

const ownPart = keptInPlace((place): OwnPart => {
  const { loads, unknown } = ownLoads(place);
  const column = columnOf(premisesOf(place.context));
  const lines = new Map<Line, readonly Part[]>();
  for (const line of isThreePhase(place.context) ? threeLines : (["L"] as const)) {
    const here = loads.filter((load) => load.lines.includes(line));
    lines.set(line, [...ownShares(here), ...byTable(here, column)]);
  }
  const unplaced = loads.filter((load) => load.lines.length === 0);
  return {
    lines,
    spread: unplaced.reduce((sum, { current, share = 1 }) => sum + current * share, 0),
    diverse: column !== undefined || loads.filter(({ share }) => share === undefined).length <= 1,
    assumed: loads.filter(({ basis }) => basis === "assumed").map(({ study }) => study),
    unknown,
    unplaced: unplaced.map(({ study }) => study),
    count: loads.length,
    feeders: studiesOn(place).filter((study) => study.isFeeder && !study.isSpare),
  };
});

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

interface Part {
  readonly value: number;
  readonly steps: readonly Step[];
  readonly source: Source;
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

const plainPart = (name: string, value: number): Part => ({
  value,
  steps: [step(name, "", amps(value))],
  source: summed,
});

const ownShares = (loads: readonly CircuitLoad[]): Part[] =>
  loads.flatMap(({ study, current, share }) => {
    if (share === undefined) return [];
    const value = current * share;
    const numbers = `${percent(share * 100)} × ${amps(current)}`;
    return [{ value, steps: [step(`way ${study.way.id}`, numbers, amps(value))], source: summed }];
  });

/** Circuits of one kind together by the table; what it has no row for, and all where it has no column, in full. */
function byTable(loads: readonly CircuitLoad[], column: DiversityColumn | undefined): Part[] {
  const open = loads.filter(({ share }) => share === undefined);
  const purposes = new Set(open.map(({ purpose }) => (column === undefined ? undefined : purpose)));
  return [...purposes].map((purpose): Part => {
    if (purpose === undefined || column === undefined)
      return inFull(open.filter((load) => column === undefined || load.purpose === undefined));
    const kind = open.filter((load) => load.purpose === purpose);
    const currents = kind.map(({ current }) => current);
    const socket = column === "household" && kind.some((load) => load.socket);
    return diversified({ purpose, column, currents, socket });
  });
}

function inFull(loads: readonly CircuitLoad[]): Part {
  const value = loads.reduce((sum, { current }) => sum + current, 0);
  const numbers = loads.map(({ current }) => amps(current)).join(" + ");
  return { value, steps: [step("in full", numbers, amps(value))], source: summed };
}
