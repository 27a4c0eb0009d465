/**
 * Legs of two rings in each other's terminals at the board. Solved as one network, each ring then reads as if the
 * conductor were open in its leg at the board: the other ring's conductor hangs on it and carries nothing.
 */

import type { Conductor } from "../calc/circuit-network.ts";
import { legEnd } from "../calc/circuit-network.ts";
import { type Fitted, fitScale, isFit, scaleOf } from "./fit.ts";
import { Predictions } from "./predictions.ts";
import type { Sheet } from "./sheet.ts";

export interface CrossedLegs {
  /** Whether the readings of the ring are such as crossed legs give; nothing where no point was read that could tell. */
  readonly fits: boolean | undefined;
  /** Whether a break half way round would not fit as well. */
  readonly placed: boolean;
  /** What each of the conductors should read from one end to the other, once its other end is found, Ω. */
  readonly ends: Readonly<Partial<Record<Conductor, number>>>;
}

/** Holds the readings of one ring against its legs of these conductors being elsewhere, at either end. */
export function asCrossed(sheet: Sheet, crossed: readonly Conductor[]): CrossedLegs {
  const { circuit } = sheet;
  const scale = scaleOf(sheet);
  const predictions = new Predictions(sheet);
  const openAt = (leg: number): Fitted => {
    const opened = crossed.map((conductor) => predictions.ofLeg(conductor, leg, "break"));
    return fitScale(scale, predictions.changed(opened)(0));
  };
  const last = circuit.legs.findIndex(({ main, to }) => main && to === legEnd);
  const [start, end] = [openAt(0), openAt(last)];
  const best = end.cost < start.cost ? end : start;
  const metres = circuit.legs.reduce((sum, { main, length }) => sum + (main ? length : 0), 0);
  const ends = Object.fromEntries(
    crossed.map((conductor) => [conductor, best.scale * metres * circuit.perMetre[conductor]]),
  );
  const fits = tells(sheet, crossed) ? isFit(scale, best) : undefined;
  return { fits, placed: fits === true && !isFit(scale, openAt(Math.floor(last / 2))), ends };
}

/** Only a reading at a point, in a round the conductor is part of, distinguishes a leg in the wrong place from a break elsewhere. */
const tells = ({ readings }: Sheet, crossed: readonly Conductor[]): boolean =>
  readings.some(
    ({ measurement, open }) =>
      measurement.kind === "round" &&
      !open &&
      crossed.some((conductor) => conductor === "line" || conductor === measurement.other),
  );
