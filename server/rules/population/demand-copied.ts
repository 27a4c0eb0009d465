import { amps } from "../../calc/result.ts";
import { studyWay } from "../../circuit/way.ts";
import type { Installation } from "../../model/installation.ts";
import { amount, factSpot, installationRule, valueSpot } from "../frame/rule.ts";

/** Sum of the ratings of all devices at the origin; nothing where one of them is not known. */
function sumOfRatings({ boards }: Installation): number | undefined {
  let sum = 0;
  for (const { board, context } of boards) {
    if (board.head.facts.one("fed-from")?.args.from.value !== "supply") continue;
    for (const way of board.ways) {
      const study = studyWay(way, context);
      if (study.isSpare) continue;
      if (study.device?.rating === undefined) return undefined;
      sum += study.device.rating;
    }
  }
  return sum;
}

export default installationRule({
  id: "population/demand-copied",
  severity: "information",
  since: "0.1",
  title: "The maximum demand is the rating of the cut-out, or the sum of all devices.",
  why: "Neither is what the installation takes. Calculate it from the loads with diversity: only then is it known whether the supply is adequate.",
  clauses: ["311.1"],
  examples: [
    {
      setting: { supply: "earthing TN-S" },
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  supply {
    cutout       BS 88-3 80 A
    demand       80 A
                 ^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  supply {
    cutout       BS 88-3 80 A
    demand       58 A
  }
}`,
    },
  ],
  check(installation, report) {
    const { supply } = installation;
    const demand = supply?.one("demand");
    const cutout = supply?.one("cutout");
    if (!demand) return;
    const { value } = demand.args;
    const say = (of: string) =>
      report(valueSpot(demand, value), {
        message: `A demand of ${amps(value.value)} is exactly ${of}: calculate it from the loads.`,
        value: amount(value.value, "A"),
        related: cutout ? [{ spot: factSpot(cutout), message: `Cut-out: ${amps(cutout.args.rating.value)}.` }] : [],
      });
    if (cutout?.args.rating.value === value.value) say("the rating of the cut-out");
    else if (sumOfRatings(installation) === value.value) say("the sum of all device ratings");
  },
});
