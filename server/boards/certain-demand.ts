/**
 * What is drawn at once with the most favourable diversity anybody publishes: what overloads a part by this much
 * overloads it, whatever else is doubtful. Left out are sockets, into which anything or nothing is plugged, charging
 * points under load control, loads nobody stated, and circuits whose line is not known.
 */

import { diversified } from "../calc/diversity.ts";
import { columnOf } from "../circuit/diversity-column.ts";
import { memoOfBoard, memoOfWhole } from "../circuit/kept.ts";
import { premisesOf } from "../circuit/supply.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import type { Context, Installation } from "../model/installation.ts";
import { isThreePhase } from "../model/three-lines.ts";
import type { DiversityColumn, DiversityPurpose } from "../tables/diversity-shares.ts";
import { sum } from "../text/sum.ts";
import { type CircuitLoad, type Line, linesOf, ownLoads, threeLines } from "./circuit-load.ts";
import { childOf, lineOf } from "./demand.ts";
import { type BoardNode, networkOf, type StudiedBoard } from "./network.ts";

/** At the origin, on the line that carries most, A. */
export function certainAtOrigin(installation: Installation): number {
  const { origins } = networkOf(installation);
  const lines = origins.some(({ threePhase }) => threePhase) ? threeLines : onlyLine;
  return Math.max(
    ...lines.map((line) =>
      origins.reduce((total, node) => (isOn(node, line) ? total + certainOn(node, line) : total), 0),
    ),
  );
}

/** Through a board, or through a part of it by some of its ways, on the line that carries most, A. */
export const certainDemand = (node: BoardNode, among?: ReadonlySet<Way>): number =>
  Math.max(...linesThrough(node).map((line) => (among ? drawnOn(node, line, among) : certainOn(node, line))));

const onlyLine = ["L"] as const;

const linesThrough = ({ threePhase }: BoardNode): readonly Line[] => (threePhase ? threeLines : onlyLine);

/** After an edit, the boards that it did not touch are not added up again. */
const certainOf = memoOfWhole(
  (node: BoardNode): ReadonlyMap<Line, number> =>
    new Map(linesThrough(node).map((line) => [line, drawnOn(node, line)])),
);

const certainOn = (node: BoardNode, line: Line): number => certainOf(node).get(node.threePhase ? line : "L") ?? 0;

/** Whether a board is on a line for certain: of a single-phase one on three lines something has to say so. */
function isOn(node: BoardNode, line: Line): boolean {
  if (line === "L" || node.threePhase) return true;
  const [fed, ...others] = node.feeder ? linesOf(node.feeder) : [];
  return (lineOf(node) ?? (others.length === 0 ? fed : undefined)) === line;
}

function drawnOn(node: BoardNode, line: Line, among?: ReadonlySet<Way>): number {
  const { feeders, lines } = among ? ownPartOf(node, among) : ownOf(node);
  const { all, largest } = lines.get(line) ?? nothing;
  const feeds = sum(feeders.map((way) => fedOnLine(node, way, line)));
  // The designer's word for the board goes before any table.
  const board = node.context.board.facts.one("diversity")?.args.share.value;
  return board === undefined ? Math.max(all + feeds, largest) : ((all + feeds) * board) / 100;
}

interface OwnCertain {
  readonly lines: ReadonlyMap<Line, Drawn>;
  readonly feeders: readonly Way[];
}

/** What a board's own circuits come to on one line, A, and the largest of them. */
interface Drawn {
  readonly all: number;
  readonly largest: number;
}

const nothing: Drawn = { all: 0, largest: 0 };

const ownOf = memoOfBoard((place: StudiedBoard): OwnCertain => ownPartOf(place));

function ownPartOf(place: StudiedBoard, among?: ReadonlySet<Way>): OwnCertain {
  const { context, studies } = place;
  const counts = ({ way }: { readonly way: Way }) => among === undefined || among.has(way);
  const stated = ownLoads(place).loads.filter((load) => counts(load) && load.basis !== "assumed");
  const on = (line: Line) => stated.filter(({ lines }) => line === "L" || lines.includes(line));
  const lines = isThreePhase(context) ? threeLines : onlyLine;
  const drawn = new Map<Line, Drawn>(lines.map((line) => [line, drawnBy(context, on(line))]));
  const feeders = studies.filter((study) => study.isFeeder && !study.isSpare && counts(study));
  return { lines: drawn, feeders: feeders.map(({ way }) => way) };
}

function drawnBy(context: Context, loads: readonly CircuitLoad[]): Drawn {
  const largest = Math.max(0, ...loads.map(({ current }) => current));
  if (context.board.facts.has("diversity"))
    return { all: sum(loads.map(({ current, share = 1 }) => current * share)), largest };
  const chargers = loads.filter(({ way, share }) => share === undefined && isUncontrolled(studyWay(way, context)));
  const home = columnOf(premisesOf(context)) === "household";
  const tabled = ofOwn(loads, home ? ["household"] : ["shop", "hotel"]);
  return { all: tabled + sum(chargers.map(({ current }) => current)), largest };
}

/** A stated design current is the designer's word for what is behind it. */
function fedOnLine(node: BoardNode, way: Way, line: Line): number {
  const study = studyWay(way, node.context);
  const share = (study.facts.one("diversity")?.args.share.value ?? 100) / 100;
  const child = childOf(node, way);
  const lines = linesOf(study);
  if (study.designCurrent) return !node.threePhase || lines.includes(line) ? study.designCurrent.value * share : 0;
  if (!child || (node.threePhase && !isOn(child, line))) return 0;
  return certainOn(child, line) * share;
}

/** A charging point without load control counts in full (722.311.201). */
const isUncontrolled = ({ uses, facts }: WayStudy): boolean =>
  uses.size === 1 && uses.has("ev-charger") && !facts.has("load-control");

/** Circuits by kind: at the least share of these kinds of premises, or as the designer states. */
function ofOwn(loads: readonly CircuitLoad[], columns: readonly DiversityColumn[]): number {
  const stated = loads.map(({ current, share }) => (share === undefined ? 0 : current * share));
  const open = loads.filter(({ share }) => share === undefined);
  return sum(stated) + sum(steady.map((purpose) => leastOf(purpose, open, columns)));
}

const steady: readonly DiversityPurpose[] = [
  "lighting",
  "heating-power",
  "cookers",
  "motors",
  "instantaneous-heaters",
  "thermostatic-heaters",
];

function leastOf(
  purpose: DiversityPurpose,
  loads: readonly CircuitLoad[],
  columns: readonly DiversityColumn[],
): number {
  const currents = loads.filter((load) => load.purpose === purpose).map(({ current }) => current);
  if (currents.length === 0) return 0;
  return Math.min(...columns.map((column) => diversified({ purpose, column, currents }).value));
}
