import { harmonicNeutrals } from "../tables/coordination.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { cellOf, sourceOf } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { amps, percent, plain, step } from "./result.ts";

/** What a cable of equal cores must be able to carry, and what flows in its neutral. A. */
interface HarmonicNeed {
  readonly neutral: Calculated;
  /** The capacity a cable needs by the tables for three loaded conductors. */
  readonly capacity: Calculated;
}

/** The neutral current of a balanced circuit whose line current Ib (A) holds so much third harmonic (a share). */
export function harmonicNeed(Ib: number, share: number): HarmonicNeed {
  const inPercent = share * 100;
  const row = harmonicNeutrals.rows.find(({ facts }) => inPercent > facts.over && inPercent <= facts.upTo);
  const value = 3 * share * Ib;
  const steps = [step("IN = 3 × harmonics × Ib", `3 × ${percent(inPercent)} × ${amps(Ib)}`, amps(value))];
  const form = { ref: "Third harmonics add in the neutral", standing: "computed" } as const;
  const neutral: Calculated = { value, unit: "A", steps, source: form };
  if (row === undefined) return { neutral, capacity: { ...neutral, value: Ib, steps: [] } };
  const factor = cellOf(harmonicNeutrals, row, "factor");
  const deciding = row.facts.by === "neutral" ? value : Ib;
  const need = deciding / factor.value;
  const numbers = `${amps(deciding)} / ${plain(factor.value)}`;
  return {
    neutral,
    capacity: {
      value: need,
      unit: "A",
      steps: [...steps, step(`Iz ≥ ${row.facts.by === "neutral" ? "IN" : "Ib"} / factor`, numbers, amps(need))],
      source: fromFormula(combine(sourceOf(harmonicNeutrals, row, "factor"), form)),
    },
  };
}
