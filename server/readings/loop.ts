/** What a loop impedance should be, from what lies upstream of it. */
import { exceeds, fallsShort } from "../calc/compare.ts";
import { operatingResistance } from "../calc/conductor-resistance.ts";
import { totalLoop } from "../calc/loop-impedance.ts";
import { practiceOf } from "../calc/practice.ts";
import { rcdLoopLimit } from "../calc/rcd-loop-limit.ts";
import { productStep, reproducible } from "../calc/reproducible.ts";
import { type Calculated, ohms, plain, worked } from "../calc/result.ts";
import { declaredImpedance } from "../calc/supply-declared.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import { hasMetalBeside, operatingFactorOf } from "../circuit/cpc.ts";
import { memoByObject } from "../circuit/kept.ts";
import { type FaultPlace, farthestPlace, placeWords, timesAt } from "../circuit/parallel.ts";
import { type ProtectiveNeed, protectiveByRcd, protectiveNeed, suffices } from "../circuit/protective.ts";
import { reactanceOf } from "../circuit/reactance.ts";
import { asRead, type ExactReading, exactReading, type ReadingAt } from "../circuit/supply.ts";
import { type Rcd, WayStudy } from "../circuit/way.ts";
import { expectedConductor } from "../circuit/way-resistance.ts";
import type { Context } from "../model/installation.ts";
import { quantityOf } from "../model/values.ts";
import { parallelSources } from "../tables/parallel.ts";
import { combine, summed } from "../tables/source.ts";
import { expectedR1R2At, latestDead, lengthMismatch } from "./dead.ts";
import { feederLoop, isReadLow } from "./feeder-loop.ts";
import { studyRing } from "./ring.ts";
import { r1r2Mismatch } from "./ring-r1r2.ts";

/** The most R1+R2 of any point at the conductor's operating temperature, from length and sizes. */
export function hotR1R2(study: WayStudy): Calculated | undefined {
  const cold = study.greatestR1R2;
  const factor = operatingFactorOf(study.cable);
  return cold && factor && operatingResistance(cold, factor);
}

/** A loop with what its cables add to the impedance where it begins: that is known by its magnitude alone. */
interface DesignedLoop extends Calculated {
  readonly parts: LoopParts;
}

interface LoopParts {
  /** Ω where it begins. */
  readonly start: number;
  /** Ω of the cables behind: resistance at operating temperature, and reactance where it counts. */
  readonly R: number;
  readonly X: number;
}

/** Ω of a loop that begins so and has these cables: their resistances and reactances are added apart. */
const loopOf = ({ start, R, X }: LoopParts): number => start + (X > 0 ? Math.hypot(R, X) : R);

/** The cables of one more way behind a loop; of those in parallel to their end, or to the place in one of them. */
function behind(
  above: DesignedLoop,
  study: WayStudy,
  name: "Ze" | "Zdb",
  place?: FaultPlace,
): DesignedLoop | undefined {
  const [whole, X] = [hotR1R2(study), reactanceOf(study, ["line", "cpc"])];
  const own = whole && upTo(whole, study, place);
  if (!own) return undefined;
  const reactance = X && upTo(X, study, place);
  const { start } = above.parts;
  const parts = { start, R: above.parts.R + own.value, X: above.parts.X + (reactance?.value ?? 0) };
  const total = totalLoop(above.value, own.value, name);
  const source = combine(summed(above, own, ...(reactance ? [reactance] : [])), total.source);
  if (parts.X === 0)
    return withParts(
      worked(total.value, total.unit, source, () => [...above.steps, ...own.steps, ...total.steps]),
      parts,
    );
  const value = loopOf(parts);
  const calculated = worked(value, "Ω", source, () => [
    ...above.steps,
    ...own.steps,
    ...(reactance?.steps ?? []),
    reproducible(
      "Zs = Z where it begins + √(R² + X²)",
      [
        [start, ohms],
        [parts.R, ohms],
        [parts.X, ohms],
      ],
      {
        write: (z, r, x) => `${z} + √(${r}² + ${x}²)`,
        compute: (z, r, x) => z + Math.hypot(r, x),
      },
      [value, ohms],
    ),
  ]);
  return withParts(calculated, parts);
}

/** What conductors in parallel have to a place in one of them, of what they have to their end. */
function upTo(whole: Calculated, { cable }: WayStudy, place: FaultPlace | undefined): Calculated {
  const times = place && cable ? timesAt(cable, place, ["line", "cpc"]) : 1;
  if (times === 1 || !place) return whole;
  const value = whole.value * times;
  return worked(value, whole.unit, combine(whole.source, parallelSources.fault), () => [
    ...whole.steps,
    productStep(
      `in one of those in parallel, ${placeWords(place.at)}`,
      [
        [whole.value, ohms],
        [times, (one) => plain(one, 3)],
      ],
      [value, ohms],
    ),
  ]);
}

/** The parts on the figure itself, whose steps are worked out when they are asked for. */
const withParts = (loop: Calculated, parts: LoopParts): DesignedLoop => Object.assign(loop, { parts });

/** Loop impedance at a board as a design has it: noted there, or calculated from the origin along the feeders. */
export function designBoardImpedance(context: Context): DesignedLoop | undefined {
  const noted = boardImpedance(context);
  if (noted) {
    const { value } = noted;
    return withParts(asRead(value), { start: value, R: 0, X: 0 });
  }
  const [above, ...further] = context.upstream;
  // Behind an electrode of its own a board has nothing of what its feeder brings.
  if (!above?.feeder || context.board.facts.has("earthing")) return undefined;
  const upstream: Context = { ...context, board: above.board, upstream: further };
  const start = designBoardImpedance(upstream);
  return start && behind(start, new WayStudy(above.feeder, upstream), boardImpedance(upstream)?.name ?? "Zdb");
}

/** Zs at operating temperature as the design has it. */
export const designLoop = memoByObject((study: WayStudy): DesignedLoop | undefined => {
  const start = study.facts.has("earthing") ? undefined : designBoardImpedance(study.context);
  // A fault in one of those in parallel may have the greater loop where it is not at their end.
  const place = study.cable && farthestPlace(study.cable, ["line", "cpc"]);
  return start && behind(start, study, boardImpedance(study.context)?.name ?? "Zdb", place);
});

/**
 * How many times longer the cable of a way may be for its loop to come to a limit: with reactance its impedance grows with
 * its length, but does not add to that of the cables before it as numbers do.
 */
export function timesToLimit(start: DesignedLoop, loop: DesignedLoop, limit: number): number {
  const [R, X] = [loop.parts.R - start.parts.R, loop.parts.X - start.parts.X];
  const room = limit - start.parts.start;
  if (X <= 0 && start.parts.X <= 0) return (limit - start.value) / (loop.value - start.value);
  const a = R ** 2 + X ** 2;
  const b = 2 * (start.parts.R * R + start.parts.X * X);
  const c = start.parts.R ** 2 + start.parts.X ** 2 - Math.max(0, room) ** 2;
  return (-b + Math.sqrt(Math.max(0, b ** 2 - 4 * a * c))) / (2 * a);
}

/** The loop (Ω) an earth fault at the end has to get through: as designed or as measured, whichever is the greater. */
function faultLoop(study: WayStudy): number | undefined {
  const greatest = Math.max(designLoop(study)?.value ?? 0, exactReading(study.Zs)?.value ?? 0);
  return greatest > 0 ? greatest : undefined;
}

/** What the protective conductor has to be for the fault that flows in its circuit. */
export const protectiveAtFault = memoByObject((study: WayStudy): ProtectiveNeed | undefined => {
  if (study.supply.earthing !== "TT") return protectiveNeed(study, () => faultLoop(study));
  const need = protectiveNeed(study);
  if (need?.method !== "table" || suffices(need)) return need;
  const earth = leastEarth(study);
  const byRcd = earth === undefined ? undefined : protectiveByRcd(study, earth);
  return byRcd && suffices(byRcd) ? byRcd : need;
});

/** Ω of the electrode a fault goes through, or of the loop where that read less by metal in parallel. */
function leastEarth(study: WayStudy): number | undefined {
  const fact = electrodeOf(study);
  const electrode = fact && exactReading({ value: fact.args.value, fact });
  const known = [electrode, exactReading(study.Zs)].flatMap((one) => (one && one.value > 0 ? [one.value] : []));
  return known.length === 0 ? undefined : Math.min(...known);
}

/** How a reading of Zs stands to the board's impedance and R1+R2. */
export interface LoopAgreement {
  readonly Zs: ExactReading;
  /** Zs went off the lower end of the scale: it is at most this. */
  readonly atMost: boolean;
  readonly R1R2: ExactReading | undefined;
  readonly board: (ExactReading & { readonly name: "Ze" | "Zdb" }) | undefined;
  readonly expected: Calculated | undefined;
  readonly tolerance: Calculated;
  /** The gravest thing that can be said of it; nothing where the figures agree. */
  readonly verdict: "below-line" | "below-board" | "below-conductors" | "from-origin" | "low" | "high" | undefined;
}

/** Holds Zs against what it is made of. Says nothing where a parallel path is recorded and the reading is low. */
export const loopAgreement = memoByObject((study: WayStudy): LoopAgreement | undefined => {
  const most = mostOf(study.Zs);
  const Zs = exactReading(study.Zs) ?? most;
  if (!Zs || study.isSpare || study.supply.earthing === "TT") return undefined;
  const R1R2 = exactReading(study.R1R2);
  const board = study.boardImpedance;
  const expected = board && R1R2 ? totalLoop(board.value, R1R2.value, board.name) : undefined;
  const floor = practiceOf("loop-floor");
  const share = practiceOf("loop-share");
  const byShare = expected ? share.value * expected.value : 0;
  const tolerance = byShare > floor.value ? { ...share, steps: share.steps, value: byShare, unit: "Ω" } : floor;
  const found = { Zs, atMost: Zs === most, R1R2, board, expected, tolerance };
  return { ...found, verdict: verdictOf(study, found) };
});

/**
 * Whether the two figures stand in each other's place: Zs is the smaller, and with the board's impedance it comes to what
 * is written as R1+R2, which the length fits no better. Rounding and the meter's last digits are a few hundredths.
 */
function interchangedWithR1R2({ expectedR1R2 }: WayStudy, { Zs, R1R2, board }: LoopAgreement): boolean {
  if (!R1R2 || !board || Zs.value >= R1R2.value) return false;
  const offLength = ({ value }: ExactReading): number => (expectedR1R2 ? Math.abs(value - expectedR1R2.value) : 0);
  if (offLength(R1R2) < offLength(Zs)) return false;
  const rounding = practiceOf("loop-below").value;
  return board.value > rounding && !exceeds(Math.abs(R1R2.value - board.value - Zs.value), rounding);
}

/** The same of a circuit by itself, where it is reported. */
export function areInterchanged(study: WayStudy): boolean {
  const found = loopAgreement(study);
  return found?.verdict !== undefined && interchangedWithR1R2(study, found);
}

/** The same of a circuit in one clause, for a finding on its Zs; nothing where they are not. */
export function interchangedWords(study: WayStudy, found: LoopAgreement): string | undefined {
  const { Zs, R1R2, board } = found;
  if (!R1R2 || !board || !interchangedWithR1R2(study, found)) return undefined;
  return `Zs ${ohms(Zs.value)} and R1+R2 ${ohms(R1R2.value)} seem interchanged: ${board.name} ${ohms(board.value)} and ${ohms(Zs.value)} come to ${ohms(board.value + Zs.value)}.`;
}

/**
 * Whether Zs agrees with R1+R2 as it was read and not with what it should be by the length: two tests made apart then say
 * the same, and the length is what is questionable.
 */
export function loopBearsOut(study: WayStudy, byLength: number): boolean {
  const found = loopAgreement(study);
  if (!found?.expected || !found.board) return false;
  const { Zs, board, expected, tolerance } = found;
  return (
    !exceeds(Math.abs(Zs.value - expected.value), tolerance.value) &&
    exceeds(Math.abs(Zs.value - board.value - byLength), tolerance.value)
  );
}

/** The electrode a circuit relies on: its own, its board's, that of a board above, or the installation's. */
export function electrodeOf({ facts, context }: WayStudy) {
  if (facts.has("earthing")) return facts.one("electrode");
  const own = [context.board, ...context.upstream.map(({ board }) => board)].find((one) => one.facts.has("earthing"));
  return own ? own.facts.one("electrode") : context.supply?.one("electrode");
}

/** How a reading of Zs stands to the electrode it goes through: far more than that is a joint on the way to it. */
export function aboveElectrode(study: WayStudy) {
  const Zs = exactReading(study.Zs);
  if (!Zs || study.isSpare || study.supply.earthing !== "TT") return undefined;
  const fact = electrodeOf(study);
  const electrode = fact && exactReading({ value: fact.args.value, fact });
  if (!electrode) return undefined;
  const share = practiceOf("loop-electrode");
  const network = declaredImpedance("TT");
  const R1R2 = exactReading(study.R1R2)?.value ?? 0;
  const most = share.value * electrode.value + network.value + R1R2;
  return exceeds(Zs.value, most) ? { Zs, electrode, most, share, network } : undefined;
}

/**
 * A reading of Zs that is a fraction of the electrode it should go through: the earth of the supply, which should have
 * been left behind, is still joined. Where the supply is TT itself, its bonded pipes often earth better than the rod.
 */
export function belowElectrode(study: WayStudy) {
  const Zs = exactReading(study.Zs);
  if (!Zs || study.isSpare || study.supply.earthing !== "TT" || study.facts.has("parallel-path")) return undefined;
  if (study.context.supply?.one("earthing")?.args.system.value === "TT") return undefined;
  const fact = electrodeOf(study);
  const electrode = fact && exactReading({ value: fact.args.value, fact });
  if (!fact || !electrode) return undefined;
  const share = practiceOf("loop-electrode");
  const least = electrode.value / share.value;
  return fallsShort(Zs.value, least) ? { Zs, electrode, least, share } : undefined;
}

/** The most a loop can be that reads below the meter's scale. */
function mostOf(reading: ReadingAt | undefined): ExactReading | undefined {
  const value = reading && quantityOf(reading.value);
  return reading && value?.sign === "<"
    ? { value: value.value, decimals: value.decimals, fact: reading.fact }
    : undefined;
}

function verdictOf(
  study: WayStudy,
  { Zs, atMost, R1R2, board, expected, tolerance }: Omit<LoopAgreement, "verdict">,
): LoopAgreement["verdict"] {
  const allowance = practiceOf("loop-below").value;
  const parallel = hasMetalBeside(study);
  // A reading of R1+R2 that is itself in doubt is asked about where it stands, and Zs is not compared with it.
  const uncertainty = R1R2 && r1r2InUncertainty(study);
  if (expected && !atMost && uncertainty !== "low" && exceeds(Zs.value, expected.value + tolerance.value))
    return fitsFeeder(study, Zs.value, tolerance.value) ? undefined : "high";
  if (parallel) return belowLine(study, Zs.value) ? "below-line" : undefined;
  // What a distributor declares is the most its loop may have: less is no news.
  const most = board?.fact.provenance === "declared";
  if (board && !most && fallsShort(Zs.value, board.value - allowance)) return "below-board";
  if (uncertainty === "high") return undefined;
  if (R1R2 && fallsShort(Zs.value, R1R2.value - allowance)) return "below-conductors";
  if (most) return undefined;
  if (expected && !atMost && fromOrigin(study, Zs.value, expected.value)) return "from-origin";
  return expected && fallsShort(Zs.value, expected.value - tolerance.value) ? "low" : undefined;
}

/**
 * Whether Zs is what was read at the end of the feeder with R1+R2, and that is more than Zdb: then the two readings at the
 * board are what disagrees, and each of its circuits would repeat it.
 */
function fitsFeeder(study: WayStudy, Zs: number, tolerance: number): boolean {
  const feeder = study.context.upstream.length > 0 ? feederLoop(study.context) : undefined;
  const R1R2 = exactReading(study.R1R2)?.value;
  return (
    feeder !== undefined &&
    R1R2 !== undefined &&
    isReadLow(feeder) &&
    !exceeds(Math.abs(Zs - feeder.expected - R1R2), tolerance)
  );
}

/** Ω of the line alone by its length, of a circuit with one far point: metal in parallel lowers the earth, never the line. */
export const lineAlone = (study: WayStudy): Calculated | undefined =>
  study.isRing || !study.length ? undefined : expectedConductor(study, "line");

function belowLine(study: WayStudy, value: number): boolean {
  const line = lineAlone(study);
  return line !== undefined && lengthMismatch({ value, sign: "=" }, line.value)?.kind === "low";
}

/** Whether R1+R2 is far from what length and sizes, or the ends and points of a ring, say it should be. */
export function r1r2InUncertainty(study: WayStudy): "high" | "low" | undefined {
  const latest = latestDead(study, "R1+R2");
  const quantity = quantityOf(latest?.fact.args.value);
  if (!latest || !quantity) return undefined;
  if (quantity.value <= 0) return "low";
  if (study.isRing && studyRing(study).quarter["L-E"]) {
    const mismatch = r1r2Mismatch(study, quantity.value);
    return mismatch && (mismatch === "below" ? "low" : "high");
  }
  const expected = expectedR1R2At(study, latest.test);
  return expected && lengthMismatch(quantity, expected.value)?.kind;
}

/** Whether a circuit of a board further out was calculated from the origin, the feeder left out. */
function fromOrigin(study: WayStudy, Zs: number, expected: number): boolean {
  // Two readings that are each a few digits out may meet the sum by chance where the feeder is hardly anything. The
  // origin is asked last: a way that never asks need not be checked again when it changes.
  if (study.context.upstream.length === 0 || !exceeds(expected - Zs, practiceOf("loop-below").value * 3)) return false;
  const R1R2 = exactReading(study.R1R2)?.value;
  const Ze = R1R2 === undefined ? undefined : originImpedance(study.context)?.value;
  return R1R2 !== undefined && Ze !== undefined && Math.abs(Zs - (Ze + R1R2)) < practiceOf("loop-exact").value;
}

/** Ze as noted for the supply. */
export function originImpedance({ supply }: Pick<Context, "supply">): ExactReading | undefined {
  const fact = supply?.one("Ze");
  return fact && exactReading({ value: fact.args.value, fact });
}

/** The RCD that would clear a fault to earth through this loop, and its own limit. */
export function rcdDisconnects(study: WayStudy, Zs: number): { rcd: Rcd; limit: Calculated } | undefined {
  for (const rcd of study.rcds) {
    const limit = rcdLoopLimit(rcd.sensitivity);
    if (limit && Zs <= limit.value) return { rcd, limit };
  }
  return undefined;
}
