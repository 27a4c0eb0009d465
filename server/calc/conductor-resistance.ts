import { Memo } from "../memo/memo.ts";
import { conductorResistance, pairResistance } from "../tables/conductors.ts";
import type { Source } from "../tables/source.ts";
import { combine, fromFormula, summed } from "../tables/source.ts";
import { known, numberCell, rowOf } from "../tables/table.ts";
import { operatingFactors, temperatureCoefficients } from "../tables/temperature.ts";
import { addition, productOf, productStep, quotientStep, reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { degrees, metres, milliohms, ohms, plain, squareMillimetres, step, worked } from "./result.ts";

export type Metal = "copper" | "aluminium";

/** The tables print Ω per kilometre; a schedule thinks in metres. */
const perKilometre = 1000;

/** Ω per metre at 20 °C of one conductor of class 1 or 2; csa in mm². Undefined for a size the table lacks. */
export function resistancePerMetre(csa: number, metal: Metal = "copper"): Calculated | undefined {
  const row = rowOf(conductorResistance, { csa });
  return row && resistances[metal].of(row, () => computeResistancePerMetre(csa, metal));
}

type ResistanceRow = (typeof conductorResistance.rows)[number];

/** What follows from the tables alone lies with their rows. */
const resistances: Readonly<Record<Metal, Memo<ResistanceRow, Calculated | undefined>>> = {
  copper: new Memo(),
  aluminium: new Memo(),
};

function computeResistancePerMetre(csa: number, metal: Metal): Calculated | undefined {
  const cell = numberCell(conductorResistance, { csa }, metal === "copper" ? "copper2" : "aluminium2");
  if (cell === undefined) return undefined;
  const value = cell.value / perKilometre;
  const text = `${squareMillimetres(csa)} ${metal}`;
  return { value, unit: "Ω/m", steps: [step(`r of ${text}`, "", perMetre(value))], source: cell.source };
}

/**
 * Ω per metre at 20 °C of line and cpc in series; csa in mm². Copper pairs the On-Site Guide prints carry its source,
 * others that of their sum.
 */
export function r1r2PerMetre(
  line: number,
  cpc: number,
  metals: { line?: Metal; cpc?: Metal } = {},
): Calculated | undefined {
  const { line: lineMetal = "copper", cpc: cpcMetal = "copper" } = metals;
  const r1 = resistancePerMetre(line, lineMetal);
  const r2 = resistancePerMetre(cpc, cpcMetal);
  if (r1 === undefined || r2 === undefined) return undefined;
  const known = pairs.of(r1, () => new Map());
  const before = known.get(r2);
  if (before) return before;
  const copper = lineMetal === "copper" && cpcMetal === "copper";
  const printed = copper ? numberCell(pairResistance, { line, cpc }, "r1r2")?.source : undefined;
  const fresh = inSeries(r1, r2, printed);
  known.set(r2, fresh);
  return fresh;
}

/** A size and metal has one resistance, the same object each time. */
const pairs = new Memo<Calculated, Map<Calculated, Calculated>>();

function inSeries(r1: Calculated, r2: Calculated, printed: Source | undefined): Calculated {
  const value = r1.value + r2.value;
  const sum = reproducible(
    "(r1 + r2) per metre",
    [
      [r1.value, milliohms],
      [r2.value, milliohms],
    ],
    addition,
    [value, perMetre],
  );
  const steps = [...r1.steps, ...r2.steps, sum];
  return { value, unit: "Ω/m", steps, source: printed ?? fromFormula(summed(r1, r2)) };
}

/** Ω over a length in m, from a value per metre at 20 °C, at a temperature in °C (20 when left out). */
export function expectedResistance(perMetreAt20: Calculated, length: number, temperature = 20): Calculated {
  const r20 = perMetreAt20.value * length;
  const cold = worked(r20, "Ω", fromFormula(perMetreAt20.source), () => [
    ...perMetreAt20.steps,
    productStep(
      "R = length × resistance per metre",
      [
        [length, metres],
        [perMetreAt20.value, perMetre],
      ],
      [r20, ohms],
    ),
  ]);
  return temperature === 20 ? cold : resistanceAt(cold, temperature);
}

/** Ω at a temperature in °C of a resistance known at 20 °C, with the way to it. */
export function resistanceAt(cold: Calculated, temperature: number): Calculated {
  const warm = atTemperature(cold.value, temperature);
  return worked(warm.value, "Ω", combine(cold.source, warm.source), () => [...cold.steps, ...warm.steps]);
}

type Coefficient = "simple" | "exact";

/** Ω at a temperature in °C of copper known at 20 °C: 0.004 per kelvin as the guides do, or the physical 0.00393. */
export function atTemperature(r20: number, temperature: number, coefficient: Coefficient = "simple"): Calculated {
  const { alpha, source } = alphaOf(coefficient);
  const value = r20 * (1 + alpha * (temperature - 20));
  return worked(value, "Ω", fromFormula(source), () => {
    return [
      reproducible(
        `R at ${degrees(temperature)}`,
        [
          [r20, ohms],
          [temperature, plain],
        ],
        {
          write: (cold, celsius) => `${cold} × (1 + ${alpha} × (${celsius} − 20))`,
          compute: (cold, celsius) => cold * (1 + alpha * (celsius - 20)),
        },
        [value, ohms],
      ),
    ];
  });
}

/** Ω at 20 °C of copper read at a temperature in °C. */
export function to20(reading: number, temperature: number, coefficient: Coefficient = "simple"): Calculated {
  const { alpha, source } = alphaOf(coefficient);
  const value = reading / (1 + alpha * (temperature - 20));
  const numbers = `${ohms(reading)} / (1 + ${alpha} × (${plain(temperature)} − 20))`;
  return { value, unit: "Ω", steps: [step("R at 20 °C", numbers, ohms(value))], source: fromFormula(source) };
}

/** m of conductor that make a resistance in Ω at 20 °C. */
export function lengthFromResistance(resistance: number, perMetreAt20: Calculated): Calculated {
  const value = resistance / perMetreAt20.value;
  const steps = [
    ...perMetreAt20.steps,
    quotientStep(
      "length = R / resistance per metre",
      [resistance, ohms],
      [perMetreAt20.value, perMetre],
      [value, metres],
    ),
  ];
  return { value, unit: "m", steps, source: fromFormula(perMetreAt20.source) };
}

/** Factor from 20 °C to operating temperature, for design; by whether the cpc lies in the cable (or bunched) or apart. */
export function operatingFactor(insulation: 70 | 85 | 90, cpc: "incorporated" | "separate"): Calculated | undefined {
  const cell = numberCell(operatingFactors, { celsius: insulation }, cpc);
  if (cell === undefined) return undefined;
  return worked(cell.value, "", cell.source, () => [
    step(
      `factor to ${degrees(insulation)}, cpc ${cpc === "incorporated" ? "in the cable" : "apart from it"}`,
      "",
      plain(cell.value),
    ),
  ]);
}

/** Ω at operating temperature of a resistance known at 20 °C. */
export function operatingResistance(r20: Calculated, factor: Calculated): Calculated {
  const value = r20.value * factor.value;
  return worked(value, "Ω", fromFormula(combine(r20.source, factor.source)), () => {
    const hot = reproducible(
      "R hot = R × factor",
      [
        [r20.value, ohms],
        [factor.value, plain],
      ],
      productOf,
      [value, ohms],
    );
    return [...r20.steps, ...factor.steps, hot];
  });
}

/** Ω per metre as mΩ/m. */
export function perMetre(value: number): string {
  return `${milliohms(value)}/m`;
}

function alphaOf(coefficient: Coefficient): { alpha: number; source: Source } {
  const key = coefficient === "simple" ? "simple" : "copper";
  const { value, source } = known(temperatureCoefficients, { key }, "alpha20");
  return { alpha: value, source };
}
