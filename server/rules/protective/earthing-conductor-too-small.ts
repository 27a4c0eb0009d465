import { fallsShort } from "../../calc/compare.ts";
import { nextSizeUp } from "../../calc/minimum-size.ts";
import { type Calculated, squareMillimetres } from "../../calc/result.ts";
import type { Installation } from "../../model/installation.ts";
import type { Facts } from "../../model/values.ts";
import { earthingHeat, earthingNeed, pmeBondingNeed, pmeNeed, soilNeed } from "../../readings/earthing.ts";
import type { Edition } from "../../tables/editions.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, installationRule, type Severity, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/earthing-conductor-too-small",
  severity: "error",
  since: "0.1",
  title: "The earthing conductor is smaller than required.",
  why: "Every earth fault current of the installation flows through it. Below Table 54.7 it has to be shown by calculation that it is enough.",
  clauses: ["542.3.1", "543.1.1", "543.1.3", "543.1.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    tails        25 mm²
    earthing-conductor 10 mm²
                       ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    tails        25 mm²
    earthing-conductor 16 mm²
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    earthing-conductor 16 mm² buried
                       ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    earthing-conductor 16 mm² buried  protected corrosion
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    cutout       BS 88-3 63 A
    tails        25 mm²
    earthing-conductor 1.5 mm²
                       ^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    cutout       BS 88-3 63 A
    tails        25 mm²
    earthing-conductor 10 mm²
  }
}`,
    },
  ],
  check({ head, supply, edition }, report) {
    const fact = supply?.one("earthing-conductor");
    if (!supply || !fact) return;
    const { size } = fact.args;
    const lacks = lacking(supply, edition, size.value, isUnread(head, supply));
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
      related: tails
        ? [{ spot: factSpot(tails), message: "The tails that decide the size of the earthing conductor." }]
        : [],
      fixes: enough === undefined ? [] : [inPlaceOf(size, `${enough} mm²`, `Make it ${squareMillimetres(enough)}`)],
    });
  },
});

interface Lack {
  readonly need: Calculated;
  readonly severity: Severity;
  readonly words: (size: string, need: string) => string;
}

/** Whether a line by which the fault at the origin is calculated cannot be read. */
const isUnread = ({ facts }: Installation["head"], supply: Facts<"supply">): boolean =>
  facts.isUnread("standard") || (["Ze", "Ipf", "cutout"] as const).some((word) => supply.isUnread(word));

/** Everything it is too small for, the gravest first. */
function lacking(supply: Facts<"supply">, edition: Edition | undefined, size: number, unread: boolean): Lack[] {
  const table = earthingNeed(supply);
  const heat = earthingHeat(supply, edition);
  // Where the fault has been calculated and the conductor withstands it, the table is not needed; by what that
  // would be calculated may stand on a line that cannot be read.
  const shown = heat === undefined ? unread : !fallsShort(size, heat.need.value);
  const all = [
    asks(
      heat?.atMost ? undefined : heat?.need,
      "error",
      (own, need) =>
        `The earthing conductor of ${own} is too small: an earth fault at the origin, until the cut-out opens, needs ${need}.`,
    ),
    asks(
      shown ? undefined : table,
      "warning",
      (own, need) =>
        `The earthing conductor of ${own} is below the ${need} of Table 54.7: show by calculation that it is enough.`,
    ),
    asks(soilNeed(supply), "warning", (own, need) => {
      const against = supply.one("earthing-conductor")?.args.protected?.value;
      return `An earthing conductor in the ground, ${against ? `protected against ${against} only` : "unprotected"}, must be at least ${need} by Table 54.1; this is ${own}.`;
    }),
    asks(
      pmeBondingNeed(supply),
      "error",
      (own, need) =>
        `On a PME supply the earthing conductor must be no smaller than the main bonding, ${need}; this is ${own}.`,
    ),
    asks(
      pmeNeed(supply),
      "information",
      (own, need) => `Distributors usually require an earthing conductor of ${need} on a PME supply; this is ${own}.`,
    ),
  ];
  const lacks = all.flatMap((one) => (one && fallsShort(size, one.need.value) ? [one] : []));
  return [
    ...lacks.filter(({ severity }) => severity === "error"),
    ...lacks.filter(({ severity }) => severity !== "error"),
  ];
}

const asks = (need: Calculated | undefined, severity: Severity, words: Lack["words"]): Lack | undefined =>
  need && { need, severity, words };
