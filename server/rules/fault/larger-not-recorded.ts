import { kiloamps } from "../../calc/result.ts";
import { boardFaults, type FaultAt, supplyFaults } from "../../circuit/faults.ts";
import { quantityOf, readingAt } from "../../model/values.ts";
import { quotedIn } from "../../tables/source.ts";
import { misread } from "../common/writing.ts";
import { amount, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "fault/larger-not-recorded",
  severity: "warning",
  since: "0.1",
  title: "The recorded prospective fault current is not the larger of the two.",
  why: "Devices are judged by the greatest current they may have to break. The lower of the two figures makes them look better than they are.",
  clauses: ["643.7.3.201", "434.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          0.9 kA
                 ^^^^^^
    PSCC         1.4 kA
    PEFC         0.9 kA
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ipf          1.4 kA
    PSCC         1.4 kA
    PEFC         0.9 kA
  }
}`,
    },
  ],
  check({ supply }, report) {
    checkOne(supplyFaults(supply), report);
  },
  checkBoard({ board }, report) {
    checkOne(boardFaults(board.head.facts), report);
  },
});

function checkOne(faults: readonly FaultAt[], report: Reporter): void {
  const Ipf = faults.find(({ name }) => name === "Ipf");
  const largest = faults.filter(({ name }) => name !== "Ipf").toSorted((one, other) => other.value - one.value)[0];
  if (!Ipf || !largest || Ipf.value >= largest.value) return;
  const written = quantityOf(readingAt(Ipf.fact));
  if (!written) return;
  const text = kiloamps(largest.value);
  report(valueSpot(Ipf.fact, written), {
    message: `Ipf is recorded as ${kiloamps(Ipf.value)}, but ${largest.name} is ${text}: record the larger of the two.`,
    value: amount(Ipf.value, "A"),
    limit: amount(largest.value, "A"),
    least: true,
    source: quotedIn("643.7.3.201"),
    related: [{ spot: factSpot(largest.fact), message: `${largest.name} ${text}.` }],
    fixes: [misread(Ipf.fact, written, text, "Not the larger of the two", `Record the larger, ${text}`)],
  });
}
