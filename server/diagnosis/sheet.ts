import type { CircuitRuns } from "../calc/circuit-network.ts";
import type { Measurement } from "../calc/circuit-readings.ts";
import type { Fact, Span } from "../model/values.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";

/** How far a meter may be out: a share of the reading and a fixed part, Ω. */
export interface Accuracy {
  readonly share: number;
  readonly digits: number;
}

export const usualAccuracy: Accuracy = {
  share: diagnosisPractice.accuracyShare.value,
  digits: diagnosisPractice.accuracyDigits.value,
};

/** One reading as it stands on the schedule. */
export interface SheetReading {
  /** As a tester would call it: "r1", "L-N at S3". */
  readonly name: string;
  readonly measurement: Measurement;
  /** Ω; of an open reading, the least it must be. */
  readonly value: number;
  /** Off scale, or more than any cable comes to. */
  readonly open: boolean;
  /** The meter showed no figure that could be written wrongly. */
  readonly offScale: boolean;
  /** Where it stands, where it comes from a schedule. */
  readonly at?: { readonly fact: Fact; readonly span: Span };
}

/** The conductors' sizes, mm², as far as they are known by size. */
export interface Sizes {
  readonly line: number;
  readonly neutral: number;
  readonly cpc?: number;
  /** The largest protective conductor such a cable is made with, where it is one sheath round all of them. */
  readonly cpcMost?: number;
}

/** What a loop test showed at a place: the loop it closed, Ω, or that there was none. */
export interface LoopSeen {
  readonly place: string;
  readonly value: number;
  readonly open: boolean;
  /** What the range it was read on may put on it, Ω. */
  readonly excess: number;
}

/** What other tests show of the circuit, besides the readings that are to be explained. */
export interface Evidence {
  readonly loops: readonly LoopSeen[];
  /** Loop impedance where the circuit begins, Ω. */
  readonly board?: number;
  /** An RCD tripped to earth on this circuit: the line reached it. */
  readonly tripped: boolean;
  /** The pair of conductors with the least insulation, where that is below what is required. */
  readonly leaks?: { readonly pair: string; readonly value: number };
}

/** The circuit as drawn, and what was read of it. */
export interface Sheet {
  readonly circuit: CircuitRuns & {
    readonly drawn: boolean;
    readonly lengthKnown: boolean;
  };
  readonly sizes?: Sizes;
  readonly readings: readonly SheetReading[];
  readonly accuracy: Accuracy;
  readonly evidence?: Evidence | undefined;
}

export const limitOf = ({ share, digits }: Accuracy, value: number): number => share * Math.abs(value) + digits;
