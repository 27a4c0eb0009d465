/** What may be the matter with a circuit or its readings, and what every reading would then be. */
import type { CircuitFault, CircuitRuns } from "../calc/circuit-network.ts";
import type { BoardLinks } from "../calc/circuit-readings.ts";
import type { LengthTolerance, Predict, Range } from "./fit.ts";
import type { Change } from "./predictions.ts";

/** How the circuit stands, if a hypothesis is right: what the next test would find. */
interface State {
  readonly faults: readonly CircuitFault[];
  /** Conductors of other sizes than written, Ω per metre. */
  readonly perMetre?: CircuitRuns["perMetre"];
}

export interface Hypothesis {
  /** One group for all the places the same thing could be at; of two at once, with what they are after a colon. */
  readonly kind: string;
  /** The place in plain words; empty where there is no choice of places. */
  readonly where: string;
  readonly predict: Predict;
  /** What is fitted besides the length: nothing, or a size within a range. */
  readonly range?: Range;
  readonly stretch?: LengthTolerance;
  /** What numbers that are held fast while the size is fitted cost besides. */
  readonly penalty?: number;
  readonly state: (size: number) => State;
  /** Sentence by the fitted size and the common factor of the length. */
  readonly say: (size: number, scale: number) => string;
  /** What is fitted, in words, with its unit. */
  readonly parameter?: { readonly name: string; readonly unit: "Ω" | "m" | "" };
  /** Legs joined at the board otherwise than they should be, while the readings were taken. */
  readonly links?: { readonly neutral?: BoardLinks; readonly cpc?: BoardLinks };
  /** The one change of the cable that it is. */
  readonly change?: Change;
  /** A cable between two points, inside which a break can hide. */
  readonly bridge?: { readonly from: string; readonly to: string };
  /** A reading that is written so many times what was read. */
  readonly reread?: { readonly at: number; readonly power: number };
  /** What each reading gains by the size where that is all the fault does. */
  readonly adds?: ArrayLike<number>;
  /** Readings of any circuit with this besides, put in place: of what does nothing to the cable, only to what is read. */
  readonly overlay?: (values: ArrayLike<number>, size: number, into?: Float64Array<ArrayBuffer>) => Float64Array;
}
