/** A run of cable from place to place, m, as it lies. */
export interface DropRun {
  readonly from: string;
  readonly legs: readonly { readonly to: string; readonly length: number }[];
}

/** What of the cable two places share, as metres that carry the current of one to the other. */
interface DropPaths {
  readonly places: readonly string[];
  /** Metres of cable by which a current taken at one place lowers the voltage at another. */
  shared(one: string, other: string): number;
}

interface Leg {
  readonly length: number;
}

/** Where a place hangs: on the ring at so many metres, and on what legs of a spur or branch. */
interface Hanging {
  readonly ring: number | undefined;
  readonly legs: readonly Leg[];
}

/**
 * The paths of a circuit. The first run is the main one; where it returns to where it began it is a ring, and a current
 * taken at x of L metres lowers a place at y by min(x, y) × (L − max(x, y)) / L metres' worth. Runs from places no
 * earlier run reaches are left out.
 */
export function dropPaths(runs: readonly DropRun[]): DropPaths {
  const [main] = runs;
  const board = main?.from ?? "";
  const closed = main !== undefined && main.legs.at(-1)?.to === board;
  const ringLength = (main?.legs ?? []).reduce((sum, { length }) => sum + length, 0);
  const hanging = new Map<string, Hanging>([[board, { ring: undefined, legs: [] }]]);
  for (const run of runs) hang(run, run === main && closed, hanging);
  hanging.delete(board);
  return { places: [...hanging.keys()], shared };

  function shared(one: string, other: string): number {
    const [first, second] = [hanging.get(one), hanging.get(other)];
    if (!first || !second) return 0;
    const onRing =
      first.ring === undefined || second.ring === undefined
        ? 0
        : (Math.min(first.ring, second.ring) * (ringLength - Math.max(first.ring, second.ring))) / ringLength;
    return first.legs.reduce((sum, leg) => (second.legs.includes(leg) ? sum + leg.length : sum), onRing);
  }
}

function hang(run: DropRun, ring: boolean, hanging: Map<string, Hanging>): void {
  let current = hanging.get(run.from);
  if (!current) return;
  let along = 0;
  for (const leg of run.legs) {
    along += leg.length;
    current = ring ? { ring: along, legs: [] } : { ring: current.ring, legs: [...current.legs, leg] };
    if (!hanging.has(leg.to)) hanging.set(leg.to, current);
  }
}

/** A current taken at a place, A. */
interface LoadAt {
  readonly place: string;
  readonly current: number;
}

/** The place that drops most, and ampere-metres to it: times V per ampere and metre they are the drop. */
interface WorstPlace {
  readonly place: string;
  readonly ampereMetres: number;
}

/**
 * Where the voltage is lowest. What is not stated to be at a place is taken where it drops most of all, which is never
 * too little.
 */
export function worstPlace(paths: DropPaths, loads: readonly LoadAt[], elsewhere: number): WorstPlace | undefined {
  const { places, shared } = paths;
  const far = places.toSorted((one, other) => shared(other, other) - shared(one, one))[0];
  if (far === undefined) return undefined;
  const all = [...loads, { place: far, current: elsewhere }];
  let worst: WorstPlace = { place: far, ampereMetres: 0 };
  for (const place of places) {
    const ampereMetres = all.reduce((sum, load) => sum + load.current * shared(place, load.place), 0);
    if (ampereMetres > worst.ampereMetres) worst = { place, ampereMetres };
  }
  return worst;
}
