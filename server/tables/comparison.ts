import { type Sourced, sourced } from "./source.ts";

const practice = (value: number, subject: string): Sourced<number> =>
  sourced(value, `Common practice, ${subject}`, "practice");

/**
 * Where a careful reviewer begins to ask when results are held beside each other: those of a board, or of two days.
 * None of them is a limit of a standard, so none of them fails a circuit.
 */
export const comparison = {
  /** Circuits of different length that may show one figure before it looks copied. */
  equalReadings: practice(4, "repeated figures on a board"),
  /** How much longer the longest of them is than the shortest before equal figures are odd. */
  differingLength: practice(1.25, "repeated figures on a board"),
  /** Ω between the least and the greatest expectation before equal readings are odd: less is lost in rounding. */
  differingReading: practice(0.1, "repeated figures on a board"),
  /** Readings of a board that are all those of the earlier visit before the sheet looks copied. */
  copiedReadings: practice(6, "readings repeated from an earlier test"),
  /**
   * Circuits on which a sum comes out to the last digit before it looks calculated backwards. Meters repeat to a digit
   * either way, so that an honest sum is exact one time in three: nine of nine are chance once in 20 000 boards.
   */
  exactSums: practice(9, "readings calculated from one another, by chance once in 20 000 boards"),
  /** Decimals of a fault current in kA from which an exact sum is no chance. */
  exactDecimals: practice(2, "readings calculated from one another"),
  /** Circuits just inside their limit before the board as a whole is worth a question. */
  nearLimitCircuits: practice(3, "results close to their limits"),
  /** Share of the limit from which a result is close to it. */
  nearLimitShare: practice(0.95, "results close to their limits"),
  /** Ω by which every circuit of a board reads over its length alike before the leads are suspected. */
  leadsLeast: practice(0.08, "leads that were not nulled"),
  /** Ω between the least and the greatest of those excesses: two readings of one meter differ by as much. */
  leadsSpread: practice(0.05, "leads that were not nulled"),
  /** Circuits it takes to speak of a board's spread. */
  spreadCircuits: practice(5, "the spread of a board's circuits"),
  /** How far one circuit may stand from the middle of its board, as a share, where the others keep together. */
  spreadOutlier: practice(0.3, "the spread of a board's circuits"),
  spreadOthers: practice(0.15, "the spread of a board's circuits"),
  /** Readings it takes, all in steps of this many Ω, before they look like estimates. */
  roundReadings: practice(8, "round figures"),
  roundStep: practice(0.05, "round figures"),
  /** Rise of a resistance since an earlier test, as a share and in Ω: both must be passed. */
  resistanceRise: practice(0.2, "comparison with an earlier test"),
  resistanceRiseLeast: practice(0.1, "comparison with an earlier test"),
  /** What is left of a conductor's resistance since an earlier visit, as a share, before it is asked what changed. */
  resistanceLeft: practice(0.5, "comparison with an earlier test"),
  /** The same for an earth electrode: dry ground alone may do as much. */
  electrodeRise: practice(0.5, "comparison with an earlier test"),
  /** Change of a fault current since an earlier test, as a share. */
  faultChange: practice(0.25, "comparison with an earlier test"),
  /** Growth of an RCD's trip time since an earlier test, as a share and in s: both must be passed. */
  tripTimeRise: practice(0.5, "comparison with an earlier test"),
  tripTimeRiseLeast: practice(0.01, "comparison with an earlier test"),
  /** Days within which tests belong to one visit. */
  visit: practice(31, "comparison with an earlier test"),
  /** What is left of an insulation resistance since an earlier test, as a share. */
  insulationLeft: practice(0.1, "comparison with an earlier test"),
  /** Months in which work may still be designed to the edition before, where no date of withdrawal is known. */
  editionChange: practice(6, "change from one edition to the next"),
} as const satisfies Record<string, Sourced<number>>;
