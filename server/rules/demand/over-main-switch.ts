import { certainDemand } from "../../boards/certain-demand.ts";
import { protecting } from "../../boards/coordination.ts";
import { demandOf } from "../../boards/demand.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { nextSwitchUp } from "../../calc/minimum-size.ts";
import { amps } from "../../calc/result.ts";
import { gradeOfDemand } from "../common/board-part.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  board A "Main" {
    fed-from     supply
    main-switch  BS EN 60947-3 ${rating}
    way 1 radial "Shower" {
      serves       shower
      load         10.5 kW
    }
  }
}`;

export default installationRule({
  id: "demand/over-main-switch",
  severity: "warning",
  since: "0.1",
  title: "The demand of a board exceeds the rating of its main switch.",
  why: "A switch has no protection of its own: it overheats without anything opening. Fit a larger one, or move circuits to another board.",
  clauses: ["536.4.202", "311.1"],
  examples: [
    { bad: sample("40 A").replace("40 A\n", "40 A\n                               ^^^^\n"), good: sample("63 A") },
  ],
  checkNode,
});

/** Whether the line of what is upstream cannot be read: its device may keep the current below the rating. */
function sourceUnread({ board, feeder, context }: BoardNode): boolean {
  if (board.head.facts.isUnread("fed-from")) return true;
  if (feeder) return feeder.facts.isUnread("device");
  const from = board.head.facts.one("fed-from")?.args.from.value;
  return context.supply?.isUnread("cutout") || (from !== undefined && from !== "supply");
}

function checkNode(node: BoardNode, report: Reporter): void {
  const { board } = node;
  const fact = board.head.facts.one("main-switch");
  const demand = fact && demandOf(node);
  if (!fact || !demand || demand.unread || sourceUnread(node)) return;
  const { rating } = fact.args;
  const { greatest } = demand;
  if (!exceeds(greatest.value, rating.value)) return;
  // The device upstream keeps the current below the rating of the switch: the demand on it is for other checks.
  const above = protecting(node.context);
  if (above && above.rating <= rating.value) return;
  const larger = nextSwitchUp(greatest.value);
  report(valueSpot(fact, rating), {
    message: `Board ${board.head.name} draws ${demandNotes(demand, rating.value)}, above the ${amps(rating.value)} of its main switch: fit a larger one, or move circuits.`,
    value: amount(greatest.value, "A"),
    limit: amount(rating.value, "A"),
    steps: greatest.steps,
    source: greatest.source,
    ...gradeOfDemand(demand, exceeds(certainDemand(node), rating.value), above),
    fixes: larger === undefined ? [] : [inPlaceOf(rating, amps(larger), `Make the switch ${amps(larger)}`)],
    related: above ? [{ spot: factSpot(above.fact), message: `Device upstream: ${amps(above.rating)}.` }] : [],
  });
}
