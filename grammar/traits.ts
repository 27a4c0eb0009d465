/**
 * What the engine needs to know of a word beyond its spelling: what is read there, what distinguishes two readings of it,
 * how a reading is named on paper, and which figures belong to the line. Rooms that treat words by kind ask here, so that
 * a new word is one row and not a row in a dozen lists.
 */

/** Which limits, expectations and rows of a hover belong to a reading. Each is worked out in one place for each. */
export type ReadingFigures =
  | "loop"
  | "board-loop"
  | "supply-loop"
  | "fault"
  | "continuity"
  | "cpc"
  | "ring-ends"
  | "dead-point"
  | "insulation"
  | "conductor"
  | "supplementary"
  | "electrode"
  | "rcd-time"
  | "trip-current"
  | "leakage"
  | "voltage"
  | "verdict";

/**
 * What a change of a reading from one day to another can mean: a joint that works loose, a clamp that corrodes, ground
 * that dries; other fault levels, damp, a mechanism that stiffens. Nothing where it varies by itself, or passes or fails.
 */
export type Ageing = "joint" | "clamp" | "ground" | "fault-current" | "insulation" | "trip-time" | "none";

const ageings: Readonly<Record<ReadingFigures, Ageing>> = {
  loop: "joint",
  "board-loop": "joint",
  "supply-loop": "joint",
  continuity: "joint",
  cpc: "joint",
  "ring-ends": "joint",
  "dead-point": "joint",
  conductor: "clamp",
  supplementary: "clamp",
  electrode: "ground",
  fault: "fault-current",
  insulation: "insulation",
  "rcd-time": "trip-time",
  "trip-current": "none",
  leakage: "none",
  voltage: "none",
  verdict: "none",
};

/** How what is read on a line ages; nothing where it is stated. */
export const ageingOf = ({ reads, figures }: Pick<Traits, "reads" | "figures">): Ageing =>
  reads && figures && Object.hasOwn(ageings, figures) ? ageings[figures as ReadingFigures] : "none";

/** Figures of lines that are stated and not read. */
type StatedFigures =
  | "device"
  | "cable"
  | "route"
  | "length"
  | "place"
  | "board-place"
  | "floor"
  | "load"
  | "rating"
  | "rcd"
  | "time"
  | "written-limit"
  | "edition"
  | "tails"
  | "containment";

export type Figures = ReadingFigures | StatedFigures;

/** What is read on a line. */
export interface Reads<Name extends string = string> {
  /** The arguments that distinguish two of it in one block: the point, the RCD, the multiple. */
  readonly key: readonly Name[];
  /** Those of them that say how it was tested and not what: with another of these the same thing was tested. */
  readonly how?: readonly Name[];
  /** The arguments that stand in place of a figure: that it did not trip. */
  readonly instead?: readonly Name[];
  /** Whether a later visit is expected to read it again: the line as a whole, or each of its values by itself. */
  readonly again: boolean | "each-value";
  /**
   * What a person calls it. `{arg}` is the argument read, other names in braces are key arguments; what stands in square
   * brackets is left out where its argument is.
   */
  readonly name: string;
  /** The test in the middle of a sentence, where that is not its word: “the RCD's trip time”. */
  readonly test?: string;
}

/** Traits of a word; a row with readings cannot be written without the first two (`params.ts`). */
export interface Traits<Name extends string = string> {
  readonly reads?: Reads<Name>;
  /**
   * The arguments that distinguish two lines of a word where it is stated and not read. A name that the line defines needs
   * no mention.
   */
  readonly key?: readonly Name[];
  /** What is answered to a second line of a word that stands once, where people have a reason to write one. */
  readonly twice?: string;
  /** The word whose line it follows and belongs to, as an answer does to its question. */
  readonly follows?: string;
  readonly figures?: Figures;
  /**
   * How a reading beyond the plan of tests is entered: `apart` where its lines are made from the circuit's own conductors
   * and parts, `usual` where it is few lines and often wanted.
   */
  readonly entry?: "apart" | "usual";
  /** What the particulars of a supply call it on paper, and whether they leave it out where it is not stated. */
  readonly particular?: { readonly name: string; readonly ifStated?: true };
  /** How a line that is stated is called on paper, where that is not its word. */
  readonly paper?: string;
  /** Remarks of the record, which are no part of what was built or read. */
  readonly remark?: true;
  /** Shown where two versions are compared and the whole block is in one of them only. */
  readonly outlines?: true;
  /** Who answers for the work, and when. */
  readonly signs?: true;
  /** Only a circuit in use has it. */
  readonly inUse?: true;
  /** A proposal of device and cable rests on it. */
  readonly sizes?: true;
}
