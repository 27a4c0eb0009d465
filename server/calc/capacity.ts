import { capacity4D1A, capacity4D2A, capacity4D4A, capacity4D5 } from "../tables/capacity-70.ts";
import { capacity4E1A, capacity4E2A, capacity4E4A } from "../tables/capacity-90.ts";
import {
  ambientFactors,
  groundFactors,
  groupingFactors,
  overloadSources,
  tabulatedAt,
  thermalInsulationFactors,
} from "../tables/factors.ts";
import { depthFactors, groundAsTabulated, groundGroupingFactors, soilFactors } from "../tables/ground.ts";
import type { Sourced } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import type { Table } from "../tables/table.ts";
import { numberCell } from "../tables/table.ts";
import type { Arrangement, FactorFound } from "./capacity-factors.ts";
import {
  ambientFactor,
  groundFactor,
  groupingFactor,
  semiEnclosedFactor,
  thermalInsulationFactor,
} from "./capacity-factors.ts";
import { otherAmbient } from "./capacity-other.ts";
import {
  depthFactor,
  groundGrouping,
  type InGround,
  isTabulatedDepth,
  isTabulatedSoil,
  metresDeep,
  soilFactor,
} from "./ground.ts";
import type { Calculated, Step } from "./result.ts";
import { amps, degrees, looked, plain, step, worked } from "./result.ts";

export type { Arrangement } from "./capacity-factors.ts";
export type Construction = "singles" | "flat-twin" | "multicore" | "armoured";
export type Method = "A" | "B" | "C" | "D" | "E" | "100" | "101" | "102" | "103";

/** Which column of which rating table. csa in mm². */
export interface CapacityQuestion {
  readonly construction: Construction;
  readonly insulation: 70 | 90;
  readonly method: Method;
  /** Loaded conductors: 2 single-phase, 3 three-phase. */
  readonly loaded: 2 | 3;
  readonly csa: number;
}

/** Ambient and ground in °C, insulated in mm of cable totally surrounded by thermal insulation. */
export interface Conditions {
  readonly It: Sourced<number>;
  readonly insulation: 70 | 90;
  readonly ambient?: number;
  readonly ground?: number;
  /** How it lies in the ground: thermal resistivity in K·m/W, depth and clear distance of those grouped in mm. */
  readonly earth?: { readonly lie: InGround; readonly soil?: number; readonly depth?: number; readonly apart?: number };
  readonly grouped?: { readonly circuits: number; readonly arrangement: Arrangement };
  readonly insulated?: number;
  readonly semiEnclosed?: boolean;
  /** Cable whose factors for the air around it are not those of insulated conductors. */
  readonly other?: "mineral" | "flex" | undefined;
  /** A factor of a book of one's own, as a share. */
  readonly own?: Sourced<number>;
}

/** A corrected capacity, or the factor that no table here gives. */
type Corrected = Calculated | { readonly missing: string };

/** Tabulated capacity It (A) at 30 °C, one circuit; its source names the table. Undefined where no table has the cell. */
export function tabulatedCapacity({
  construction,
  insulation,
  method,
  loaded,
  csa,
}: CapacityQuestion): Sourced<number> | undefined {
  const column = `${method}${loaded}`;
  switch (`${construction} ${insulation}`) {
    case "singles 70":
      return cell(capacity4D1A, csa, column);
    case "singles 90":
      return cell(capacity4E1A, csa, column);
    case "multicore 70":
      return cell(capacity4D2A, csa, column);
    case "multicore 90":
      return cell(capacity4E2A, csa, column);
    case "armoured 70":
      return cell(capacity4D4A, csa, column);
    case "armoured 90":
      return cell(capacity4E4A, csa, column);
    case "flat-twin 70":
      return loaded === 2 ? flatTwin(method, csa) : undefined;
    default:
      return undefined;
  }
}

/** Flat cable has a table of its own; only for the methods that lacks does the one for round cables serve. */
function flatTwin(method: Method, csa: number): Sourced<number> | undefined {
  if (method === "B" || method === "E") return cell(capacity4D2A, csa, `${method}2`);
  return cell(capacity4D5, csa, /^\d+$/.test(method) ? `m${method}` : method);
}

/** A column is named by method and loaded conductors; a table that lacks it answers undefined like any empty cell. */
function cell<F extends { readonly csa: number }>(
  of: Table<F>,
  csa: number,
  column: string,
): Sourced<number> | undefined {
  return numberCell<{ readonly csa: number }>(of, { csa }, column as "csa");
}

/** Capacity in the conditions of the route: Iz = It × Ca × Cg × Ci × Cf (A), a step for each factor that applies. */
export function correctedCapacity(conditions: Conditions): Corrected {
  const { It } = conditions;
  const factors: Calculated[] = [];
  let value = It.value;
  let source = It.source;
  for (const factor of factorsOf(conditions)) {
    if ("missing" in factor) return factor;
    factors.push(factor);
    value *= factor.value;
    source = combine(source, factor.source);
  }
  const corrected = factors.some(({ steps }) => steps.length > 0);
  return worked(value, "A", corrected ? fromFormula(source) : source, () => {
    const steps = [looked("It", It.source.ref, amps(It.value)), ...factors.flatMap((factor) => factor.steps)];
    const product = steps.map(({ result }) => result).join(" × ");
    return corrected ? [...steps, step("Iz", product, amps(value))] : steps;
  });
}

/**
 * The factors that are 1 because the route is as the tables suppose it: a reviewer wants to see that each was thought of.
 * In the ground the conditions of the tables are named with them.
 */
export function factorsOfOne(conditions: Omit<Conditions, "It">, inGround: boolean): readonly Step[] {
  const { ambient, ground, earth, grouped, insulated, semiEnclosed } = conditions;
  const one = (name: string, from: string): Step => looked(name, from, "1");
  const air = ambient === undefined || ambient === tabulatedAt.air;
  return [
    ...(inGround
      ? [
          ...(ground === undefined || ground === tabulatedAt.ground
            ? [one(`Ca at ${degrees(tabulatedAt.ground)} in the ground`, groundFactors.ref)]
            : []),
          ...(earth?.soil === undefined || isTabulatedSoil(earth.soil)
            ? [one(`Cs at ${plain(groundAsTabulated.soil)} K·m/W`, soilFactors.ref)]
            : []),
          ...(earth?.depth === undefined || isTabulatedDepth(earth.depth)
            ? [one(`Cd at ${metresDeep(groundAsTabulated.depth)}`, depthFactors.ref)]
            : []),
        ]
      : air
        ? [one(`Ca at ${degrees(tabulatedAt.air)}`, ambientFactors.ref)]
        : []),
    ...(grouped === undefined || grouped.circuits <= 1
      ? [one("Cg for one circuit alone", inGround ? groundGroupingFactors.ref : groupingFactors.ref)]
      : []),
    ...(insulated === undefined || insulated <= 0
      ? [one("Ci without thermal insulation", thermalInsulationFactors.ref)]
      : []),
    ...(semiEnclosed ? [] : [one("Cf, no rewirable fuse", overloadSources.semiEnclosed.ref)]),
  ];
}

const ownFactor = ({ value, source }: Sourced<number>): FactorFound => ({
  value,
  unit: "",
  steps: [looked("factor of one’s own book", source.ref, plain(value))],
  source,
});

function factorsOf(conditions: Conditions): FactorFound[] {
  const { insulation, ambient, ground, earth, grouped, insulated, semiEnclosed, own, other } = conditions;
  return [
    ...(ambient === undefined || ambient === tabulatedAt.air
      ? []
      : [other ? otherAmbient(other, ambient) : ambientFactor(ambient, insulation)]),
    ...(ground === undefined || ground === tabulatedAt.ground ? [] : [groundFactor(ground, insulation)]),
    ...(earth?.soil === undefined || isTabulatedSoil(earth.soil) ? [] : [soilFactor(earth.soil, earth.lie)]),
    ...(earth?.depth === undefined || isTabulatedDepth(earth.depth) ? [] : [depthFactor(earth.depth, earth.lie)]),
    ...(grouped === undefined || grouped.circuits <= 1
      ? []
      : [
          earth
            ? groundGrouping(grouped.circuits, earth.lie, earth.apart ?? 0)
            : groupingFactor(grouped.circuits, grouped.arrangement),
        ]),
    ...(insulated === undefined || insulated <= 0 ? [] : [thermalInsulationFactor(insulated)]),
    ...(semiEnclosed === true ? [semiEnclosedFactor()] : []),
    ...(own ? [ownFactor(own)] : []),
  ];
}
