import { exceeds, fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { kiloamps, ohms } from "../../calc/result.ts";
import type { FaultAt } from "../../circuit/faults.ts";
import {
  byQuestionableLoop,
  type FaultPlace,
  faultPlaceAtBoard,
  faultPlaceAtOrigin,
  singlePhaseFigure,
} from "../../readings/fault-check.ts";
import { combine } from "../../tables/source.ts";
import { withSign } from "../common/dead-words.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

export default installationRule({
  id: "fault/disagrees-with-loop",
  severity: "warning",
  since: "0.1",
  title: "A fault current does not agree with the loop impedance of the same place.",
  why: "The earth fault current is the voltage divided by the loop impedance. A figure far too low was read at a socket and not at the board, or A and kA are mixed; one far too high hides a better path or a misplaced decimal point.",
  clauses: ["434.1", "643.7.3.201"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.20 Ω
    Ipf          0.5 kA
    ^^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.20 Ω
    Ipf          1.3 kA
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.20 Ω
    Ipf          <0.01 kA
    ^^^^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.20 Ω
    Ipf          >1 kA
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.20 Ω
    Ipf          9.5 kA
    ^^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.20 Ω
    Ipf          1.15 kA
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check(installation, report) {
    for (const place of faultPlaceAtOrigin(installation)) checkPlace(place, report);
  },
  checkBoard({ context }, report) {
    for (const place of faultPlaceAtBoard(context)) checkPlace(place, report);
  },
});

function checkPlace(place: FaultPlace, report: Reporter): void {
  // Through an electrode little flows to earth, and the figure is that between line and neutral.
  if (place.tt || singlePhaseFigure(place)) return;
  for (const fault of [...place.faults, ...place.atMost]) if (fault.name !== "PSCC") checkFaultAt(place, fault, report);
}

function checkFaultAt(place: FaultPlace, fault: FaultAt, report: Reporter): void {
  const { byLoop, loop, name, threePhase, combined } = place;
  const low = practiceOf("fault-low");
  // A declared figure is the greatest the distributor guarantees, far above what a meter shows.
  const high = practiceOf(threePhase && fault.name === "Ipf" ? "fault-high-three" : "fault-high");
  const least = low.value * byQuestionableLoop(place, "less");
  const most = high.value * byQuestionableLoop(place, "more");
  const tooLow = fallsShort(fault.value, least);
  if (fault.sign === "<" && !tooLow) return;
  // With a separate protective conductor the neutral may be far better than the earth, and Ipf far above U0/Z.
  // And a loop that is declared is the most it may be: more may flow.
  const comparable = (combined || fault.name === "PEFC") && loop.fact.provenance !== "declared";
  const tooHigh = comparable && exceeds(fault.value, most) && fault.fact.provenance === "measured";
  if (!tooLow && !tooHigh) return;
  const used = tooLow ? low : high;
  report(factSpot(fault.fact), {
    message: `${fault.name} ${withSign(fault, kiloamps)} does not agree with ${ohms(loop.value)} at ${name}, which gives ${kiloamps(byLoop.value)}: ${tooLow ? "was it read further out, or A for kA?" : "check the decimal point."}`,
    value: amount(fault.value, "A"),
    limit: amount(tooLow ? least : most, "A"),
    least: tooLow,
    steps: [...byLoop.steps, ...used.steps],
    source: combine(byLoop.source, used.source),
    related: [{ spot: factSpot(loop.fact), message: `Loop impedance ${ohms(loop.value)}.` }],
  });
}
