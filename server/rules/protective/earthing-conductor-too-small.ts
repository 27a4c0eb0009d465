import { fallsShort } from "../../calc/compare.ts";
import { type Calculated, nextSizeUp } from "../../calc/index.ts";
import { squareMillimetres } from "../../calc/result.ts";
import type { Facts } from "../../model/values.ts";
import { earthingHeat, earthingNeed, pmeBondingNeed, pmeNeed, soilNeed } from "../../readings/earthing.ts";
import type { Edition } from "../../tables/editions.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, installationRule, type Severity, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/earthing-conductor-too-small",
  severity: "error",
  since: "0.1",
  title: "An earthing conductor smaller than the tails ask for.",
  why: "Every earth fault of the installation runs through it. Below Table 54.7 it has to be shown by calculation that it survives.",
  clauses: ["542.3.1", "543.1.1", "543.1.3", "543.1.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing TN-S
    tails 25 mm²
    earthing-conductor 10 mm²
                       ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing TN-S
    tails 25 mm²
    earthing-conductor 16 mm²
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing TT
    earthing-conductor 16 mm² buried
                       ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing TT
    earthing-conductor 16 mm² buried protected corrosion
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.30 Ω
    cutout BS 88-3 63 A
    tails 25 mm²
    earthing-conductor 1.5 mm²
                       ^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.30 Ω
    cutout BS 88-3 63 A
    tails 25 mm²
    earthing-conductor 10 mm²
  }
}`,
    },
  ],
  check({ supply, edition }, report) {
    const fact = supply?.one("earthing-conductor");
    if (!supply || !fact) return;
    const { size } = fact.args;
    const lacks = lacking(supply, edition, size.value);
    const [first] = lacks;
    if (!first) return;
    const { need, words, severity } = first;
    const tails = supply.one("tails");
    const enough = nextSizeUp(Math.max(...lacks.map((one) => one.need.value)));
    report(valueSpot(fact, size), {
      message: words(squareMillimetres(size.value), squareMillimetres(need.value)),
      value: amount(size.value, "mm²"),
      limit: amountOf(need),
      least: true,
      steps: need.steps,
      source: need.source,
      severity,
      related: tails ? [{ spot: factSpot(tails), message: "The tails that decide it." }] : [],
      fixes: enough === undefined ? [] : [inPlaceOf(size, `${enough} mm²`, `Make it ${squareMillimetres(enough)}`)],
    });
  },
});

interface Lack {
  readonly need: Calculated;
  readonly severity: Severity;
  readonly words: (size: string, need: string) => string;
}

/** Everything it is too small for, the gravest first. */
function lacking(supply: Facts<"supply">, edition: Edition | undefined, size: number): Lack[] {
  const table = earthingNeed(supply);
  const heat = earthingHeat(supply, edition);
  // Where the fault has been calculated and the conductor bears it, the table is not asked.
  const shown = heat !== undefined && !fallsShort(size, heat.need.value);
  const all = [
    asks(
      heat?.atMost ? undefined : heat?.need,
      "error",
      (own, need) =>
        `An earth fault at the origin lasts until the cut-out opens, and that needs an earthing conductor of ${need}: ${own} is too thin.`,
    ),
    asks(
      shown ? undefined : table,
      "warning",
      (own, need) =>
        `With tails of this size the earthing conductor is ${need} by Table 54.7; ${own} has to be shown by calculation.`,
    ),
    asks(soilNeed(supply), "warning", (own, need) => {
      const against = supply.one("earthing-conductor")?.args.protected?.value;
      return `An earthing conductor in the ground, ${against ? `protected against ${against} only` : "unprotected"}, is ${need} at least by Table 54.1; this is ${own}.`;
    }),
    asks(
      pmeBondingNeed(supply),
      "warning",
      (own, need) =>
        `On a PME supply the earthing conductor is no thinner than the main bonding, ${need}; this is ${own}.`,
    ),
    asks(
      pmeNeed(supply),
      "information",
      (own, need) => `Distributors usually ask for an earthing conductor of ${need} on a PME supply; this is ${own}.`,
    ),
  ];
  return all.flatMap((one) => (one && fallsShort(size, one.need.value) ? [one] : []));
}

const asks = (need: Calculated | undefined, severity: Severity, words: Lack["words"]): Lack | undefined =>
  need && { need, severity, words };
