import { supplyValues } from "../tables/supply.ts";
import { known, rowOf } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { kiloamps, looked, ohms, step } from "./result.ts";

/** The most a distributor declares for Ze (Ω), by the system; for TT the side of the distributor alone. */
export function declaredImpedance(system: "TN-S" | "TN-C-S" | "TT"): Calculated {
  const key = { "TN-S": "ze-tn-s", "TN-C-S": "ze-tn-c-s", TT: "ra-tt" }[system];
  const { value, source } = known(supplyValues, { key }, "value");
  const label = rowOf(supplyValues, { key })?.facts.item ?? system;
  return { value, unit: "Ω", steps: [step(`${label}, declared at most`, "", ohms(value))], source };
}

/** The greatest fault current a distributor declares at a service of one phase or three, A. */
export function declaredFault(threePhase: boolean): Calculated {
  const { value, source } = known(
    supplyValues,
    { key: threePhase ? "fault-three-phase" : "fault-single-phase" },
    "value",
  );
  const current = value * 1000;
  const name = `at a service of ${threePhase ? "three phases" : "one phase"}, declared at most`;
  return { value: current, unit: "A", steps: [looked(name, source.ref, kiloamps(current))], source };
}

/** The largest fuse a service usually has: above that a supply is of another kind, A. */
export const serviceFuse = (): number => known(supplyValues, { key: "service-fuse" }, "value").value;
