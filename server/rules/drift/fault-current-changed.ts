import { exceeds } from "../../calc/compare.ts";
import { kiloamps, percent, step } from "../../calc/result.ts";
import { type Series, seriesOfBoard, seriesOfSupply, seriesOfWay } from "../../readings/series.ts";
import { uncertaintyIn } from "../../readings/uncertainty.ts";
import { comparison } from "../../tables/comparison.ts";
import { driftUncertainty } from "../common/uncertainty-words.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const currents = ["fault-current"] as const;

function checkTests({ name, now, before }: Series, report: Reporter): boolean {
  const [then] = before;
  if (!then) return false;
  const change = now.value - then.value;
  const uncertainty = uncertaintyIn(now) + uncertaintyIn(then);
  const allowed = Math.max(comparison.faultChange.value * then.value, uncertainty);
  if (!exceeds(Math.abs(change), allowed)) return false;
  const rose = change > 0;
  const meaning = rose
    ? "Check every breaking capacity."
    : "Look at the joints upstream, and at Zs of the circuits downstream.";
  report(factSpot(now.fact), {
    message: `${name} ${rose ? "rose" : "fell"} from ${kiloamps(then.value)} on ${then.on} to ${kiloamps(now.value)}, by ${percent(Math.round((Math.abs(change) / then.value) * 100))}. ${meaning}`,
    value: amount(now.value, "A"),
    limit: amount(then.value + (rose ? allowed : -allowed), "A"),
    least: !rose,
    steps: [
      step(`change since ${then.on}`, `${kiloamps(now.value)} − ${kiloamps(then.value)}`, kiloamps(change)),
      ...driftUncertainty(now, then),
    ],
    source: comparison.faultChange.source,
    related: [{ spot: factSpot(then.fact), message: `${name} ${kiloamps(then.value)} on ${then.on}.` }],
  });
  return true;
}

export default installationRule({
  id: "drift/fault-current-changed",
  severity: "warning",
  since: "0.1",
  title: "A fault current differs from the previous test.",
  why: "It follows from the supply and the cables up to here, which do not change by themselves. More than before may exceed what a device can break; less means a higher loop impedance.",
  clauses: ["434.1", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `live 2021-03-05 {
  Ipf          1.1 kA
}
live 2026-03-05 {
  Ipf          1.6 kA
  ^^^^^^^^^^^^^^^^^^^
}`,
      good: `live 2021-03-05 {
  Ipf          1.1 kA
}
live 2026-03-05 {
  Ipf          1.2 kA
}`,
    },
  ],
  // The larger of the currents is reported for all: one sentence a place.
  check(installation, report) {
    seriesOfSupply(installation, currents).some((series) => checkTests(series, report));
  },
  checkBoard({ context, studies }, report) {
    seriesOfBoard(context, currents).some((series) => checkTests(series, report));
    for (const study of studies) seriesOfWay(study, currents).some((series) => checkTests(series, report));
  },
});
