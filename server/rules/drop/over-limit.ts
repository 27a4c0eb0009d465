import {
  added,
  type BoardDrop,
  boardDrop,
  type CircuitDrop,
  circuitDrop,
  dropAbove,
  dropRooms,
} from "../../boards/drop-path.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { largerSizes } from "../../calc/minimum-size.ts";
import { percent, squareMillimetres, step } from "../../calc/result.ts";
import { studyWay } from "../../circuit/way.ts";
import { combine } from "../../tables/source.ts";
import { resizeCable } from "../common/cable-size.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "drop/over-limit",
  severity: "warning",
  since: "0.1",
  title: "The voltage drop from the origin exceeds the advised limit.",
  why: "Lamps are dim, motors start badly and run hot. The drop of every distribution circuit on the way counts as well. A larger cable, a shorter route or less load puts it right.",
  clauses: ["525.1", "525.201", "525.202"],
  examples: [
    {
      bad: `way 1 radial "Yard lighting" {
  device       BS EN 60898 B10 6 kA
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
                               ^^^^^^^
  route        clipped  method C
  length       60 m
  serves       lighting
  Ib           6 A
}`,
      good: `way 1 radial "Yard lighting" {
  device       BS EN 60898 B10 6 kA
  cable        flat-twin  line 4 mm²  cpc 1.5 mm²
  route        clipped  method C
  length       60 m
  serves       lighting
  Ib           6 A
}`,
    },
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
      cable        armoured 70 °C  line 6 mm²  cpc 6 mm²
      length       30 m
      Ib           32 A
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 B32 6 kA
      cable        flat-twin  line 4 mm²  cpc 1.5 mm²
                                   ^^^^^
      length       18 m
      Ib           26 A
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
      cable        armoured 70 °C  line 6 mm²  cpc 6 mm²
      length       30 m
      Ib           32 A
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 B32 6 kA
      cable        flat-twin  line 10 mm²  cpc 4 mm²
      length       18 m
      Ib           26 A
    }
  }
}`,
    },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  const above = boardDrop(node);
  for (const { way, room, limit } of dropRooms(node)) {
    // They stand in order of the room they leave: behind the first that is right all are.
    if (!exceeds(above.drop.value, room)) return;
    // Where the feeders leave nothing another check speaks of them, once; what a circuit drops by itself stands.
    const study = studyWay(way, node.context);
    const own = dropAbove(above, study);
    const circuit = exceeds(own.drop.value, room) ? circuitDrop(study) : undefined;
    if (circuit && (own.drop.value < limit || exceeds(circuit.corrected.value, limit)))
      say({ ...above, ...own }, circuit, report);
  }
}

function say(above: BoardDrop, circuit: CircuitDrop, report: Reporter): void {
  const { study, limit } = circuit;
  const { cable } = study;
  const drop = added(above.drop, circuit.drop);
  const corrected = added(above.corrected, circuit.corrected);
  // With what the standard lets one take into account it is within the limit: worth knowing, nothing more.
  const excused = !exceeds(corrected.value, limit.value);
  // What is drawn above it may be less than is known; what the circuit drops by itself is no less for it.
  const certain = above.certain || exceeds(circuit.corrected.value, limit.value);
  const size = excused ? undefined : sizeWithin(circuit, above.drop.value);
  const feeders = above.feeders.length > 0 ? `, ${percent(above.drop.value)} of it in the feeders` : "";
  const cure = size
    ? ` Fit ${squareMillimetres(size)}.`
    : excused
      ? ""
      : " Look at the feeders, or move the load nearer.";
  const line = cable?.fact.args.line;
  const [length] = study.length?.facts ?? [];
  report(line && cable ? valueSpot(cable.fact, line) : factSpot(cable?.fact ?? study.way.header), {
    message: excused
      ? `Voltage drop by the table is ${percent(drop.value)}${feeders}, over ${percent(limit.value)}; corrected for its conditions it is ${percent(corrected.value)}.`
      : `Voltage drop from the origin is ${above.whole ? "" : "at least "}${percent(drop.value)}${feeders}, over the advised ${percent(limit.value)}.${cure}`,
    value: amount(drop.value, "%"),
    limit: amountOf(limit),
    steps: [...drop.steps, ...limit.steps, step("corrected for its conditions", "", percent(corrected.value))],
    source: combine(drop.source, limit.source),
    severity: excused || !certain ? "information" : "warning",
    related: [
      ...(length ? [{ spot: factSpot(length), message: "Length of the circuit." }] : []),
      ...above.feeders.map((feeder) => ({
        spot: factSpot(feeder.study.way.header),
        message: `Voltage drop in this feeder: ${percent(feeder.drop.value)}.`,
      })),
    ],
    fixes: resizeCable(cable, size),
  });
}

/** The next size of cable that keeps the whole drop within the limit. */
function sizeWithin({ study, limit }: CircuitDrop, above: number): number | undefined {
  if (!study.cable) return undefined;
  for (const size of largerSizes(study.cable.line)) {
    const found = circuitDrop(study, size);
    if (!found) return undefined;
    if (above + found.drop.value <= limit.value) return size;
  }
  return undefined;
}
