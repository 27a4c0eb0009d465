import { originDemand } from "../../boards/demand-origin.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { combine } from "../../tables/source.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, installationRule, valueSpot } from "../frame/rule.ts";

const sample = (demand: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  supply {
    cutout       BS 88-3 100 A
    demand       ${demand}
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Shower" {
      serves       shower
      load         9.5 kW
    }
    way 2 radial "Charging point" {
      serves       ev-charger
      Ib           32 A
    }
  }
}`;

export default installationRule({
  id: "demand/stated-too-low",
  severity: "information",
  since: "0.1",
  title: "The stated demand is below what the circuits come to.",
  why: "Distributor and designer rely on the stated figure for the supply, the tails and the main switch. Calculate it from the loads with the published diversity, or state at the circuits what diversity was taken.",
  clauses: ["311.1"],
  examples: [{ bad: sample("48 A").replace("48 A\n", "48 A\n                 ^^^^\n"), good: sample("74 A") }],
  check(installation, report) {
    const stated = installation.supply?.one("demand");
    const demand = stated && originDemand(installation);
    if (!stated || !demand?.diverse || demand.unread) return;
    const { value } = stated.args;
    const allowance = practiceOf("demand-allowance");
    const { greatest } = demand;
    if (!exceeds(greatest.value, value.value * allowance.value)) return;
    const calculated = amps(Math.ceil(greatest.value));
    const cutout = installation.supply?.one("cutout");
    // A stated demand goes before what is calculated where the cut-out is judged: so this is the one place to say it.
    const isOver = cutout !== undefined && exceeds(greatest.value, cutout.args.rating.value);
    report(valueSpot(stated, value), {
      message: `The stated demand is ${amps(value.value)}; the circuits come to ${demandNotes(demand, value.value)}${isOver ? `, above the ${amps(cutout.args.rating.value)} cut-out` : ""}: state the diversity that makes it less.`,
      value: amount(value.value, "A"),
      limit: amountOf(greatest),
      least: true,
      steps: [...greatest.steps, ...allowance.steps],
      source: combine(greatest.source, allowance.source),
      ...(isOver ? { severity: "warning" as const } : {}),
      related: cutout ? [{ spot: factSpot(cutout), message: `Cut-out: ${amps(cutout.args.rating.value)}.` }] : [],
      fixes: [inPlaceOf(value, calculated, `Write ${calculated}, as calculated from the circuits`)],
    });
  },
});
