import { conduitRuns } from "../tables/conduit-runs.ts";
import { conduitCables, conduitStraight, trunkingCables, trunkingSizes } from "../tables/containment.ts";
import type { Source } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { cellOf, numberAt } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { looked, plain, squareMillimetres, step } from "./result.ts";

/** Single cables of one kind in a run; csa in mm². */
export interface Cables {
  readonly csa: number;
  readonly count: number;
  /** Solid up to 2.5 mm² is usual in straight short runs and trunking; stranded when left out. */
  readonly wire?: "solid" | "stranded";
  /** Insulation of cables in trunking; thermoplastic when left out. */
  readonly insulation?: "pvc" | "thermosetting";
}

/** A sum of factors, the room there is, and whether it suffices. */
export interface Fill {
  readonly total: Calculated;
  readonly room: Calculated;
  readonly fits: boolean;
}

type Factor = { readonly value: number; readonly source: Source };
export type ConduitSize = 16 | 20 | 25 | 32;

/** Fill of a conduit; size in mm, length in m. Undefined where a cable or the run is outside the tables. */
export function conduitFill(
  cables: readonly Cables[],
  conduit: { size: ConduitSize; length: number; bends: number },
): Fill | undefined {
  const straight = conduit.bends === 0 && conduit.length <= 3;
  const total = sumOf(cables, straight ? straightCable : bentCable);
  const factor = straight
    ? numberAt(conduitStraight, { item: "conduit", size: conduit.size }, "factor")
    : runFactor(conduit);
  const run = `${conduit.size} mm, ${plain(conduit.length)} m, ${conduit.bends} bends`;
  return total === undefined || factor === undefined ? undefined : fill(total, room(factor, run));
}

/** Fill of a trunking; width and depth in mm, spare as a share of the total to keep free (0.1 for 10 %). */
export function trunkingFill(
  cables: readonly Cables[],
  trunking: { width: number; depth: number },
  spare = 0,
): Fill | undefined {
  const total = sumOf(cables, trunkingCable, spare);
  const factor = numberAt(trunkingSizes, trunking, "factor");
  if (total === undefined || factor === undefined) return undefined;
  return fill(total, room(factor, `${trunking.width} × ${trunking.depth} mm`));
}

/** The smallest conduit (mm) that holds the cables; undefined when none of the table does. */
export function smallestConduit(
  cables: readonly Cables[],
  run: { length: number; bends: number },
): ConduitSize | undefined {
  return ([16, 20, 25, 32] as const).find((size) => conduitFill(cables, { ...run, size })?.fits === true);
}

function straightCable({ csa, wire = "stranded" }: Cables): Factor | undefined {
  return numberAt(conduitStraight, { item: "cable", size: csa, wire }, "factor");
}

function bentCable({ csa }: Cables): Factor | undefined {
  return numberAt(conduitCables, { csa }, "factor");
}

function trunkingCable({ csa, wire = "stranded", insulation = "pvc" }: Cables): Factor | undefined {
  return numberAt(trunkingCables, { csa, wire }, insulation);
}

/** A length between two rows takes the longer one. */
function runFactor({ size, length, bends }: { size: ConduitSize; length: number; bends: number }): Factor | undefined {
  const row = conduitRuns.rows.find(({ facts }) => facts.bends === bends && facts.length >= length);
  return row === undefined ? undefined : cellOf(conduitRuns, row, `d${size}`);
}

function sumOf(
  cables: readonly Cables[],
  factorOf: (cable: Cables) => Factor | undefined,
  spare = 0,
): Calculated | undefined {
  const parts = cables.map((cable) => ({ cable, factor: factorOf(cable) }));
  const known = parts.flatMap(({ cable, factor }) => (factor === undefined ? [] : [{ cable, factor }]));
  if (known.length < parts.length || known.length === 0) return undefined;
  const value = known.reduce((sum, { cable, factor }) => sum + cable.count * factor.value, 0) * (1 + spare);
  const terms = known.map(
    ({ cable, factor }) => `${cable.count} × ${plain(factor.value)} (${squareMillimetres(cable.csa)})`,
  );
  const numbers = terms.join(" + ") + (spare > 0 ? `, and ${plain(spare * 100)} % spare` : "");
  const source = fromFormula(combine(...known.map(({ factor }) => factor.source)));
  return { value, unit: "", steps: [step("cable factors", numbers, plain(value))], source };
}

function room(factor: Factor, run: string): Calculated {
  return { value: factor.value, unit: "", steps: [looked("factor", run, plain(factor.value))], source: factor.source };
}

function fill(total: Calculated, available: Calculated): Fill {
  return { total, room: available, fits: total.value <= available.value };
}
