/** Checks of how a schedule came to be what it is. They need its history, so only the command line makes them. */
import type { Rule } from "./rule.ts";

type Declaration = Omit<Rule, "scope" | "check" | "checkBoard">;

export const signedReadingChanged: Declaration = {
  id: "history/signed-reading-changed",
  severity: "error",
  since: "0.1",
  title: "A reading was altered after it was signed for.",
  why: "Who signs for tests answers for the figures that were there. A figure that is changed later, even to the right one, is nobody's reading unless what stood there is kept with the reason: write `was` behind it, or strike the tests out.",
  clauses: [],
  examples: [],
};
