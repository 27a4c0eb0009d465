import { practiceValues } from "../tables/practice.ts";
import type { Sourced } from "../tables/source.ts";
import { combine, fromFormula, lasting } from "../tables/source.ts";
import { known } from "../tables/table.ts";
import type { Metal } from "./conductor-resistance.ts";
import { operatingFactor, resistancePerMetre } from "./conductor-resistance.ts";
import type { Calculated } from "./result.ts";
import { amps, degrees, percent, plain, step, worked } from "./result.ts";

/** A cable whose voltage drop no table here gives: a larger thermosetting one, or one of aluminium. */
interface CalculatedDropQuestion {
  readonly csa: number;
  readonly material: Metal;
  readonly insulation: 70 | 90;
  readonly loaded: 2 | 3;
}

/**
 * V per ampere and metre from the resistance of the conductors at operating temperature and the reactance usual for
 * cores of one cable: z = √(r² + x²), twice over for two conductors, √3 times between the lines of three.
 */
export function calculatedDrop({
  csa,
  material,
  insulation,
  loaded,
}: CalculatedDropQuestion): Sourced<number> | undefined {
  const r20 = resistancePerMetre(csa, material);
  const factor = operatingFactor(insulation, "incorporated");
  if (!r20 || !factor) return undefined;
  const reactance = known(practiceValues, { key: "cable-reactance" }, "value");
  const times = loaded === 2 ? 2 : Math.sqrt(3);
  const value = times * Math.hypot(r20.value * factor.value, reactance.value);
  return { value, source: fromFormula(combine(r20.source, factor.source, reactance.source)) };
}

/** What a conductor's real temperature depends on. It and Iz in A: the tabulated capacity, and that with the factors. */
interface TemperatureQuestion {
  readonly It: number;
  readonly Iz: number;
  readonly Ib: number;
  readonly insulation: 70 | 90;
}

const correction = lasting({ ref: "BS 7671:2018+A2:2022, Appendix 4, section 6.1", standing: "memory" });

/**
 * Factor on a tabulated voltage drop for conductors that are cooler than the tables suppose, up to 16 mm²:
 * Ct = (230 + θ) / (230 + tp), θ = tp − ((Iz/It)² − (Ib/It)²) × (tp − 30). Never above 1.
 */
export function dropTemperatureFactor({ It, Iz, Ib, insulation }: TemperatureQuestion): Calculated {
  const cooler = ((Iz / It) ** 2 - (Ib / It) ** 2) * (insulation - 30);
  const temperature = Math.min(insulation, insulation - cooler);
  const value = (230 + temperature) / (230 + insulation);
  const steps = () => [
    step("conductors in service", `Ib ${amps(Ib)}, Iz ${amps(Iz)}, It ${amps(It)}`, degrees(temperature)),
    step("Ct", `(230 + ${plain(temperature, 1)}) / (230 + ${insulation})`, plain(value, 3)),
  ];
  return worked(value, "", correction, steps);
}

/** Factor for a power factor below 1 (a share): where resistance decides, up to 16 mm², the drop falls with it. */
export function dropPowerFactor(share: number): Calculated {
  const steps = [step("cos φ", "", percent(share * 100))];
  return { value: share, unit: "", steps, source: { ...correction, ref: correction.ref.replace("6.1", "6.2") } };
}

/** Up to this size (mm²) resistance alone decides the drop and both corrections may be made. */
export const resistiveUpTo = (): number => known(practiceValues, { key: "resistive-size" }, "value").value;
