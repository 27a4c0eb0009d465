/**
 * What is drawn at once with the most favourable diversity anybody publishes: what overloads a part by this much
 * overloads it, whatever else is doubtful. Left out are sockets, into which anything or nothing is plugged, charging
 * points under load control, loads nobody stated, and circuits whose line is not known.
 */

import { diversified } from "../calc/diversity.ts";
import { columnOf } from "../circuit/diversity-column.ts";
import { premisesOf } from "../circuit/supply.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { DiversityColumn, DiversityPurpose } from "../tables/diversity-shares.ts";
import { type CircuitLoad, type Line, linesOf, ownLoads, threeLines } from "./circuit-load.ts";
import { lineOf } from "./demand.ts";
import { type BoardNode, networkOf } from "./network.ts";

/** At the origin, on the line that carries most, A. */
export function certainAtOrigin(installation: Installation): number {
  const { origins } = networkOf(installation);
  const three = origins.some(({ threePhase }) => threePhase);
  return greatest(three, (line) => sum(origins.filter((node) => isOn(node, line)).map((node) => onLine(node, line))));
}

/** Through a board, or through a part of it by some of its ways, on the line that carries most, A. */
export const certainDemand = (node: BoardNode, among?: ReadonlySet<Way>): number =>
  greatest(node.threePhase, (line) => onLine(node, line, among));

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

const greatest = (three: boolean, of: (line: Line) => number): number =>
  Math.max(...(three ? threeLines : (["L"] as const)).map(of));

/** Whether a board is on a line for certain: of a single-phase one on three lines something has to say so. */
function isOn(node: BoardNode, line: Line): boolean {
  if (line === "L" || node.threePhase) return true;
  const [fed, ...others] = node.feeder ? linesOf(node.feeder) : [];
  return (lineOf(node) ?? (others.length === 0 ? fed : undefined)) === line;
}

function onLine(node: BoardNode, line: Line, among?: ReadonlySet<Way>): number {
  const counts = ({ way }: { readonly way: Way }) => among === undefined || among.has(way);
  const own = ownLoads(node).loads.filter(
    (load) => counts(load) && load.basis !== "assumed" && (!node.threePhase || load.lines.includes(line)),
  );
  const board = node.context.board.facts.one("diversity")?.args.share.value;
  const fed = node.studies.filter((study) => study.isFeeder && !study.isSpare && counts(study)).map(({ way }) => way);
  const feeds = sum(fed.map((way) => fedOnLine(node, way, line)));
  // The designer's word for the board goes before any table.
  if (board !== undefined) return ((sum(own.map(({ current, share = 1 }) => current * share)) + feeds) * board) / 100;
  const largest = Math.max(0, ...own.map(({ current }) => current));
  const chargers = own.filter(({ way, share }) => share === undefined && isUncontrolled(studyWay(way, node.context)));
  const home = columnOf(premisesOf(node.context)) === "household";
  return Math.max(
    ofOwn(own, home ? ["household"] : ["shop", "hotel"]) + sum(chargers.map(({ current }) => current)) + feeds,
    largest,
  );
}

/** A stated design current is the designer's word for what is behind it. */
function fedOnLine(node: BoardNode, way: Way, line: Line): number {
  const study = studyWay(way, node.context);
  const share = (study.facts.one("diversity")?.args.share.value ?? 100) / 100;
  const child = node.children.find(({ feeder }) => feeder?.way === way);
  const lines = linesOf(study);
  if (study.designCurrent) return !node.threePhase || lines.includes(line) ? study.designCurrent.value * share : 0;
  if (!child || (node.threePhase && !isOn(child, line))) return 0;
  return onLine(child, child.threePhase ? line : "L") * share;
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
