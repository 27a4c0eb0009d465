/** Tests gathered into visits: what is read within a few weeks belongs together. */
import { comparison } from "../tables/comparison.ts";
import { daysBetween } from "../text/days.ts";
import type { DatedTest } from "./series.ts";

interface Visit {
  /** The latest day of the visit. */
  readonly on: string;
  readonly tests: readonly DatedTest[];
}

/** The latest first. `tests` are in that order. A block without its day belongs to the visit beside it. */
export function visitsOf(tests: readonly DatedTest[]): Visit[] {
  const visits: { on: string; tests: DatedTest[] }[] = [];
  let previous = "";
  for (const test of tests) {
    const apart = daysBetween(test.on, previous);
    const current = visits.at(-1);
    if (current && !(apart > comparison.visit.value)) current.tests.push(test);
    else visits.push({ on: test.on, tests: [test] });
    if (test.on !== "") previous = test.on;
  }
  return visits;
}
