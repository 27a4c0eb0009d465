import { threePhaseFault } from "../../calc/fault-current.ts";
import { kiloamps, ohms } from "../../calc/result.ts";
import {
  type FaultPlace,
  faultPlaceAtBoard,
  faultPlaceAtOrigin,
  singlePhaseFigure,
} from "../../readings/fault-check.ts";
import { combine } from "../../tables/source.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

export default installationRule({
  id: "fault/one-phase-figure",
  severity: "warning",
  since: "0.1",
  title: "A three-phase board is recorded with a single-phase fault current.",
  why: "The fault current between lines is up to twice that from line to neutral. A device chosen by the smaller figure may not be able to break the greater.",
  clauses: ["643.7.3.201", "434.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    phases       three
    Ze           0.10 Ω
    Ipf          2.3 kA
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
    phases       three
    Ze           0.10 Ω
    Ipf          4.6 kA
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
  const found = singlePhaseFigure(place);
  if (!found) return;
  const { Ipf, single, share } = found;
  const doubled = threePhaseFault(single);
  report(factSpot(Ipf.fact), {
    message: `Ipf ${kiloamps(Ipf.value)} looks like a single-phase figure; between lines it is about ${kiloamps(doubled.value)} at ${place.name}: measure there, or double it.`,
    value: amount(Ipf.value, "A"),
    limit: amount(share.value * single, "A"),
    least: true,
    steps: [...place.byLoop.steps, ...doubled.steps, ...share.steps],
    source: combine(share.source, doubled.source),
    related: [
      {
        spot: factSpot(place.loop.fact),
        message: `Loop impedance used for comparison: ${ohms(place.loop.value)}.`,
      },
    ],
  });
}
