import { nameOf, type RcdLeakage, rcdLeakages } from "../../boards/leakage.ts";
import { exceeds } from "../../calc/compare.ts";
import { residualFor } from "../../calc/leakage.ts";
import { rcdLimit } from "../../calc/practice.ts";
import { milliamps, percent, relation } from "../../calc/result.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import type { Fix } from "../../model/problems.ts";
import { combine } from "../../tables/source.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (second: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    rcd east     BS EN 61008 63 A 30 mA type A
    way 1 radial "Office desks" {
      behind       east
      leakage      6 mA
    }
    way 2 radial "Server" {
      behind       east
      leakage      ${second}
    }
  }
}`;

const shared = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      rcd          BS EN 61008 63 A ${rating} type A delayed
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Desks" {
      leakage      20 mA declared
    }
    way 2 radial "Lift" {
      leakage      14 mA declared
    }
  }
}`;

export default installationRule({
  id: "rcd/leakage-too-high",
  severity: "warning",
  since: "0.1",
  title: "Standing earth leakage is likely to cause unwanted tripping of an RCD.",
  why: "An RCD may trip from half its rating on, and the protective conductor current of filters and electronics uses up part of that before any fault. Divide the circuits between more RCDs, preferably one for each.",
  clauses: ["531.3.2", "314.1"],
  examples: [
    {
      bad: sample("4.5 mA").replace("30 mA type A\n", "30 mA type A\n                                  ^^^^^\n"),
      good: sample("2.5 mA"),
    },
    {
      bad: shared("100 mA").replace(
        "100 mA type A delayed\n",
        "100 mA type A delayed\n                                    ^^^^^^\n",
      ),
      good: shared("300 mA"),
    },
  ],
  checkNode(node, report) {
    // Earlier editions ask for circuits to be divided, and give no figure.
    if (!node.context.edition?.leakageShare) return;
    for (const found of rcdLeakages(node)) checkOne(found, report);
  },
});

function checkOne(found: RcdLeakage, report: Reporter): void {
  const { rcd, ways, leakage, sum, limit } = found;
  const [first] = ways;
  if (!first || !exceeds(sum.value, limit.value)) return;
  const { parts, silent } = leakage;
  const later = laterRule(first);
  const { sensitivity } = rcd.fact.args;
  const spot = sensitivity ? valueSpot(rcd.fact, sensitivity) : factSpot(rcd.fact);
  report(spot, {
    message: `Standing leakage through ${rcd.name === undefined ? `the ${rcdName(rcd)}` : `RCD ${rcd.name} (${rcdName(rcd)})`} is ${silent.length > 0 ? "at least " : ""}${milliamps(sum.value)}, above ${milliamps(limit.value)} (${percent((limit.value / rcd.sensitivity) * 100)} of IΔn). ${cure(found)}${later.words}`,
    value: amountOf(sum),
    limit: amountOf(limit),
    steps: [...sum.steps, ...limit.steps, relation("sum ≤ limit", milliamps(sum.value), milliamps(limit.value))],
    source: combine(sum.source, limit.source),
    ...(later.severity ? { severity: later.severity } : {}),
    related: parts
      .toSorted((one, other) => other.value - one.value)
      .slice(0, 12)
      .map(({ study, fact, value }) => ({
        spot: factSpot(fact),
        message: `Way ${nameOf(study)}: standing leakage ${milliamps(value)}.`,
      })),
    fixes: sensitivity ? larger(sensitivity, sum.value, rcd.sensitivity, first.supply.earthing === "TT") : [],
  });
}

function cure({ rcd, leakage, sum, limit }: RcdLeakage): string {
  const { parts } = leakage;
  const next = rcd.sensitivity > rcdLimit("additional").value ? residualFor(sum.value) : undefined;
  const coarser = next === undefined ? "" : `fit one of ${milliamps(next)}`;
  const [most] = parts.toSorted((one, other) => other.value - one.value);
  const alone =
    most && exceeds(most.value, limit.value)
      ? `Way ${nameOf(most.study)} alone exceeds it: divide its equipment between circuits, or use equipment with less leakage. `
      : "";
  if (parts.length < 2) return `${alone.trim()}${coarser === "" ? "" : ` Or ${coarser}.`}`;
  const count = Math.min(parts.length, Math.ceil(sum.value / limit.value - 1e-9));
  return `${alone}Divide the circuits between ${count} RCDs${coarser === "" ? "" : `, or ${coarser}`}.`;
}

/** 30 mA protects persons, and an electrode has its own limit: only an RCD fitted for other reasons may be less sensitive. */
function larger(
  place: { readonly start: number; readonly end: number },
  sum: number,
  sensitivity: number,
  electrode: boolean,
): Fix[] {
  const next = residualFor(sum);
  if (next === undefined || electrode || sensitivity <= rcdLimit("additional").value) return [];
  return [inPlaceOf(place, milliamps(next), `Make it ${milliamps(next)}`)];
}
