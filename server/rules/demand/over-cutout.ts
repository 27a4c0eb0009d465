import { originDemand } from "../../boards/demand-origin.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import { exceeds } from "../../calc/compare.ts";
import { amps, step } from "../../calc/result.ts";
import type { Installation } from "../../model/installation.ts";
import type { FactOf } from "../../model/values.ts";
import { quotedIn } from "../../tables/source.ts";
import { amount, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (kilowatts: number) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  supply {
    cutout       BS 88-3 60 A
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Shower" {
      serves       shower
      load         ${kilowatts} kW
    }
    way 2 radial "Charging point" {
      serves       ev-charger
      Ib           32 A
    }
  }
}`;

export default installationRule({
  id: "demand/over-cutout",
  severity: "warning",
  since: "0.1",
  title: "The demand exceeds the rating of the cut-out.",
  why: "The distributor's fuse operates when the supply is needed most, and only the distributor may replace it. Ask for a larger supply, or limit what runs at the same time.",
  clauses: ["311.1", "313.1"],
  examples: [
    {
      bad: sample(9.5).replace("60 A\n", "60 A\n                         ^^^^\n"),
      good: sample(6),
    },
    {
      setting: { supply: "earthing TN-S\ncutout BS 88-3 60 A\ndemand 74 A" },
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    cutout       BS 88-3 60 A
    demand       74 A
                 ^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    cutout       BS 88-3 80 A
    demand       74 A
  }
}`,
    },
  ],
  check(installation, report) {
    const cutout = installation.supply?.one("cutout");
    const stated = installation.supply?.one("demand");
    if (!cutout) return;
    // The demand the designer states counts before the one calculated here: whether it can be right is for another check.
    if (stated) statedOver(stated, cutout, report);
    else if (!installation.supply?.isUnread("demand")) calculatedOver(installation, cutout, report);
  },
});

function statedOver(stated: FactOf<"supply", "demand">, cutout: FactOf<"supply", "cutout">, report: Reporter): void {
  const { value } = stated.args;
  const rating = cutout.args.rating.value;
  if (!exceeds(value.value, rating)) return;
  report(valueSpot(stated, value), {
    message: `The demand of ${amps(value.value, rating)} exceeds the ${amps(rating, value.value)} cut-out: ask for a larger supply, or limit what runs at the same time.`,
    value: amount(value.value, "A"),
    limit: amount(rating, "A"),
    steps: [
      step("demand ≤ cut-out", `${amps(value.value, rating)} against ${amps(rating, value.value)}`, "does not hold"),
    ],
    source: quotedIn("313.1"),
    related: [{ spot: factSpot(cutout), message: `Cut-out: ${amps(rating)}.` }],
  });
}

function calculatedOver(installation: Installation, cutout: FactOf<"supply", "cutout">, report: Reporter): void {
  const demand = originDemand(installation);
  if (!demand || demand.unread) return;
  const { rating } = cutout.args;
  const { greatest, diverse } = demand;
  if (!exceeds(greatest.value, rating.value)) return;
  report(valueSpot(cutout, rating), {
    message: `The circuits come to ${demandNotes(demand, rating.value)}, above the ${amps(rating.value)} cut-out: ask for a larger supply, or state the diversity.`,
    value: amount(greatest.value, "A"),
    limit: amount(rating.value, "A"),
    steps: greatest.steps,
    source: greatest.source,
    ...(diverse ? {} : { severity: "information" as const }),
  });
}
