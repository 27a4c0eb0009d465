import { above } from "../../analysis/compare.ts";
import { earlier } from "../../analysis/history.ts";
import { ohms, percent, step } from "../../calc/result.ts";
import { exact, type Fact, type Reading } from "../../model/values.ts";
import { comparison } from "../../tables/comparison.ts";
import { amount, factSpot, type Reporter, wayRule } from "../rule.ts";

type ReadingFact = Fact & { readonly args: { readonly value: Reading } };

function judge(name: string, facts: readonly { fact: ReadingFact | undefined; on: string }[], report: Reporter): void {
  const pair = earlier(facts);
  const now = pair && exact(pair.now.args.value);
  const then = pair && exact(pair.was.args.value);
  // A figure that was worked out or taken over is no second measurement.
  if (!pair || now === undefined || then === undefined) return;
  if (pair.now.provenance !== "measured" || pair.was.provenance !== "measured") return;
  const rise = now - then;
  const allowed = Math.max(comparison.resistanceRiseLeast.value, comparison.resistanceRise.value * then);
  if (!above(rise, allowed)) return;
  report(factSpot(pair.now), {
    message: `${name} rose from ${ohms(then)} on ${pair.on} to ${ohms(now)}, by ${percent((rise / then) * 100)}. Look for a joint that works loose or warms before it fails.`,
    value: amount(now, "Ω"),
    limit: amount(then + allowed, "Ω"),
    steps: [step(`rise since ${pair.on}`, `${ohms(now)} − ${ohms(then)}`, ohms(rise))],
    source: comparison.resistanceRise.source,
    related: [{ spot: factSpot(pair.was), message: `${ohms(then)} on ${pair.on}.` }],
  });
}

export default wayRule({
  id: "drift/resistance-risen",
  severity: "warning",
  since: "0.1",
  title: "A resistance that has risen since the test before.",
  why: "Copper does not age; joints do. A rise while the circuit stayed the same is a terminal working loose, even where the reading is still inside its limit.",
  clauses: ["643.2.1", "643.7.3", "652.1"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Water heater" {
  live 2021-03-05 {
    Zs  0.62 Ω
  }
  live 2026-03-05 {
    Zs  0.97 Ω
    ^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  live 2021-03-05 {
    Zs  0.62 Ω
  }
  live 2026-03-05 {
    Zs  0.66 Ω
  }
}`,
    },
  ],
  check({ deadTests, liveTests }, report) {
    judge(
      "Zs",
      liveTests.map(({ on, facts }) => ({ on, fact: facts.one("Zs") })),
      report,
    );
    judge(
      "R1+R2",
      deadTests.map(({ on, facts }) => ({ on, fact: facts.one("R1+R2") })),
      report,
    );
    judge(
      "R2",
      deadTests.map(({ on, facts }) => ({ on, fact: facts.one("R2") })),
      report,
    );
  },
});
