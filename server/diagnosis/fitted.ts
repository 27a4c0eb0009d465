/** Hypotheses compared with the readings, one by one and gathered by kind. */
import type { Fitted } from "./fit.ts";
import type { Hypothesis } from "./hypothesis.ts";

/** A hypothesis with the size that fits best, and how well it then explains the readings. */
export interface FittedHypothesis {
  readonly hypothesis: Hypothesis;
  readonly fitted: Fitted;
  /** In Ω or m as the meter and the drawing have it; 0 where nothing is fitted. */
  readonly size: number;
  readonly score: number;
  /** In the order in which the places were tried. */
  readonly place: number;
}

/** All places of one kind of fault, the likeliest first. */
export interface Kind {
  readonly kind: string;
  readonly members: readonly FittedHypothesis[];
  readonly best: FittedHypothesis;
  /** Other places the readings speak for as well. */
  readonly alike: readonly FittedHypothesis[];
  readonly score: number;
  readonly weight: number;
  readonly fits: boolean;
}
