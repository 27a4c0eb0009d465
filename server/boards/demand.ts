/** The demand of each board, line by line, from its circuits and up the feeders. */

import { addition, reproducible, shareStep } from "../calc/reproducible.ts";
import type { Calculated } from "../calc/result.ts";
import { amps, worked } from "../calc/result.ts";
import { memoOfWhole } from "../circuit/kept.ts";
import { lazy } from "../circuit/lazy.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import { Memo } from "../memo/memo.ts";
import { sameItems, type Way } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import { answerOf, Reads, type Recorded, recordedAnswer } from "../model/reads.ts";
import { combine } from "../tables/source.ts";
import { type Circuit, type Line, linesOf } from "./circuit-load.ts";
import { type OwnPart, ownPart, type Part, partBehind, plainPart, summed } from "./demand-own.ts";
import type { BoardNode } from "./network.ts";

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
  /** Whether a line that says what a circuit draws cannot be read: what is calculated stands for nothing yet. */
  readonly unread: boolean;
  /** Circuits taken at the rating of their device, for want of anything better. */
  readonly assumed: readonly Circuit[];
  /** Circuits of which nothing tells what they take: the demand is at least what is calculated. */
  readonly unknown: readonly Circuit[];
  /** Single-phase circuits of a three-phase board without their line: spread evenly. */
  readonly unplaced: readonly Circuit[];
  /** What these come to, A, the diversity of the board taken off. */
  readonly spread: number;
  /** Single-phase boards on three lines of which nothing says which one: counted on every line, the worst there can be. */
  readonly unlined: readonly BoardNode[];
}

/** The demand of a board; nothing where none of its circuits tells what it takes. */
export const demandOf = memoOfWhole((node: BoardNode): BoardDemand | undefined => {
  const own = ownPart(node);
  const below = own.feeders.map((way) => childOf(node, way));
  const parts = [node.context, own, ...below.flatMap((at) => (at ? [at.context, demandOf(at)] : []))];
  // An edit makes new nodes of a whole tree: the sum of a board stands until the circuits or the boards it adds change.
  const before = sums.get(node.context);
  if (before && sameItems(before.parts, parts)) return answerOf(before.demand);
  const demand = recordedAnswer(new Reads(node.context.parts), () => sumOf(node, own));
  sums.set(node.context, { parts, demand });
  return answerOf(demand);
});

/** The circuits of a board, of which nothing tells what they take. */
export const unknownOf = (node: BoardNode): readonly Circuit[] => {
  const own = ownPart(node);
  return [...own.unknown, ...own.feeders.map((way) => ({ way, board: node.board.head }))];
};

/** What is drawn through a part of a board, such as an RCD, by the ways behind it. */
export const demandBehind = (node: BoardNode, studies: readonly WayStudy[]): BoardDemand | undefined =>
  sumOf(node, partBehind(node, new Set(studies.map(({ way }) => way))));

interface Kept {
  readonly parts: readonly unknown[];
  readonly demand: Recorded<BoardDemand | undefined>;
}

const sums = new Memo<Context, Kept>();

function sumOf(node: BoardNode, own: OwnPart): BoardDemand | undefined {
  const fed = feedsOf(node, own.feeders);
  if (own.count === 0 && fed.known.length === 0) return undefined;
  const lines = new Map([...own.lines].map(([line, parts]) => [line, lineDemand(node, line, parts, own.spread, fed)]));
  const unlined = fed.known.flatMap(({ unlined: boards }) => boards);
  // Listed when somebody asks: along a row of boards each list holds all that stand behind it.
  const assumed = lazy(() => [...own.assumed, ...fed.known.flatMap((one) => one.demand?.assumed ?? [])]);
  return {
    lines,
    greatest: greatestOf(lines),
    // What is counted on every line for want of the one it is on is more than will be drawn.
    diverse:
      unlined.length === 0 &&
      (node.context.board.facts.has("diversity") || (own.diverse && fed.known.every(({ diverse }) => diverse))),
    unread: own.unread || fed.known.some(({ unread }) => unread),
    get assumed() {
      return assumed();
    },
    unknown: [...own.unknown, ...fed.unknown],
    unplaced: [...own.unplaced, ...fed.known.filter(({ lines: on }) => on.length === 0)],
    spread: (spreadOf(own.spread, fed) * (node.context.board.facts.one("diversity")?.args.share.value ?? 100)) / 100,
    unlined,
  };
}

const spreadOf = (own: number, fed: Feeds): number =>
  fed.known.reduce((sum, { lines, most }) => (lines.length === 0 ? sum + most : sum), own);

/** The board that a way of a board feeds, where it is described. */
export const childOf = (node: BoardNode, way: Way): BoardNode | undefined =>
  node.children.find(({ feeder }) => feeder?.way === way);

/** The line that carries most. */
export function greatestOf(lines: ReadonlyMap<Line, Calculated>): BoardDemand["greatest"] {
  const [line, demand] = [...lines].reduce((most, one) => (one[1].value > most[1].value ? one : most));
  // Not spread: steps and source are written out when somebody reads them.
  return {
    value: demand.value,
    unit: demand.unit,
    line,
    get steps() {
      return demand.steps;
    },
    get source() {
      return demand.source;
    },
  };
}

/** What a feeder draws from its board. */
interface Fed extends Circuit {
  readonly lines: readonly Line[];
  readonly on: (line: Line) => number;
  /** For a circuit whose line is not known. */
  readonly most: number;
  readonly diverse: boolean;
  readonly unread: boolean;
  /** Of the board behind it, where that is what it draws. */
  readonly demand?: BoardDemand;
  readonly unlined: readonly BoardNode[];
}

interface Feeds {
  readonly known: readonly Fed[];
  readonly unknown: readonly Circuit[];
}

function feedsOf(node: BoardNode, feeders: readonly Way[]): Feeds {
  const known: Fed[] = [];
  const unknown: Circuit[] = [];
  for (const way of feeders) {
    const circuit = { way, board: node.board.head };
    const fed = fedBy(circuit, studyWay(way, node.context), childOf(node, way));
    if (fed) known.push(fed);
    else unknown.push(circuit);
  }
  return { known, unknown };
}

/** A stated design current is the designer's word; another check holds it against what is calculated. */
function fedBy(circuit: Circuit, study: WayStudy, child: BoardNode | undefined): Fed | undefined {
  const share = (study.facts.one("diversity")?.args.share.value ?? 100) / 100;
  const onLines = linesFor(study, child);
  const every = child && isUnlined(study, child) ? [child] : [];
  const stated = study.designCurrent;
  if (stated) {
    const value = stated.value * share;
    return { ...circuit, ...onLines, on: () => value, most: value, diverse: true, unread: false, unlined: every };
  }
  const demand = child && demandOf(child);
  if (!demand) return undefined;
  const most = demand.greatest.value * share;
  const on = (line: Line) => (demand.lines.get(line)?.value ?? demand.greatest.value) * share;
  const { diverse, unread } = demand;
  return { ...circuit, ...onLines, on, most, diverse, unread, demand, unlined: [...every, ...demand.unlined] };
}

/** A single-phase board may say itself which line it is on, where its feeder does not. */
function linesFor(study: WayStudy, child: BoardNode | undefined): { readonly lines: readonly Line[] } {
  const own = child && lineOf(child);
  return { lines: own && linesOf(study).length !== 1 ? [own] : linesOf(study) };
}

/** Whether a single-phase board hangs on a feeder of three lines and nothing says on which of them. */
const isUnlined = (study: WayStudy, child: BoardNode): boolean =>
  study.boardIsThreePhase && study.threePhase && !child.threePhase && lineOf(child) === undefined;

/** The line of three a single-phase board says it is on. */
export const lineOf = ({ board, threePhase }: BoardNode): Line | undefined =>
  threePhase ? undefined : board.head.facts.one("phase")?.args.phase.value;

function lineDemand(node: BoardNode, line: Line, own: readonly Part[], unplaced: number, fed: Feeds): Calculated {
  const spread = spreadOf(unplaced, fed);
  const parts: Part[] = [
    ...own,
    ...fed.known
      .filter(({ lines }) => lines.includes(line))
      .map(({ way, on, unlined }) =>
        plainPart(`feeder, way ${way.id}${unlined.length > 0 ? ", counted on every line" : ""}`, on(line)),
      ),
    ...(spread > 0 ? [plainPart("circuits whose line is not stated, a third", spread / 3)] : []),
  ];
  const total = parts.reduce((sum, { value }) => sum + value, 0);
  const board = node.context.board.facts.one("diversity")?.args.share.value;
  const value = board === undefined ? total : (total * board) / 100;
  const name = line === "L" ? "demand" : `demand of ${line}`;
  const steps = () => [
    ...parts.flatMap((part) => part.steps),
    reproducible(
      name,
      parts.map((part) => [part.value, amps]),
      addition,
      [total, amps],
    ),
    ...(board === undefined ? [] : [shareStep("diversity of the board", board / 100, [total, amps], [value, amps])]),
  ];
  return worked(value, "A", combine(summed, ...new Set(parts.map(({ source }) => source))), steps);
}
