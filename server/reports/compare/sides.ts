/** One version of an installation, and what it holds at each place that is compared. */
import { studyWay } from "../../circuit/way.ts";
import type { Board } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { entriesAtOrigin, entriesOfBoard, entriesOfWay } from "../../readings/entries.ts";
import type { Renamed } from "../../readings/entry-text.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import { planDead } from "../../readings/plan-dead.ts";
import { planLive } from "../../readings/plan-live.ts";
import type { Found } from "./findings.ts";
import { limitsFor } from "./limits.ts";
import type { PlacedWay } from "./match.ts";
import type { Part } from "./readings.ts";

export interface Side {
  readonly installation: Installation;
  readonly found: Found;
  readonly places: ReadonlyMap<Board, BoardInPlace>;
  /** Of the earlier version: the names its boards have in the later. */
  readonly renamed: Renamed | undefined;
}

export const sideOf = (installation: Installation, found: Found, renamed: Renamed | undefined): Side => ({
  installation,
  found,
  places: new Map(installation.boards.map((place) => [place.board, place])),
  renamed,
});

/** A board by the name it has in the later version. */
export const nameNow = (name: string, { renamed }: Side): string => renamed?.get(name) ?? name;

/** What a version holds at a place that it does not have. */
const nothing: Part = { entries: [], found: [], limits: () => () => undefined };

/** How a schedule is divided into files is not what it records; what they bring is compared. */
const ofFiles: ReadonlySet<string> = new Set(["use", "wayfile"]);

export function partAtOrigin({ installation, found }: Side): Part {
  const inBoards = new Set(installation.boards.flatMap(({ board }) => board.segments));
  const own = [...found.at].flatMap(([segment, all]) => (inBoards.has(segment) ? [] : all));
  const entries = entriesAtOrigin(installation).filter(({ address }) => !ofFiles.has(address.line?.word ?? ""));
  return { entries, found: own, limits: () => limitsFor(entries, planSupply(installation)) };
}

export function partOfBoard(board: Board | undefined, { found, places, renamed }: Side): Part {
  const place = board && places.get(board);
  if (!board || !place) return nothing;
  const entries = entriesOfBoard(board.head, renamed);
  const ofWays = new Set(board.ways.map(({ segment }) => segment));
  const own = board.segments.flatMap((segment) => (ofWays.has(segment) ? [] : (found.at.get(segment) ?? [])));
  return { entries, found: own, limits: () => limitsFor(entries, planBoard(place.context)) };
}

export function partOfWay(placed: PlacedWay | undefined, { found, places, renamed }: Side): Part {
  const context = placed && places.get(placed.board)?.context;
  if (!placed || !context) return nothing;
  const { board, way } = placed;
  const entries = entriesOfWay(board.head.name, way, renamed);
  const limits = () => {
    const study = studyWay(way, context);
    return limitsFor(entries, [...planDead(study), ...planLive(study)]);
  };
  return { entries, found: found.at.get(way.segment) ?? [], limits };
}
