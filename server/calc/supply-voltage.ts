import { supplyValues } from "../tables/supply.ts";
import { known } from "../tables/table.ts";
import { type Calculated, percent, step, volts } from "./result.ts";

/** V between which a distributor keeps a supply of a nominal voltage in V. */
interface SupplyVoltage {
  readonly least: Calculated;
  readonly greatest: Calculated;
}

export function supplyVoltage(nominal: number): SupplyVoltage {
  return { least: edge(nominal, "tolerance-low", -1), greatest: edge(nominal, "tolerance-high", 1) };
}

function edge(nominal: number, key: string, sign: 1 | -1): Calculated {
  const { value: share, source } = known(supplyValues, { key }, "value");
  const value = nominal * (1 + (sign * share) / 100);
  const between = sign < 0 ? "−" : "+";
  return {
    value,
    unit: "V",
    steps: [step(`U0 ${between} ${percent(share)}`, `${volts(nominal)} ${between} ${percent(share)}`, volts(value))],
    source,
  };
}
