import { milliseconds } from "../../calc/result.ts";
import { latestRcdTests, type RcdTest } from "../../readings/rcd-tests.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, boardRule, factSpot, type Reporter } from "../frame/rule.ts";

/** One test of each device: two times of one device at one current are no coincidence of several. */
function ofEachDevice(tests: readonly RcdTest[]): RcdTest[] {
  const seen = new Set<unknown>();
  return tests.filter(({ device }) => device && !seen.has(device.fact) && seen.add(device.fact));
}

/** Times that repeat: on every device tested, or on most where the meter shows tenths of a millisecond. */
function repeated(tests: readonly RcdTest[]): RcdTest[] {
  const timed = ofEachDevice(tests.filter(({ time, fact }) => time?.sign === "=" && fact.provenance === "measured"));
  for (const same of Map.groupBy(timed, ({ time }) => time?.value).values()) {
    const finely = same.every(({ time }) => time && time.decimals >= 1);
    const all = same.length === timed.length;
    if (same.length >= comparison.equalReadings.value && (all || (finely && 2 * same.length > timed.length)))
      return same;
  }
  return [];
}

function checkTests(tests: readonly RcdTest[], at: string, report: Reporter): void {
  const [first, ...others] = repeated(tests);
  if (!first?.time) return;
  const time = milliseconds(first.time.value);
  report(factSpot(first.fact), {
    message: `${others.length + 1} RCDs of this board trip in exactly ${time} at ${at}: was each one tested, or one time copied?`,
    value: amount(first.time.value, "s"),
    source: comparison.equalReadings.source,
    related: others.map(({ fact }) => ({ spot: factSpot(fact), message: `Another RCD with ${time} at ${at}.` })),
  });
}

const sample = (times: readonly string[]): string =>
  times
    .map(
      (time, index) => `way ${index + 1} radial "Bench ${index + 1}" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x ${time} ms
  }
}`,
    )
    .join("\n");

export default boardRule({
  id: "population/equal-trip-times",
  severity: "warning",
  since: "0.1",
  title: "The RCDs of a board all trip in the same time.",
  why: "Every mechanism has its own time, and even one device differs from test to test. A time that repeats down the board was copied, and nobody knows which of the RCDs was tested.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: sample(["24.1", "24.1", "24.1", "24.1"]).replace("ms", "ms\n    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^"),
      good: sample(["24.1", "21.8", "24.1", "26.3"]),
    },
  ],
  check({ context, studies }, report) {
    const groups = Map.groupBy(latestRcdTests(context, studies), ({ multiple }) => multiple?.value);
    for (const [multiple, tests] of groups) {
      if (multiple !== undefined) checkTests(tests, `${multiple} × IΔn`, report);
    }
  },
});
