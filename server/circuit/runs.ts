import type { Way } from "../model/file.ts";
import type { Path, Val } from "../model/values.ts";
import { sum } from "../text/sum.ts";

/** A place a run goes through, with how the cable gets there. */
export interface PlaceOnRun {
  readonly name: Val<string>;
  /** Metres of cable from the board, the way the cable was drawn; round a ring, by the first leg. */
  readonly fromBoard: number;
  /** Whether it stands on the ring, or on the main run of a radial. */
  readonly onMain: boolean;
  /** For a place on a spur: where the spur leaves the ring and how much cable it has from there. */
  readonly spur?: { readonly from: string; readonly length: number; readonly depth: number };
}

/** The geometry of a circuit as its `run` lines give it. Lengths in m. */
export interface Runs {
  readonly board: string;
  readonly paths: readonly Path[];
  readonly places: ReadonlyMap<string, PlaceOnRun>;
  /** All the way round a ring, or the main run of a radial. */
  readonly mainLength: number;
  readonly closed: boolean;
  /** The longest way from the board to any place. */
  readonly farthest: number;
  readonly total: number;
  /** Runs that start at a place no earlier run reaches. */
  readonly detached: readonly Path[];
  readonly twice: readonly Val<string>[];
}

/**
 * Reads the runs of a way. The first is the main run; one that begins and ends at the same place closes a ring. A run
 * that begins at a point already reached is a spur or a branch from there.
 */
export function runsOf(way: Way): Runs | undefined {
  const paths = way.facts.all("run").map((fact) => fact.args.path);
  const [main, ...rest] = paths;
  if (!main) return undefined;
  const board = main.from.value;
  const places = new Map<string, PlaceOnRun>();
  const twice: Val<string>[] = [];
  let along = 0;
  for (const { length, to } of main.legs) {
    along += length.value;
    if (to.value === board) continue;
    if (places.has(to.value)) twice.push(to);
    else places.set(to.value, { name: to, fromBoard: along, onMain: true });
  }
  const closed = main.legs.at(-1)?.to.value === board;
  const detached: Path[] = [];
  for (const path of rest) if (!branch(path, board, places, twice)) detached.push(path);
  const lengths = paths.map((path) => sum(path.legs.map(({ length }) => length.value)));
  return {
    board,
    paths,
    places,
    mainLength: along,
    closed,
    farthest: Math.max(closed ? 0 : along, ...[...places.values()].map((place) => place.fromBoard)),
    total: sum(lengths),
    detached,
    twice,
  };
}

function branch(path: Path, board: string, places: Map<string, PlaceOnRun>, twice: Val<string>[]): boolean {
  const origin = places.get(path.from.value);
  if (!origin && path.from.value !== board) return false;
  let length = origin?.spur?.length ?? 0;
  let along = origin?.fromBoard ?? 0;
  const from = origin?.spur?.from ?? path.from.value;
  let depth = (origin?.spur?.depth ?? 0) + 1;
  for (const leg of path.legs) {
    length += leg.length.value;
    along += leg.length.value;
    if (places.has(leg.to.value) || leg.to.value === board) twice.push(leg.to);
    else places.set(leg.to.value, { name: leg.to, fromBoard: along, onMain: false, spur: { from, length, depth } });
    depth++;
  }
  return true;
}
