import type { Rule } from "./rule.ts";

/** What a check declares, without the check itself. */
export type Declaration = Omit<Rule, "scope" | "check">;

export const unused: Declaration = {
  id: "record/departure-unused",
  severity: "warning",
  since: "0.1",
  title: "A departure suppresses nothing.",
  why: "Either what it excused has been put right, and the departure should go, or it names the wrong rule and what it was meant for is not excused.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  departure    999.9 "The old board stays until autumn"
               ^^^^^
}`,
      good: `way 1 radial "Water heater" {
  note         "The old board stays until autumn"
}`,
    },
  ],
};

export const renamed: Declaration = {
  id: "record/departure-renamed",
  severity: "information",
  since: "0.1",
  title: "A departure names a check by its former id.",
  why: "The check has another name now. The departure still holds, but whoever looks the old name up in the list of checks does not find it: write the present one.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin 70 °C  line 2.5 mm²  cpc 1.5 mm²
  departure    record/no-use "Serves a test bench that is not described here"
               ^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin 70 °C  line 2.5 mm²  cpc 1.5 mm²
  departure    record/serves-not-stated "Serves a test bench that is not described here"
}`,
    },
  ],
};

/** What stands in a new departure until somebody writes why. */
export const reasonToWrite = "reason";

export const unexplained: Declaration = {
  id: "record/departure-without-reason",
  severity: "warning",
  since: "0.1",
  title: "A departure has no reason.",
  why: "A departure rests on its reason: whoever relies on the record has to know why the work is safe as it is, and who agreed. Until the reason is written, what was found stays found.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin 70 °C  line 2.5 mm²  cpc 1.5 mm²
  departure    record/serves-not-stated "reason"
                                        ^^^^^^^^
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin 70 °C  line 2.5 mm²  cpc 1.5 mm²
  departure    record/serves-not-stated "Serves a test bench that is not described here"
}`,
    },
  ],
};

/** Found by one schedule of several that share a file, this holds for that one alone. */
export const departureUnused = unused.id;

/** The checks that run after the others, since they judge departures by what was found. */
export const departureChecks: readonly Declaration[] = [unused, renamed, unexplained];
