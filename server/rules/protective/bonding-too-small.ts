import { squareMillimetres } from "../../calc/result.ts";
import { allBonding, bondingNeed } from "../../readings/earthing.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/bonding-too-small",
  severity: "error",
  since: "0.1",
  title: "A main bonding conductor is smaller than this supply requires.",
  why: "With an open PEN conductor in a PME supply, neutral current of other consumers can flow through the bonding and burn out a small conductor. With other supplies half the size of the earthing conductor is enough, with a minimum of 6 mm².",
  clauses: ["544.1.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    tails        25 mm²
    bonding      water 6 mm²
                       ^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    tails        25 mm²
    bonding      water 10 mm²
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    earthing-conductor 16 mm²
    bonding      gas 6 mm²
                     ^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    earthing-conductor 10 mm²
    bonding      gas 6 mm²
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    tails        25 mm²
    bonding      structure 16 mm² aluminium
                           ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    tails        25 mm²
    bonding      structure 25 mm² aluminium
  }
}`,
    },
  ],
  check(installation, report) {
    const { supply } = installation;
    if (!supply) return;
    const decides = supply.one("tails") ?? supply.one("earthing-conductor");
    for (const bonding of allBonding(installation)) {
      const { service, size, metal } = bonding.args;
      const need = bondingNeed(supply, metal?.value);
      // Lightning protection is bonded by a standard of its own.
      if (!need || !size || size.value >= need.value || service.value === "lightning") continue;
      report(valueSpot(bonding, size), {
        message: `The main bonding of ${service.value} is ${squareMillimetres(size.value)}${ofMetal(metal?.value)}; this supply requires ${squareMillimetres(need.value)}${ofMetal(metal?.value)}.`,
        value: amount(size.value, "mm²"),
        limit: amountOf(need),
        least: true,
        steps: need.steps,
        source: need.source,
        related: decides
          ? [{ spot: factSpot(decides), message: "The conductor that decides the size of the bonding." }]
          : [],
        fixes: [inPlaceOf(size, `${need.value} mm²`, `Make it ${squareMillimetres(need.value)}`)],
      });
    }
  },
});

const ofMetal = (metal: string | undefined): string =>
  metal === undefined || metal === "copper" ? "" : ` of ${metal}`;
