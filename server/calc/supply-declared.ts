import { supplyValues } from "../tables/supply.ts";
import { known, rowOf } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { ohms, step } from "./result.ts";

/** The most a distributor declares for Ze (Ω), by the system; for TT the side of the distributor alone. */
export function declaredImpedance(system: "TN-S" | "TN-C-S" | "TT"): Calculated {
  const key = { "TN-S": "ze-tn-s", "TN-C-S": "ze-tn-c-s", TT: "ra-tt" }[system];
  const { value, source } = known(supplyValues, { key }, "value");
  const label = rowOf(supplyValues, { key })?.facts.item ?? system;
  return { value, unit: "Ω", steps: [step(`${label}, declared at most`, "", ohms(value))], source };
}
