import { demandOf } from "../../boards/demand.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { combine } from "../../tables/source.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "demand/over-feeder-load",
  severity: "warning",
  since: "0.1",
  title: "The demand of a board exceeds the design current of its distribution circuit.",
  why: "Cable, device and voltage drop of the distribution circuit were chosen for the smaller figure. Calculate the demand of the board from its circuits, or state the diversity that makes it less.",
  clauses: ["311.1", "433.1.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      feeds        B
      Ib           20 A
                   ^^^^
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Shower" {
      serves       shower
      load         9.5 kW
    }
    way 2 radial "Lighting" {
      serves       lighting
      Ib           4 A
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      feeds        B
      Ib           44 A
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Shower" {
      serves       shower
      load         9.5 kW
    }
    way 2 radial "Lighting" {
      serves       lighting
      Ib           4 A
    }
  }
}`,
    },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  const { feeder, board } = node;
  const stated = feeder?.facts.one("Ib");
  const demand = stated && demandOf(node);
  // Where no diversity is accounted for, a smaller figure may be the better one.
  if (!stated || !demand?.diverse || demand.unread) return;
  const { value } = stated.args;
  const allowance = practiceOf("demand-allowance");
  const { greatest } = demand;
  if (!exceeds(greatest.value, value.value * allowance.value)) return;
  const least = amps(Math.ceil(greatest.value));
  const rating = feeder?.device?.rating;
  report(valueSpot(stated, value), {
    message: `The feeder is designed for ${amps(value.value)}; board ${board.head.name} draws ${demandNotes(demand, value.value)}: design it for ${least}, or state the diversity.`,
    value: amount(value.value, "A"),
    limit: amountOf(greatest),
    least: true,
    steps: [...greatest.steps, ...allowance.steps],
    source: combine(greatest.source, allowance.source),
    // As long as the device carries it nothing opens: the design needs a review, no more.
    ...(rating !== undefined && greatest.value <= rating ? { severity: "information" as const } : {}),
    related: [{ spot: factSpot(board.head.header), message: `Board ${board.head.name}, fed by this circuit.` }],
    fixes: [inPlaceOf(value, least, `Make the design current ${least}`)],
  });
}
