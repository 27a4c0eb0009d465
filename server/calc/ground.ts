/** Factors of a cable in the ground. Between rows the worse is taken, so that what follows lies on the safe side. */
import {
  depthFactors,
  type GroundGroupingFactor,
  groundAsTabulated,
  groundGroupingFactors,
  soilFactors,
} from "../tables/ground.ts";
import { cellOf, numberCell, rowOf, type Table } from "../tables/table.ts";
import type { FactorFound } from "./capacity-factors.ts";
import { plain, step } from "./result.ts";

/** How a cable lies in the ground. */
export type InGround = "buried" | "duct";

const lies: Readonly<Record<InGround, string>> = { buried: "direct in the ground", duct: "in ducts" };

/** `0.7 m`, from mm. */
export const metresDeep = (depth: number): string => `${plain(depth / 1000, 3)} m`;

/** Cs for a thermal resistivity in K·m/W. */
export const soilFactor = (soil: number, lie: InGround): FactorFound =>
  factorAt(soilFactors, soil, lie, { symbol: "Cs", key: "soil", shown: (value) => `${plain(value)} K·m/W` });

/** Cd for a depth in mm. */
export const depthFactor = (depth: number, lie: InGround): FactorFound =>
  factorAt(depthFactors, depth, lie, { symbol: "Cd", key: "depth", shown: metresDeep });

/** Whether the tables suppose the very same. */
export const isTabulatedSoil = (soil: number): boolean => soil === groundAsTabulated.soil;
export const isTabulatedDepth = (depth: number): boolean => depth === groundAsTabulated.depth;

interface FactorWords<K extends string> {
  readonly symbol: string;
  readonly key: K;
  readonly shown: (value: number) => string;
}

type Factors<K extends string> = Readonly<Record<K, number>> & Readonly<Record<InGround, number>>;

function factorAt<K extends string>(
  of: Table<Factors<K>>,
  value: number,
  lie: InGround,
  { symbol, key, shown }: FactorWords<K>,
): FactorFound {
  const row = of.rows.find(({ facts }) => facts[key] >= value);
  if (!row) return { missing: `no table here gives ${symbol} for ${shown(value)} (${of.ref})` };
  const { value: factor, source } = cellOf(of, row, lie);
  const taken = row.facts[key];
  const words = taken === value ? shown(value) : `${shown(value)}, taken as ${shown(taken)}`;
  return { value: factor, unit: "", steps: [step(`${symbol} at ${words}, ${lies[lie]}`, "", plain(factor))], source };
}

/** The distances (mm) that have a column, the greatest first. */
const columns = [
  { least: 1000, column: "d1000" },
  { least: 500, column: "d500" },
  { least: 250, column: "d250" },
  { least: 125, column: "d125" },
  { least: 0, column: "touching" },
] as const satisfies readonly { least: number; column: keyof GroundGroupingFactor }[];

/** Cg for so many circuits, the circuit itself included, that are so far apart (mm). */
export function groundGrouping(circuits: number, lie: InGround, apart: number): FactorFound {
  const row = rowOf(groundGroupingFactors, { key: lie, circuits });
  for (const { least, column } of row ? columns : []) {
    const cell = apart >= least ? numberCell(groundGroupingFactors, { key: lie, circuits }, column) : undefined;
    if (!cell) continue;
    const taken = least === 0 ? "touching" : `${metresDeep(least)} apart`;
    const stated =
      apart === least || (apart === 0 && least === 0) ? taken : `${metresDeep(apart)} apart, taken as ${taken}`;
    const words = `Cg for ${circuits} circuits ${lies[lie]}, ${stated}`;
    return { value: cell.value, unit: "", steps: [step(words, "", plain(cell.value))], source: cell.source };
  }
  return {
    missing: `no table here gives the grouping factor for ${plain(circuits)} circuits in the ground (${groundGroupingFactors.ref})`,
  };
}
