import {
  type AmbientFactor,
  ambientFactors,
  groundFactors,
  groupingFactors,
  overloadRules,
  overloadSources,
  thermalInsulationFactors,
} from "../tables/factors.ts";
import { cellOf, known, rowOf, type Table } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { degrees, plain, step } from "./result.ts";

/** How circuits lie together in air; in the ground they heat each other more and have tables of their own (`ground.ts`). */
export type Arrangement = "bunched" | "wall" | "tray" | "ladder";

/** A factor with its step, or a plain word for what no table here gives. */
export type FactorFound = Calculated | { readonly missing: string };

/**
 * Ca for an ambient in °C. Between rows the next hotter row is taken, and below the table its coolest row: both lie on
 * the safe side.
 */
export const ambientFactor = (ambient: number, insulation: 70 | 90): FactorFound =>
  temperatureFactor(ambientFactors, ambient, insulation, { symbol: "Ca", of: "ambient" });

/** The same for a cable in the ground, in °C. */
export const groundFactor = (ground: number, insulation: 70 | 90): FactorFound =>
  temperatureFactor(groundFactors, ground, insulation, { symbol: "Ca in ground", of: "ground" });

function temperatureFactor(
  of: Table<AmbientFactor>,
  celsius: number,
  insulation: 70 | 90,
  words: { readonly symbol: string; readonly of: string },
): FactorFound {
  const row = of.rows.find(({ facts }) => facts.temperature >= celsius);
  if (celsius >= insulation)
    return { missing: `a ${degrees(insulation)} cable carries nothing where it is ${degrees(celsius)} around it` };
  if (row === undefined)
    return { missing: `no table here gives the ${words.of} factor at ${degrees(celsius)} (${of.ref})` };
  const { value, source } = cellOf(of, row, insulation === 70 ? "at70" : "at90");
  const taken = row.facts.temperature;
  const text = taken === celsius ? degrees(celsius) : `${degrees(celsius)}, taken as ${degrees(taken)}`;
  return { value, unit: "", steps: [step(`${words.symbol} at ${text}`, "", plain(value))], source };
}

/** The counts Table 4C1 prints; one between them takes the next larger. */
const counts = [1, 2, 3, 4, 5, 6, 7, 8, 9, 12, 16, 20] as const;

/** Cg for a number of circuits together, the circuit itself included. */
export function groupingFactor(circuits: number, arrangement: Arrangement): FactorFound {
  const taken = counts.find((count) => count >= circuits);
  const row = rowOf(groupingFactors, { key: arrangement });
  if (taken === undefined || row === undefined) {
    return {
      missing: `no table here gives the grouping factor for ${plain(circuits)} circuits (${groupingFactors.ref})`,
    };
  }
  const { value, source } = cellOf(groupingFactors, row, `n${taken}`);
  const text = taken === circuits ? `${circuits} circuits` : `${plain(circuits)} circuits, taken as ${taken}`;
  return {
    value,
    unit: "",
    steps: [step(`Cg for ${text}, ${row.facts.arrangement.toLowerCase()}`, "", plain(value))],
    source,
  };
}

/** Ci for a length in mm of cable surrounded by thermal insulation; between rows the next longer is taken. */
export function thermalInsulationFactor(length: number): FactorFound {
  const rows = thermalInsulationFactors.rows;
  const row = rows.find(({ facts }) => facts.length >= length) ?? rows.at(-1);
  if (row === undefined)
    return { missing: `no table here gives the thermal insulation factor (${thermalInsulationFactors.ref})` };
  const { value, source } = cellOf(thermalInsulationFactors, row, "factor");
  const taken = row.facts.length >= length ? `up to ${row.facts.length} mm` : `over ${row.facts.length} mm`;
  return {
    value,
    unit: "",
    steps: [step(`Ci for ${plain(length)} mm in insulation, ${taken}`, "", plain(value))],
    source,
  };
}

/** Cf for a BS 3036 semi-enclosed fuse, whose fusing factor is 2. */
export function semiEnclosedFactor(): Calculated {
  const { value } = known(overloadRules, { key: "semi-enclosed" }, "value");
  const source = overloadSources.semiEnclosed;
  return { value, unit: "", steps: [step("Cf for a BS 3036 fuse", "", plain(value, 3))], source };
}
