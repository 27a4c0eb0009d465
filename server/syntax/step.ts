/** What each line of a file does with its braces. */
export type Act = "plain" | "open" | "close" | "whole" | Mending;
type Mending = "lost-open" | "extra-open" | "extra-close";

/** Whether it is read as if a brace stood, or did not stand, on the line. */
export const isMending = (act: Act): act is Mending =>
  act !== "plain" && act !== "open" && act !== "close" && act !== "whole";

/** What every line does, and how many blocks end before it without their brace. */
export interface Steps {
  readonly acts: readonly Act[];
  readonly ends: ReadonlyMap<number, number>;
}
