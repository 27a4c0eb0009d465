import { demandOf } from "../../boards/demand.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { nextRatingUp } from "../../calc/minimum-size.ts";
import { amps } from "../../calc/result.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

export default installationRule({
  id: "demand/over-device",
  severity: "warning",
  since: "0.1",
  title: "The demand of a board exceeds the rating of the device that feeds it.",
  why: "The device trips in normal use and disconnects the whole board. A larger device needs a cable to match; or state the diversity that makes the demand less.",
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
      device       BS EN 60898 C32 6 kA
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Shower" {
      serves       shower
      load         9.5 kW
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
      device       BS EN 60898 C50 6 kA
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Shower" {
      serves       shower
      load         9.5 kW
    }
  }
}`,
    },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  const { feeder, board } = node;
  // A stated design current is compared with the device by the checks of the circuit itself.
  if (feeder?.device?.rating === undefined || feeder.designCurrent || feeder.facts.isUnread("Ib")) return;
  const { device } = feeder;
  const { rating } = device;
  const demand = demandOf(node);
  if (rating === undefined || !demand || demand.unread || !exceeds(demand.greatest.value, rating)) return;
  const { greatest, diverse } = demand;
  const next = device.family && nextRatingUp(device.family, greatest.value);
  const { curve, rating: written } = device.fact.args;
  const text = next === undefined ? undefined : curve ? `${curve.curve}${next}` : `${next} A`;
  const place = curve ?? written;
  report(factSpot(device.fact), {
    message: `Board ${board.head.name} draws ${demandNotes(demand, rating)}, above the ${amps(rating)} of its feeder's device.${next ? ` Fit ${amps(next)} with a cable to match.` : ""}`,
    value: amount(greatest.value, "A"),
    limit: amount(rating, "A"),
    steps: greatest.steps,
    source: greatest.source,
    // All circuits in full is more than will be drawn: a question, not a fault.
    ...(diverse ? {} : { severity: "information" as const }),
    related: [{ spot: factSpot(board.head.header), message: `Board ${board.head.name}, fed by this device.` }],
    fixes: place && text ? [inPlaceOf(place, text, `Make the device ${text}`)] : [],
  });
}
