import { Memo } from "../memo/memo.ts";
import type { Edition } from "../tables/editions.ts";
import { insulationMinima, insulationRules } from "../tables/insulation.ts";
import { insulationMinima16 } from "../tables/insulation-16th.ts";
import { known } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { looked, megohms, step, volts } from "./result.ts";

export type InsulationKind = "selv-pelv" | "up-to-500" | "above-500";

/** Least acceptable insulation resistance in Ω, and the test voltage in V d.c. */
export interface InsulationRule {
  readonly minimum: Calculated;
  readonly testVoltage: Calculated;
}

const ohmsPerMegohm = 1e6;

/** What Table 64 (or its forerunner) asks of a circuit. */
export const insulationRule = (kind: InsulationKind, edition: Edition): InsulationRule =>
  rules[kind].of(edition, (of) => computeInsulationRule(kind, of));

/** What follows from the tables alone lies with the edition it is for. */
const rules: Readonly<Record<InsulationKind, Memo<Edition, InsulationRule>>> = {
  "selv-pelv": new Memo(),
  "up-to-500": new Memo(),
  "above-500": new Memo(),
};

function computeInsulationRule(kind: InsulationKind, edition: Edition): InsulationRule {
  // The lower minimum of 230 V circuits marks the older table; no other part of it is asked of an edition.
  const older = edition.insulationMinimum.value < ohmsPerMegohm;
  const of = older ? insulationMinima16 : insulationMinima;
  const minimum = known(of, { kind }, "minimum");
  const voltage = known(of, { kind }, "testVoltage");
  const value = minimum.value * ohmsPerMegohm;
  const row = minimum.source.ref;
  return {
    minimum: { value, unit: "Ω", steps: [looked("minimum", row, megohms(value))], source: minimum.source },
    testVoltage: {
      value: voltage.value,
      unit: "V",
      steps: [looked("test voltage", row, `${volts(voltage.value)} d.c.`)],
      source: voltage.source,
    },
  };
}

/** Test voltage (V d.c.) where 500 V would harm what is connected; the minimum stays that of the circuit. */
export function reducedTestVoltage(): Calculated {
  const { value, source } = known(insulationRules, { key: "reduced-voltage" }, "value");
  return { value, unit: "V", steps: [step("reduced test voltage", "", `${volts(value)} d.c.`)], source };
}

/**
 * Ω of several insulation resistances tested together: 1/R = Σ 1/Ri, never more than the least of them. Undefined for
 * none. Open circuits (Infinity) take no part; all open stays open.
 */
export function parallelInsulation(parts: readonly number[]): Calculated | undefined {
  if (parts.length === 0) return undefined;
  const conductance = parts.reduce((sum, part) => sum + 1 / part, 0);
  const value = 1 / conductance;
  const numbers = `1 / (${parts.map((part) => `1/${megohms(part)}`).join(" + ")})`;
  const source = { ref: "Resistances in parallel, 1/R = Σ 1/Ri", standing: "computed" } as const;
  return { value, unit: "Ω", steps: [step("R = 1 / Σ (1/Ri)", numbers, megohms(value))], source };
}
