/** The demand of a board's own final circuits, line by line. */

import { diversified } from "../calc/diversity.ts";
import { shareStep, sumStep } from "../calc/reproducible.ts";
import { amps, type Step, step, worked } from "../calc/result.ts";
import { columnOf } from "../circuit/diversity-column.ts";
import { memoOfBoard } from "../circuit/kept.ts";
import { premisesOf } from "../circuit/supply.ts";
import type { Way } from "../model/file.ts";
import { isThreePhase } from "../model/three-lines.ts";
import type { DiversityColumn } from "../tables/diversity-shares.ts";
import { lasting, type Source } from "../tables/source.ts";
import { type Circuit, type CircuitLoad, type Line, ownLoads, threeLines } from "./circuit-load.ts";
import type { StudiedBoard } from "./network.ts";

export const summed = lasting({ ref: "Sum of the circuits", standing: "computed" });

/** Some amperes of a demand and how they were found. */
export interface Part {
  readonly value: number;
  readonly steps: readonly Step[];
  readonly source: Source;
}

/** What a board's own final circuits come to, line by line, and which of its ways are feeders. */
export interface OwnPart {
  readonly lines: ReadonlyMap<Line, readonly Part[]>;
  /** A of circuits whose line is not stated. */
  readonly spread: number;
  readonly diverse: boolean;
  readonly unread: boolean;
  readonly assumed: readonly Circuit[];
  readonly unknown: readonly Circuit[];
  readonly unplaced: readonly Circuit[];
  readonly count: number;
  readonly feeders: readonly Way[];
}

/** Lines that say what a way draws. */
const ofLoad: ReadonlySet<string> = new Set(["Ib", "load", "serves", "diversity", "device", "phase", "feeds", "as"]);

export const ownPart = memoOfBoard((place: StudiedBoard): OwnPart => partBehind(place, new Set(place.board.ways)));

/** The same of some of a board's ways: those behind one of its RCDs. */
export function partBehind(place: StudiedBoard, among: ReadonlySet<Way>): OwnPart {
  const all = ownLoads(place);
  const loads = all.loads.filter(({ way }) => among.has(way));
  // A designer who states the board's diversity has judged its circuits together: the table on top would count it twice.
  const judged = place.context.board.facts.has("diversity");
  const column = judged ? undefined : columnOf(premisesOf(place.context));
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
    unread:
      place.context.board.facts.isUnread("diversity") ||
      place.board.ways.some((way) => among.has(way) && way.facts.broken.some((word) => ofLoad.has(word))),
    assumed: loads.filter(({ basis }) => basis === "assumed"),
    unknown: all.unknown.filter(({ way }) => among.has(way)),
    unplaced,
    count: loads.length,
    feeders: place.studies.flatMap((study) =>
      study.isFeeder && !study.isSpare && among.has(study.way) ? [study.way] : [],
    ),
  };
}

/** Steps are written when somebody reads them: sums are made anew far more often than they are shown. */
const part = (value: number, steps: () => readonly Step[]): Part => worked(value, "A", summed, steps);

export const plainPart = (name: string, value: number): Part => part(value, () => [step(name, "", amps(value))]);

const ownShares = (loads: readonly CircuitLoad[]): Part[] =>
  loads.flatMap(({ way: { id }, current, share }) => {
    if (share === undefined) return [];
    const value = current * share;
    return [part(value, () => [shareStep(`way ${id}`, share, [current, amps], [value, amps])])];
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
  const currents = loads.map(({ current }) => current);
  return part(value, () => [sumStep("in full", currents, amps, value)]);
}
