/** What a proposal says: the decisions in their order, what they rest on, and what was ruled out on the way. */
import type { Step } from "../calc/result.ts";
import type { Fix } from "../model/problems.ts";
import type { Source } from "../tables/source.ts";

/** One decision, or one relation that was compared with a limit. */
export interface Decision {
  /** "Design current", "Capacity of the cable", … */
  readonly title: string;
  /** What was decided, or what the relation comes to. */
  readonly result: string;
  readonly steps: readonly Step[];
  readonly source?: Source;
}

/** A smaller candidate, and what speaks against it. */
export interface RuledOut {
  readonly candidate: string;
  readonly why: string;
  /** The relation that did not hold, where it was one. */
  readonly by?: string;
  readonly source?: Source;
}

export interface Proposal {
  /** `missing`: a fact without which nothing can be proposed. `none`: nothing that is made fits. */
  readonly outcome: "fits" | "none" | "missing";
  /** Why nothing can be proposed, where nothing can. */
  readonly reasons: readonly string[];
  /** What was taken for granted or could not be judged, in the order it came up. */
  readonly open: readonly string[];
  readonly decisions: readonly Decision[];
  readonly ruledOut: readonly RuledOut[];
  /** The statements as they would be written. */
  readonly device?: string;
  readonly cable?: string;
  /** An RCD of the way's own, where a rule requires one and the device is none. */
  readonly rcd?: string;
  /** Puts the lines into the way; no edits where they stand there already. Offsets are in the way's segment. */
  readonly fix?: Fix;
}

/** What whoever asks wants to stay as it is, over what the schedule says. */
export interface Wants {
  /** Design current, A. */
  readonly Ib?: number;
  /** A load in the place of those that are written, W. */
  readonly power?: number;
  /** Keep the device's rating as it is written. */
  readonly keepDevice?: boolean;
  /** Propose for a usual route where none is written. Nothing is then written into the way. */
  readonly assumeRoute?: boolean;
}
