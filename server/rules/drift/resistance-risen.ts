import type { Ageing } from "../../../grammar/traits.ts";
import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, percent, type Step, step } from "../../calc/result.ts";
import {
  bondingSeries,
  type Series,
  seriesOfBoard,
  seriesOfSupply,
  seriesOfWay,
  type Taken,
} from "../../readings/series.ts";
import { uncertaintyIn } from "../../readings/uncertainty.ts";
import { comparison } from "../../tables/comparison.ts";
import { capital } from "../../text/words.ts";
import { driftUncertainty } from "../common/uncertainty-words.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

interface Threshold {
  readonly share: { readonly value: number; readonly source: typeof comparison.resistanceRise.source };
  /** Ω below which a rise is not reported. */
  readonly least: number;
  readonly remedy: string;
}

const thresholds: Readonly<Record<"joint" | "clamp" | "ground", () => Threshold>> = {
  joint: () => joints,
  clamp: () => clamps(),
  ground: () => ground,
};

const isResistance = (ageing: Ageing): ageing is keyof typeof thresholds => Object.hasOwn(thresholds, ageing);

const joints: Threshold = {
  share: comparison.resistanceRise,
  least: comparison.resistanceRiseLeast.value,
  remedy: "Look for a loose joint before it fails.",
};
const clamps = (): Threshold => ({
  share: comparison.resistanceRise,
  least: practiceOf("bond-floor").value,
  remedy: "Look at its clamps for corrosion and paint.",
});
const ground: Threshold = {
  share: comparison.electrodeRise,
  least: comparison.resistanceRiseLeast.value,
  remedy: "Dry or frozen ground explains some of it; look at the clamp and conductor for corrosion.",
};

/** A rise within the uncertainty of both instruments is none. */
function allowed({ share, least }: Threshold, now: Taken, then: Taken): number {
  return Math.max(least, share.value * then.value, uncertaintyIn(now) + uncertaintyIn(then));
}

/** The day before, or the first of all where the rise came little by little. */
function risenFrom(threshold: Threshold, { now, before }: Series): Taken | undefined {
  const [last] = before;
  return [last, before.at(-1)].find((then) => then && exceeds(now.value - then.value, allowed(threshold, now, then)));
}

/** A reading that was brought to 20 °C by the temperature noted with it. */
const brought = ({ on, quantity, value }: Taken): Step[] =>
  value === quantity.value ? [] : [step(`the reading of ${on} at 20 °C`, ohms(quantity.value), ohms(value))];

/** A word begins with a capital, a symbol as it is: r1 is not R1. */
const begun = (name: string): string => (/^[a-z]{3}/.test(name) ? capital(name) : name);

function checkTests(all: readonly Series[], report: Reporter): void {
  const told = new Set<unknown>();
  for (const series of all) {
    const { name, now, ageing } = series;
    if (!isResistance(ageing)) continue;
    const threshold = thresholds[ageing]();
    const then = risenFrom(threshold, series);
    // The ends of a ring are on one line, as are the two rounds of a point.
    if (!then || told.has(now.fact)) continue;
    told.add(now.fact);
    const rise = now.value - then.value;
    report(factSpot(now.fact), {
      message: `${begun(name)} rose from ${ohms(then.quantity.value)} on ${then.on} to ${ohms(now.quantity.value)}, by ${percent(Math.round((rise / then.value) * 100))}. ${threshold.remedy}`,
      value: amount(now.value, "Ω"),
      limit: amount(then.value + allowed(threshold, now, then), "Ω"),
      steps: [
        ...brought(now),
        ...brought(then),
        step(`rise since ${then.on}`, `${ohms(now.value)} − ${ohms(then.value)}`, ohms(rise)),
        ...driftUncertainty(now, then),
      ],
      source: threshold.share.source,
      related: [{ spot: factSpot(then.fact), message: `${name} ${ohms(then.quantity.value)} on ${then.on}.` }],
    });
  }
}

export default installationRule({
  id: "drift/resistance-risen",
  severity: "warning",
  since: "0.1",
  title: "A resistance has risen since the previous test.",
  why: "Copper does not age; joints do. A rise in an unchanged circuit is likely to be a terminal working loose, even where the reading is still within its limit.",
  opens: true,
  clauses: ["643.2.1", "643.7.3", "651.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Water heater" {
  live 2021-03-05 {
    Zs           0.62 Ω
  }
  live 2026-03-05 {
    Zs           0.97 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  live 2021-03-05 {
    Zs           0.62 Ω
  }
  live 2026-03-05 {
    Zs           0.66 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    checkTests(seriesOfSupply(installation, ["joint", "ground"]), report);
    checkTests(bondingSeries(installation), report);
  },
  checkBoard({ context, studies }, report) {
    checkTests(seriesOfBoard(context, ["joint", "ground"]), report);
    for (const study of studies) checkTests(seriesOfWay(study, ["joint", "ground"]), report);
  },
});
