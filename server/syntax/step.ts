/** What each line of a file does with its braces. */
type Act = "plain" | "open" | "close" | "lost-open" | "extra-open" | "extra-close";

/** What a line does, and how many blocks end before it without their brace. */
export interface Step {
  act: Act;
  ends: number;
}
