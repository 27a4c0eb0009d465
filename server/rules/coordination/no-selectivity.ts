import { fuseRatio, magneticOverlap, type Overlap } from "../../boards/coordination.ts";
import { type BoardNode, networkOf } from "../../boards/network.ts";
import { amps } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const sample = (feeder: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      device       ${feeder}
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 C32 6 kA
    }
    way 2 radial "Store" {
      device       BS 88-2 32 A 80 kA gG
    }
  }
}`;

export default installationRule({
  id: "coordination/no-selectivity",
  severity: "information",
  since: "0.1",
  title: "An upstream device may open together with a device downstream.",
  why: "A fault on one circuit then disconnects the whole board. Between breakers, the upstream one must not reach its magnetic range before the downstream one is certain to trip; between fuses, the ratings must be far enough apart. Makers' selectivity tables give more.",
  clauses: ["536.4.1", "314.1"],
  examples: [
    {
      bad: sample("BS EN 60898 B40 6 kA").replace("B40 6 kA\n", "B40 6 kA\n      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"),
      good: sample("BS EN 60898 D63 6 kA"),
    },
    {
      bad: sample("BS 88-2 40 A 80 kA gG").replace(
        "40 A 80 kA gG\n",
        "40 A 80 kA gG\n      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n",
      ),
      good: sample("BS 88-2 63 A 80 kA gG"),
    },
  ],
  check(installation, report) {
    for (const node of networkOf(installation).nodes) {
      const magnetic = magneticOverlap(node);
      if (magnetic) say(node, magnetic, report);
      const fuses = fuseRatio(node);
      if (fuses) say(node, fuses, report);
    }
  },
});

function say(node: BoardNode, { above, below, limit, value, others }: Overlap, report: Reporter): void {
  const more = others.length > 0 ? ` and ${others.length === 1 ? "one other" : `${others.length} others`}` : "";
  report(factSpot(above.fact), {
    message: `The ${deviceName(above)} that feeds board ${node.board.head.name} may open with the ${deviceName(below)} downstream${more}: ${amps(value.value)}, at least ${amps(limit.value)} required.`,
    value: amount(value.value, "A"),
    limit: amountOf(limit),
    least: true,
    steps: [...value.steps, ...limit.steps],
    source: limit.source,
    related: [below, ...others]
      .slice(0, 4)
      .map((device) => ({ spot: factSpot(device.fact), message: `Downstream: ${deviceName(device)}.` })),
  });
}
