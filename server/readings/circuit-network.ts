/** The cable of a circuit as a network: legs from place to place, and what each conductor has by the metre. */

import type { Conductor } from "../calc/circuit-network.ts";
import { type CircuitLeg, type CircuitRuns, legEnd, legStart } from "../calc/circuit-network.ts";
import type { Calculated } from "../calc/result.ts";
import { hasResistance } from "../circuit/cable.ts";
import { conductorPerMetre } from "../circuit/cpc.ts";
import type { Runs } from "../circuit/runs.ts";
import type { WayStudy } from "../circuit/way.ts";
import { warmed } from "./dead.ts";

export interface CircuitNetwork extends CircuitRuns {
  /** Whether the runs draw the points. Otherwise they are taken as evenly spaced, in the order they were read. */
  readonly drawn: boolean;
  /** Whether a length is known; otherwise only shapes and ratios can be judged. */
  readonly lengthKnown: boolean;
  /** Metres all the way round a ring, or of the main run of a radial. */
  readonly mainLength: number;
  /** Ω per metre with its working, at the temperature of the test. */
  readonly sources: Readonly<Record<Conductor, Calculated | undefined>>;
}

/** A place of its own for a circuit whose points are not named: half way round a ring, the far end of a radial. */
export const farPlace = "the far point";

/** A ring of unknown length is calculated with this one, m, and its readings are fitted by ratio. */
const anyLength = 60;

/**
 * The circuit of a way at a temperature, with the points that were read. Nothing where the cable is not described by
 * sizes the tables know, or where the runs do not hang together.
 */
export function circuitOf(
  study: WayStudy,
  read: readonly string[],
  temperature: number | undefined,
): CircuitNetwork | undefined {
  const sources = perMetreOf(study, temperature);
  const { line } = sources;
  if (!sources.neutral || !line || study.facts.isUnread("run") || study.facts.isUnread("length")) return undefined;
  // Without a protective conductor of known size nothing is expected of it, and no reading to it is used.
  const perMetre = {
    line: line.value,
    neutral: sources.neutral.value,
    cpc: sources.cpc?.value ?? line.value,
  };
  const shape = study.runs ? drawn(study.runs, study.isRing, read) : evenly(study, read);
  return shape && { ...shape, perMetre, sources };
}

function perMetreOf({ cable }: WayStudy, temperature: number | undefined): CircuitNetwork["sources"] {
  const none = { line: undefined, neutral: undefined, cpc: undefined };
  if (!cable || !hasResistance(cable)) return none;
  const of = (which: Conductor) => {
    const cold = conductorPerMetre(cable, which);
    return cold && warmed(cold, temperature);
  };
  return { line: of("line"), neutral: of("neutral"), cpc: of("cpc") };
}

type Shape = Omit<CircuitNetwork, "perMetre" | "sources">;

function drawn(runs: Runs, ring: boolean, read: readonly string[]): Shape | undefined {
  if (runs.closed !== ring || runs.detached.length > 0 || runs.twice.length > 0 || runs.mainLength <= 0)
    return undefined;
  const { board } = runs;
  const legs: CircuitLeg[] = [];
  for (const [index, path] of runs.paths.entries()) {
    let from = path.from.value === board ? legStart : path.from.value;
    for (const { length, to } of path.legs) {
      const end = to.value === board ? legEnd : to.value;
      legs.push({ from, to: end, length: length.value, main: index === 0 });
      from = end;
    }
  }
  const places = [...runs.places.keys()];
  // A point that was read but is not drawn hangs somewhere on the ring: half way is the least wrong.
  const middle = middlePlace(runs);
  const undrawn = read.filter((name) => !runs.places.has(name));
  if (undrawn.length > 0 && (!ring || middle === undefined)) return undefined;
  for (const name of undrawn) legs.push({ from: middle ?? legStart, to: name, length: 0, main: false });
  return {
    closed: ring,
    legs,
    places: [...places, ...undrawn],
    drawn: undrawn.length === 0,
    lengthKnown: true,
    mainLength: runs.mainLength,
  };
}

function middlePlace({ places, mainLength }: Runs): string | undefined {
  const away = (fromBoard: number) => Math.abs(fromBoard - mainLength / 2);
  return [...places.values()].filter(({ onMain }) => onMain).sort((a, b) => away(a.fromBoard) - away(b.fromBoard))[0]
    ?.name.value;
}

/** Points evenly round a ring; of a radial only its far end is known. */
function evenly(study: WayStudy, read: readonly string[]): Shape | undefined {
  const stated = study.length?.value;
  if (!study.isRing && (stated === undefined || read.length > 1)) return undefined;
  const places = read.length > 0 ? [...read] : [farPlace];
  const length = stated ?? anyLength;
  const stops = study.isRing ? [...places, legEnd] : places;
  const legs = stops.map((to, index) => ({
    from: stops[index - 1] ?? legStart,
    to,
    length: length / stops.length,
    main: true,
  }));
  return {
    closed: study.isRing,
    legs,
    places,
    drawn: !study.isRing,
    lengthKnown: stated !== undefined,
    mainLength: length,
  };
}
