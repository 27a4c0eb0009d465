import { fuseRatio, magneticOverlap, type Overlap, sameRating } from "../../boards/coordination.ts";
import { amps, plain } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { selectivityRatios } from "../../tables/coordination.ts";
import { known } from "../../tables/table.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const atOrigin = (fuse: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    cutout       BS 88-3 60 A
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Workshop" {
      device       ${fuse}
    }
    way 2 radial "Lights" {
      device       BS EN 60898 B6 6 kA
    }
  }
}`;

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
  why: "A fault on one circuit then disconnects the whole board. Between breakers, the upstream one must not reach its magnetic range before the downstream one is certain to trip; between fuses, the ratings must be far enough apart; and devices of one rating have bands that overlap, whatever their kind. Makers' selectivity tables give more.",
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
    {
      bad: atOrigin("BS 88-3 50 A").replace("BS 88-3 60 A\n", "BS 88-3 60 A\n    ^^^^^^^^^^^^^^^^^^^^^^^^^\n"),
      good: atOrigin("BS 88-3 32 A"),
    },
    {
      bad: atOrigin("BS 1361 60 A").replace("BS 88-3 60 A\n", "BS 88-3 60 A\n    ^^^^^^^^^^^^^^^^^^^^^^^^^\n"),
      good: atOrigin("BS 1361 45 A"),
    },
  ],
  checkNode(node, report) {
    const magnetic = magneticOverlap(node);
    if (magnetic) say(magnetic, mayOpenWith(magnetic), report);
    const fuses = fuseRatio(node);
    if (fuses) say(fuses, tooNear(fuses), report);
    const same = sameRating(node);
    // Two breakers whose magnetic ranges overlap are reported by that.
    if (same && !magnetic) say(same, eitherFirst(same), report);
  },
});

const moreOf = ({ others }: Overlap): string =>
  others.length === 0 ? "" : ` and ${others.length === 1 ? "one other" : `${others.length} others`}`;

const mayOpenWith = (overlap: Overlap): string =>
  `The ${overlap.above.name} may open with the ${deviceName(overlap.below)} downstream${moreOf(overlap)}: ${amps(overlap.value.value, overlap.limit.value)}, at least ${amps(overlap.limit.value, overlap.value.value)} required.`;

const tooNear = (overlap: Overlap): string =>
  `The ${overlap.above.name} may open with the ${deviceName(overlap.below)} downstream${moreOf(overlap)}: fuses of class gG need ${plain(gGRatio.value)} to 1 of their ratings, so ${cure(overlap)}.`;

const eitherFirst = (overlap: Overlap): string =>
  `The ${overlap.above.name} and the ${deviceName(overlap.below)} downstream${moreOf(overlap)} have one rating, and on an overload either may open first: ${cure(overlap)}.`;

const cure = ({ above }: Overlap): string =>
  above.isCutout
    ? `fit a smaller device, or ask the ${above.owner} whether the cut-out can be larger`
    : "fit a smaller device here, or a larger one upstream with a cable to suit";

const gGRatio = known(selectivityRatios, { key: "fuse-fuse" }, "value");

function say({ above, below, limit, value, others }: Overlap, message: string, report: Reporter): void {
  report(factSpot(above.fact), {
    message,
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
