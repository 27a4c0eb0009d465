import { type Calculated, kiloamps } from "../../calc/result.ts";
import { breakingOf } from "../../circuit/breaking.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { faultsNoted, greatestAtMost, greatestFault } from "../../circuit/faults.ts";
import { liveTestsDue } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Context } from "../../model/installation.ts";
import { quantityOf, readingAt } from "../../model/values.ts";
import { unproven } from "../common/unproven.ts";
import { lineInBlock } from "../common/writing.ts";
import { boardRule, type Reporter, valueSpot, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "fault/current-missing",
  severity: "error",
  since: "0.1",
  title: "The prospective fault current at a board is not recorded, or only as more than a figure.",
  why: "Every device there must be able to break it, and the greatest fault current is at the board, not at a socket. Measure it, calculate it, or ask the distributor.",
  clauses: ["434.1", "643.7.3.201"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ipf          1.2 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
  ^^^^^
    fed-from     A
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ipf          1.2 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
    fed-from     A
    Ipf          0.8 kA
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          >1.99 kA
                 ^^^^^^^^
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          1.99 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          <20 kA
                 ^^^^^^
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          <2 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Heater" { device BS EN 60898 B16 6 kA }
  }
}`,
    },
  ],
  check({ board, context, studies }, report) {
    onlyBound(context, studies, report);
    // The origin has a check of its own, with all that a supply may lack.
    if (board.head.facts.one("fed-from")?.args.from.value === "supply" || !liveTestsDue(context)) return;
    if (faultsNoted(context) || !studies.some(({ device }) => device)) return;
    // A half-written line may be the one that is missed.
    if (board.head.facts.broken.length > 0) return;
    report(wordSpot(board.head.header), {
      ...gradeOfMissing(context),
      message: "The prospective fault current at this board is not recorded: measure it, or write LIM with the reason.",
      fixes: lineInBlock(board.head.header, 'Ipf LIM "…"', "Record why it was not measured"),
    });
  },
});

/** A meter at an end of its range leaves open whether more flows than the devices are seen to break. */
function onlyBound(context: Context, studies: readonly WayStudy[], report: Reporter): void {
  const fault = greatestFault(context) ?? greatestAtMost(context);
  const reading = fault && fault.sign !== "=" ? quantityOf(readingAt(fault.fact)) : undefined;
  if (!fault || !reading) return;
  const isOpen = ({ value }: Calculated): boolean => (fault.sign === ">" ? value >= fault.value : value < fault.value);
  const broken = studies.flatMap((study) => {
    const capacity = study.device && !study.isSpare ? breakingOf(study) : undefined;
    return capacity && isOpen(capacity) ? [capacity] : [];
  });
  const least = broken.toSorted((one, other) => one.value - other.value)[0];
  if (!least) return;
  report(
    valueSpot(fault.fact, reading),
    unproven(
      `${fault.name} ${fault.sign}${kiloamps(fault.value)}`,
      `the devices here, which break ${kiloamps(least.value)}, are enough`,
      least,
      { sign: fault.sign },
    ),
  );
}
