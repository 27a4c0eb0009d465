/** A place of a schedule that a reading can be entered in. */
import type { PlannedTest } from "../readings/planned.ts";

/** The supply, a board, or a way of one. */
export interface SlotPlace {
  readonly board?: string;
  readonly way?: string;
}

export interface Slot {
  readonly place: SlotPlace;
  readonly block: "dead" | "live";
  /** How its line begins: `at S1`, `rcd 30 mA 1x`. Slots of one line are written together. */
  readonly line: string;
  /** What stands before the value on the line; empty where nothing does. */
  readonly label: string;
  /** Empty where a word is the answer. */
  readonly unit: PlannedTest["unit"] | "V" | "mA";
  /** The words that are an answer, the good one first; none where a figure is. */
  readonly words: readonly string[];
  /** How its line begins, where it is called otherwise. */
  readonly head?: string;
  /** Stands at the end of the line. */
  readonly tail?: string;
  /** Words that may stand behind the value: how it was measured. */
  readonly qualifiers?: readonly string[];
  /** Not on the plan, and shown on a sheet to fill in all the same. */
  readonly offered?: true;
  /** The test as it is planned; nothing where it may be entered and is not on the plan. */
  readonly planned?: PlannedTest;
}
