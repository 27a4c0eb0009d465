import { demandOf } from "../../boards/demand.ts";
import { feederDrop } from "../../boards/drop-feeder.ts";
import { boardDrop, dropAbove, dropLimitOf, dropRooms } from "../../boards/drop-path.ts";
import type { BoardNode } from "../../boards/network.ts";
import { largerSizes } from "../../calc/minimum-size.ts";
import { percent, squareMillimetres } from "../../calc/result.ts";
import { studyWay } from "../../circuit/way.ts";
import { combine } from "../../tables/source.ts";
import { resizeCable } from "../common/cable-size.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "drop/feeder-uses-allowance",
  severity: "warning",
  since: "0.1",
  title: "The distribution circuit uses the whole voltage-drop allowance.",
  why: "The limit applies from the origin to the load, so nothing is left for the circuits downstream. Divide it: of five per cent, say two for the distribution circuit and three for the final circuits.",
  clauses: ["525.1", "525.201", "525.202"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      feeds        B
      cable        armoured 70 °C  line 4 mm²  cpc 4 mm²
                                        ^^^^^
      length       50 m
      Ib           24 A
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 B32 6 kA
      cable        flat-twin  line 4 mm²  cpc 1.5 mm²
      length       8 m
      Ib           20 A
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      feeds        B
      cable        armoured 70 °C  line 10 mm²  cpc 10 mm²
      length       50 m
      Ib           24 A
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 B32 6 kA
      cable        flat-twin  line 4 mm²  cpc 1.5 mm²
      length       8 m
      Ib           20 A
    }
  }
}`,
    },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  const { feeder, parent, board } = node;
  const { drop, whole, certain, feeders } = boardDrop(node);
  // What a circuit draws may stand on a line that cannot be read.
  if (!certain && (demandOf(node)?.unread || feeder?.facts.isUnread("Ib"))) return;
  // Only the feeder with which the limit is passed: those further out can do nothing about it.
  if (!feeder || !parent || feeders.at(-1)?.study.way !== feeder.way) return;
  const own = boardDrop(node);
  const starved = dropRooms(node).filter(
    ({ limit, way }) => own.drop.value >= limit && dropAbove(own, studyWay(way, node.context)).drop.value >= limit,
  );
  const [first] = starved;
  if (!first || boardDrop(parent).drop.value >= first.limit) return;
  const limit = dropLimitOf(studyWay(first.way, node.context));
  const { cable } = feeder;
  const size = sizeFor(node, limit.value);
  const line = cable?.fact.args.line;
  const behind = starved.length === 1 ? "the circuit downstream" : `${starved.length} circuits downstream`;
  report(line && cable ? valueSpot(cable.fact, line) : factSpot(feeder.way.header), {
    message: `Voltage drop to board ${board.head.name} is ${whole ? "" : "at least "}${percent(drop.value)}, with ${percent(limit.value)} advised to the load: too little is left for ${behind}.${size ? ` Fit ${squareMillimetres(size)}.` : ""}`,
    value: amount(drop.value, "%"),
    limit: amountOf(limit),
    steps: [...drop.steps, ...limit.steps],
    source: combine(drop.source, limit.source),
    ...(certain ? {} : { severity: "information" as const }),
    related: starved.slice(0, 3).map(({ way }) => ({
      spot: factSpot(way.header),
      message: "No voltage drop is left for this circuit.",
    })),
    fixes: resizeCable(cable, size),
  });
}

/** The next size of the feeder that leaves every circuit of the board enough; or else something. */
function sizeFor(node: BoardNode, limit: number): number | undefined {
  const { feeder, parent } = node;
  if (!feeder || !parent) return undefined;
  const above = boardDrop(parent).drop.value;
  const room = dropRooms(node)[0]?.room ?? limit;
  const wanted = room > above ? room : limit;
  if (!feeder.cable) return undefined;
  for (const size of largerSizes(feeder.cable.line)) {
    const found = feederDrop(node, size);
    if ("missing" in found) return undefined;
    if (above + found.worst.drop.value < wanted) return size;
  }
  return undefined;
}
