import { exceeds } from "../../calc/compare.ts";
import { kiloamps } from "../../calc/result.ts";
import { declaredFault, serviceFuse } from "../../calc/supply-declared.ts";
import { supplyFaults } from "../../circuit/faults.ts";
import { hasOwnSource, originSupply } from "../../circuit/supply.ts";
import { amount, amountOf, factSpot, installationRule } from "../frame/rule.ts";

const sample = (fault: string) => `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.34 Ω
    ${fault}
  }
}`;

export default installationRule({
  id: "fault/above-declared",
  severity: "warning",
  since: "0.1",
  title: "The fault current at the origin is greater than distributors declare for such a supply.",
  why: "No public supply of this kind feeds a fault as hard: the decimal point or the unit slipped, or the supply is another than recorded.",
  clauses: ["434.1", "313.1"],
  examples: [
    {
      bad: sample("Ipf          24.6 kA\n    ^^^^^^^^^^^^^^^^^^^^"),
      good: sample("Ipf          2.46 kA"),
    },
  ],
  check({ supply }, report) {
    const { kind, threePhase } = originSupply(supply);
    if (kind !== "public" || hasOwnSource(supply)) return;
    // A supply of three phases for a whole site may stand beside its transformer; one behind a service fuse does not.
    const cutout = supply?.one("cutout");
    if (threePhase && (!cutout || exceeds(cutout.args.rating.value, serviceFuse()))) return;
    const limit = declaredFault(threePhase);
    for (const fault of supplyFaults(supply)) {
      if (!exceeds(fault.value, limit.value)) continue;
      report(factSpot(fault.fact), {
        message: `${fault.name} ${kiloamps(fault.value)} is above ${kiloamps(limit.value)}, the most distributors declare for ${threePhase ? "three phases" : "one phase"}: check the decimal point and the unit, or ask the distributor.`,
        value: amount(fault.value, "A"),
        limit: amountOf(limit),
        steps: limit.steps,
        source: limit.source,
      });
    }
  },
});
