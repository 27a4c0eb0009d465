import { deviceAbove } from "../../boards/coordination.ts";
import type { BoardNode, StudiedBoard } from "../../boards/network.ts";
import { amps, step } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { memoOfBoard } from "../../circuit/kept.ts";
import type { Device } from "../../circuit/way.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const sample = (rating: number) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      device       BS EN 60898 C${rating} 6 kA
      feeds        B
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Kiln" {
      device       BS EN 60898 B40 6 kA
    }
  }
}`;

const atOrigin = (device: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    cutout       BS 88-3 60 A
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Garage" {
      device       ${device}
    }
  }
}`;

export default installationRule({
  id: "coordination/feeder-below-circuit",
  severity: "warning",
  since: "0.1",
  title: "A circuit's device is larger than the device that feeds its board, or than the cut-out.",
  why: "On an overload the upstream device opens first and disconnects the whole board. The device nearest the fault should open alone.",
  clauses: ["536.4.1", "314.1"],
  examples: [
    {
      bad: sample(32).replace("B40 6 kA\n", "B40 6 kA\n      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^\n"),
      good: sample(63),
    },
    {
      bad: atOrigin("BS 88-2 80 A 80 kA gG\n      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^"),
      good: atOrigin("BS 88-2 32 A 80 kA gG"),
    },
  ],
  checkNode,
});

/** The devices of a board's ways that have a rating, the largest first. */
const bySize = memoOfBoard(
  ({ studies }: StudiedBoard): readonly { readonly device: Device; readonly rating: number }[] =>
    studies
      .flatMap(({ device, isSpare }) =>
        device?.rating === undefined || isSpare ? [] : [{ device, rating: device.rating }],
      )
      .toSorted((one, other) => other.rating - one.rating),
);

function checkNode(node: BoardNode, report: Reporter): void {
  const above = deviceAbove(node);
  if (!above) return;
  const limit = above.rating;
  for (const { device, rating } of bySize(node)) {
    if (rating <= limit) return;
    report(factSpot(device.fact), {
      message: above.isCutout
        ? `The ${deviceName(device)} device is larger than the ${above.name}, which would open first: fit no more than ${amps(limit)}, or ask the ${above.owner} for a larger one.`
        : `The ${deviceName(device)} device is larger than the ${amps(limit)} device that feeds board ${node.board.head.name}, which would open first.`,
      value: amount(rating, "A"),
      limit: amount(limit, "A"),
      steps: [
        step(
          `In of the circuit ≤ In of the ${above.isCutout ? "cut-out" : "feeder"}`,
          `${amps(rating)} against ${amps(limit)}`,
          "does not hold",
        ),
      ],
      source: { ref: "BS 7671:2018+A2:2022, 536.4.1", standing: "practice" },
      related: [{ spot: factSpot(above.fact), message: `Upstream: ${above.short}.` }],
    });
  }
}
