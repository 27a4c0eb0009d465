import type { DiversityColumn, DiversityPurpose, DiversityShare } from "../tables/diversity-shares.ts";
import { diversityShares } from "../tables/diversity-shares.ts";
import type { Source } from "../tables/source.ts";
import { fromFormula } from "../tables/source.ts";
import { known, rowOf, sourceOf } from "../tables/table.ts";
import { reproducible, shareStep } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { amps, looked, percent, type Step, step } from "./result.ts";

/** Loads of one kind in one kind of premises, A each. `socket`: a cooker's control unit has a socket-outlet. */
export interface DiversityQuestion {
  readonly purpose: DiversityPurpose;
  readonly column: DiversityColumn;
  readonly currents: readonly number[];
  readonly socket?: boolean;
}

const called: Readonly<Record<DiversityPurpose, string>> = {
  lighting: "lighting",
  "heating-power": "heating and power",
  cookers: "cooker",
  motors: "motors",
  "instantaneous-heaters": "instantaneous water heaters",
  "thermostatic-heaters": "water heaters with thermostats",
  "standard-circuits": "socket circuits",
  sockets: "sockets and stationary equipment",
};

/** Demand (A) of loads of one kind by the published allowances. */
export function diversified({ purpose, column, currents, socket = false }: DiversityQuestion): Calculated {
  const { share, source } = shareOf(purpose, column);
  const { full, largest, second, rest } = share;
  const label = called[purpose];
  const total = currents.reduce((sum, current) => sum + current, 0);
  if (full > 0 || socket) return partInFull(share, source, label, total, socket);
  if (largest === second && second === rest) return ofTotal(largest, total, label, source);
  return ranked(share, source, label, currents);
}

/** The least share (of 1) of its current that diversity leaves of a single load: what counts of a cooker in a dwelling. */
export function leastShareOfOne(): Calculated {
  const { value, source } = known(diversityShares, { key: "cookers", column: "household" }, "largest");
  return { value, unit: "", steps: [looked("least share of one load", source.ref, percent(100 * value))], source };
}

function partInFull(share: DiversityShare, source: Source, label: string, total: number, socket: boolean): Calculated {
  const full = Math.min(total, share.full);
  const rest = total - full;
  const added = socket ? share.socket : 0;
  const value = full + share.rest * rest + added;
  const extra = added > 0 ? ` + ${amps(added)}` : "";
  const sum = reproducible(
    label,
    [
      [full, amps],
      [rest, amps],
    ],
    {
      write: (first, others) => `${first} + ${percent(share.rest * 100)} × ${others}${extra}`,
      compute: (first, others) => first + share.rest * others + added,
    },
    [value, amps],
  );
  return { value, unit: "A", steps: [sum], source };
}

const ofShare = (label: string, share: number, total: number, value: number): Step =>
  shareStep(label, share, [total, amps], [value, amps]);

function ofTotal(share: number, total: number, label: string, source: Source): Calculated {
  const value = share * total;
  return { value, unit: "A", steps: [ofShare(label, share, total, value)], source };
}

function ranked(share: DiversityShare, source: Source, label: string, currents: readonly number[]): Calculated {
  const [largest = 0, second = 0, ...others] = currents.toSorted((one, other) => other - one);
  const rest = others.reduce((sum, current) => sum + current, 0);
  const value = share.largest * largest + share.second * second + share.rest * rest;
  const part = (fraction: number, current: number) =>
    current > 0 ? [`${percent(fraction * 100)} × ${amps(current)}`] : [];
  const parts = [...part(share.largest, largest), ...part(share.second, second), ...part(share.rest, rest)];
  return { value, unit: "A", steps: [step(label, parts.join(" + "), amps(value))], source };
}

function shareOf(key: DiversityPurpose, column: DiversityColumn): { share: DiversityShare; source: Source } {
  const row = rowOf(diversityShares, { key, column });
  if (row === undefined) throw new Error(`${diversityShares.id} lacks ${key}, ${column}`);
  return { share: row.facts, source: fromFormula(sourceOf(diversityShares, row, "largest")) };
}
