import type { DiversityShare } from "../tables/diversity-shares.ts";
import { diversityShares } from "../tables/diversity-shares.ts";
import type { Source } from "../tables/source.ts";
import { fromFormula } from "../tables/source.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { amps, percent, step } from "./result.ts";

/** Demand (A) of a household cooker: the first 10 A, 30 % of the rest, and 5 A for a socket on its control unit. */
export function cookerDemand(current: number, socket: boolean): Calculated {
  const { share, source } = shareOf("cookers");
  const full = Math.min(current, share.full);
  const rest = current - full;
  const value = full + share.rest * rest + (socket ? share.socket : 0);
  const extra = socket ? ` + ${amps(share.socket)}` : "";
  const numbers = `${amps(full)} + ${percent(share.rest * 100)} × ${amps(rest)}${extra}`;
  return { value, unit: "A", steps: [step("cooker", numbers, amps(value))], source };
}

/** Demand (A) of household lighting: 66 % of the total. */
export function lightingDemand(total: number): Calculated {
  const { share, source } = shareOf("lighting");
  const value = share.largest * total;
  const steps = [step("lighting", `${percent(share.largest * 100)} × ${amps(total)}`, amps(value))];
  return { value, unit: "A", steps, source };
}

/** Demand (A) of household socket circuits of standard arrangement: the largest, and 40 % of the others. */
export function socketCircuitDemand(currents: readonly number[]): Calculated {
  return ranked("standard-circuits", "socket circuits", currents);
}

/** Demand (A) of household instantaneous water heaters: the two largest in full, a quarter of the rest. */
export function heaterDemand(currents: readonly number[]): Calculated {
  return ranked("instantaneous-heaters", "water heaters", currents);
}

function ranked(key: DiversityShare["key"], label: string, currents: readonly number[]): Calculated {
  const { share, source } = shareOf(key);
  const [largest = 0, second = 0, ...others] = currents.toSorted((one, other) => other - one);
  const rest = others.reduce((sum, current) => sum + current, 0);
  const value = share.largest * largest + share.second * second + share.rest * rest;
  const part = (fraction: number, current: number) => `${percent(fraction * 100)} × ${amps(current)}`;
  const numbers = [part(share.largest, largest), part(share.second, second), part(share.rest, rest)].join(" + ");
  return { value, unit: "A", steps: [step(label, numbers, amps(value))], source };
}

function shareOf(key: DiversityShare["key"]): { share: DiversityShare; source: Source } {
  const row = rowOf(diversityShares, { key });
  if (row === undefined) throw new Error(`${diversityShares.id} lacks ${key}`);
  return { share: row.facts, source: fromFormula(sourceOf(diversityShares, row, "largest")) };
}
