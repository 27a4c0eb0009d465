import { conduitRuns } from "../tables/conduit-runs.ts";
import {
  conduitCables,
  conduitStraight,
  containmentRules,
  trunkingCables,
  trunkingSizes,
} from "../tables/containment.ts";
import type { Source, Sourced } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { cellOf, known, numberCell } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { looked, plain, squareMillimetres, step } from "./result.ts";

/** Single cables of one kind in a run; csa in mm². */
export interface Cables {
  readonly csa: number;
  readonly count: number;
  /** Where left out, the greater factor is taken: that of stranded conductors, if there is one. */
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
export const conduitSizes = [16, 20, 25, 32] as const;
type ConduitSize = (typeof conduitSizes)[number];
export const isConduitSize = (size: number): size is ConduitSize => conduitSizes.some((known) => known === size);

/** Between two draw-in points: metres, and bends. */
export interface Run {
  readonly length: number;
  readonly bends: number;
}

/** Width and depth, mm. */
export interface Trunking {
  readonly width: number;
  readonly depth: number;
}

/** Fill of a conduit; size in mm, length in m. Undefined where a cable or the run is outside the tables. */
export function conduitFill(
  cables: readonly Cables[],
  conduit: { size: ConduitSize; length: number; bends: number },
): Fill | undefined {
  const total = sumOf(cables, cableFactorIn(conduit));
  const available = conduitRoom(conduit);
  return total === undefined || available === undefined ? undefined : fill(total, available);
}

/** A straight run up to so many metres has factors of its own, and its bends need no saying. */
export const straightRun = (): Sourced<number> => known(containmentRules, { key: "straight-run" }, "value");

/** More bends than these between two draw-in points ask for a box. */
export const mostBends = (): Sourced<number> => known(containmentRules, { key: "bends" }, "value");

const isStraight = (run: Run): boolean => run.bends === 0 && run.length <= straightRun().value;
const cableFactorIn = (run: Run) => (isStraight(run) ? straightCable : bentCable);

/** The factor of a conduit for its size, length and bends: the sum of the cables' factors it may hold. */
export function conduitRoom(conduit: Run & { readonly size: number }): Calculated | undefined {
  const factor = isStraight(conduit)
    ? numberCell(conduitStraight, { item: "conduit", size: conduit.size }, "factor")
    : runFactor(conduit);
  return factor && room(factor, `${conduit.size} mm, ${lengthText(conduit.length)}, ${bendsText(conduit.bends)}`);
}

const lengthText = (length: number): string => (length > 0 ? `${plain(length)} m` : "however short");
export const bendsText = (bends: number): string =>
  bends === 0 ? "no bends" : `${bends} bend${bends === 1 ? "" : "s"}`;

/** Fill of a trunking; width and depth in mm, spare as a share of the total to keep free (0.1 for 10 %). */
export function trunkingFill(cables: readonly Cables[], trunking: Trunking, spare = 0): Fill | undefined {
  const total = sumOf(cables, trunkingCable, spare);
  const available = trunkingRoom(trunking);
  return total === undefined || available === undefined ? undefined : fill(total, available);
}

/** The factor of a trunking: the sum of the cables' factors it may hold. */
export function trunkingRoom(trunking: Trunking): Calculated | undefined {
  // Half a millimetre is left out where a size is named: 50 × 38 is 50 × 37.5.
  const row = trunkingSizes.rows.find(
    ({ facts }) => facts.width === trunking.width && Math.abs(facts.depth - trunking.depth) <= 0.5,
  );
  return row && room(cellOf(trunkingSizes, row, "factor"), `${trunking.width} × ${trunking.depth} mm`);
}

/** The smallest conduit (mm) that holds the cables; undefined when none of the table does. */
export function smallestConduit(
  cables: readonly Cables[],
  run: { length: number; bends: number },
): ConduitSize | undefined {
  return conduitSizes.find((size) => conduitFill(cables, { ...run, size })?.fits === true);
}

/** The trunking of least factor that holds the cables and is at least as wide and deep as the one there is. */
export function smallestTrunking(cables: readonly Cables[], spare = 0, least?: Trunking): Trunking | undefined {
  return trunkingSizes.rows
    .map(({ facts }) => facts)
    .filter(({ width, depth }) => !least || (width >= least.width && depth >= least.depth))
    .toSorted((a, b) => a.factor - b.factor)
    .find((size) => trunkingFill(cables, size, spare)?.fits === true);
}

/** The sum of the factors of some cables in a section; undefined where one of them has none. */
export const conduitSum = (cables: readonly Cables[], run: Run): Calculated | undefined =>
  sumOf(cables, cableFactorIn(run));
export const trunkingSum = (cables: readonly Cables[], spare = 0): Calculated | undefined =>
  sumOf(cables, trunkingCable, spare);

/** Sizes of single cables the tables know, mm². */
export const singleSizes: readonly number[] = conduitCables.rows.map(({ facts }) => facts.csa);

function straightCable({ csa, wire }: Cables): Factor | undefined {
  const of = (kind: "solid" | "stranded") =>
    numberCell(conduitStraight, { item: "cable", size: csa, wire: kind }, "factor");
  return wire ? of(wire) : (of("stranded") ?? of("solid"));
}

function bentCable({ csa }: Cables): Factor | undefined {
  return numberCell(conduitCables, { csa }, "factor");
}

function trunkingCable({ csa, wire, insulation = "pvc" }: Cables): Factor | undefined {
  const of = (kind: "solid" | "stranded") => numberCell(trunkingCables, { csa, wire: kind }, insulation);
  return wire ? of(wire) : (of("stranded") ?? of("solid"));
}

/** A length between two rows takes the longer one. */
function runFactor({ size, length, bends }: Run & { readonly size: number }): Factor | undefined {
  if (!isConduitSize(size)) return undefined;
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
