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

export const signatureChanged: Declaration = {
  id: "history/signature-changed",
  severity: "error",
  since: "0.1",
  title: "A signature for tests was taken away, given to another, or dated back.",
  why: "Who signed answers for the tests of that day. A name or a day that is put in its place later makes somebody answer for what they did not sign; who tests later signs with the later day.",
  clauses: [],
  examples: [],
};

export const circuitChanged: Declaration = {
  id: "history/circuit-changed",
  severity: "warning",
  since: "0.1",
  title: "A circuit was changed after its tests were signed for, and not tested since.",
  why: "Readings prove the circuit that was there. With another device, cable or RCD, or as a ring that was a radial, it is another one: every alteration is verified before it is put into service.",
  clauses: ["641.5", "644.1"],
  examples: [],
};

export const historyChecks: readonly Declaration[] = [signedReadingChanged, signatureChanged, circuitChanged];
