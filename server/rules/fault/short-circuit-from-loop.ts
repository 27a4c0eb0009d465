import { kiloamps, ohms, round } from "../../calc/result.ts";
import { quantityOf, readingAt } from "../../model/values.ts";
import { type FaultPlace, faultPlaceAtBoard, faultPlaceAtOrigin } from "../../readings/fault-check.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

export default installationRule({
  id: "fault/short-circuit-from-loop",
  severity: "information",
  since: "0.1",
  title: "A short-circuit current was calculated from the earth fault loop.",
  why: "Ze gives the current to earth. Between line and neutral another path decides, and on a TN-S supply usually one of lower impedance: measure it as well.",
  clauses: ["643.7.3.201"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.31 Ω
    PSCC         742 A
    ^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.31 Ω
    PSCC         1110 A
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

function checkPlace({ faults, byLoop, loop, combined }: FaultPlace, report: Reporter): void {
  const PSCC = faults.find(({ name }) => name === "PSCC");
  // With a combined conductor both paths are one, and equal figures are what a meter shows.
  if (!PSCC || combined || PSCC.fact.provenance !== "measured") return;
  const written = quantityOf(readingAt(PSCC.fact));
  if (!written) return;
  const unit = written.unit === "kA" ? 1000 : 1;
  // Two coarse figures agree by chance; only a fine one tells.
  if (round(byLoop.value / unit, written.decimals) !== round(PSCC.value / unit, written.decimals)) return;
  if (String(round(PSCC.value / unit, written.decimals)).replace(/\D/g, "").length < 3) return;
  report(factSpot(PSCC.fact), {
    message: `PSCC ${kiloamps(PSCC.value)} is exactly U0 / ${ohms(loop.value)}, the earth fault current: measure line to neutral.`,
    value: amount(PSCC.value, "A"),
    steps: byLoop.steps,
    source: byLoop.source,
    related: [{ spot: factSpot(loop.fact), message: `Earth fault loop impedance ${ohms(loop.value)}.` }],
  });
}
