/** Circuits on a source that takes over: what flows into a fault to earth then, and whether their device opens. */
import { exceeds } from "../calc/compare.ts";
import { amps, type Calculated, ohms, step, worked } from "../calc/result.ts";
import { type ProtectiveNeed, protectiveNeed } from "../circuit/protective.ts";
import { asRead } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import { exact } from "../model/values.ts";
import { designLoop, rcdDisconnects } from "../readings/loop.ts";
import { asWritten, combine, differing, summed } from "../tables/source.ts";
import type { Standby } from "./fault-levels.ts";

/** How a circuit stands on one of its sources. */
export interface OnStandby {
  readonly source: Standby;
  /** Ω, or A where the source limits its current: what is compared with `limit`. */
  readonly value: Calculated;
  readonly limit: Calculated;
  /** The current is less than the device needs; otherwise the loop is too high for it. */
  readonly by: "current" | "loop";
  readonly holds: boolean;
  /** An RCD opens instead. */
  readonly byRcd: boolean;
}

/** The circuit on every source that supplies its board. Where a loop is not known, nothing is said of it. */
export function onStandby(study: WayStudy): readonly OnStandby[] {
  if (study.isSpare || study.facts.has("earthing")) return [];
  return standbyOfWay(study).flatMap((source) => judged(source, study));
}

/** The sources that take over at a board, or for some of its ways. */
export const standbyOf = (context: Context): readonly Standby[] =>
  (context.supply?.all("standby") ?? []).filter((source) => supplies(source, context));

/** The sources that take over for a circuit. */
export const standbyOfWay = ({ context, way }: Pick<WayStudy, "context" | "way">): readonly Standby[] =>
  (context.supply?.all("standby") ?? []).filter((source) => supplies(source, context, way.id));

/**
 * Whether a source supplies a board, or one way of it: one that names no circuits supplies all; one that names boards,
 * these and what they feed; one that names ways of a board, these and the boards behind them.
 */
function supplies({ args }: Standby, { board, upstream }: Context, way?: string): boolean {
  const { boards, board: divided, ways } = args;
  if (!boards && !divided && !ways) return true;
  const names = [board, ...upstream.map((above) => above.board)].map(({ name }) => name);
  if (boards?.some(({ value }) => names.includes(value))) return true;
  const fed = (id: string | undefined): boolean => !ways || ways.some(({ value }) => value === id);
  if (!divided && !ways) return false;
  const isThat = (name: string): boolean => divided === undefined || name === divided.value;
  if (isThat(board.name) && (way === undefined || fed(way))) return true;
  return upstream.some((above) => isThat(above.board.name) && fed(above.feeder?.id));
}

function judged(source: Standby, study: WayStudy): OnStandby[] {
  const { overcurrentLimit: limit, supply, context } = study;
  const { edition } = context;
  if (!limit || !edition) return [];
  const { loop, fault } = source.args;
  // Whatever it keeps up is no more than its greatest fault current.
  const gives = source.args.gives ?? fault;
  const opens = (Z: number): boolean => rcdDisconnects(study, Z) !== undefined;
  if (gives) {
    const needed = (supply.U0 * edition.cmin.value) / limit.exact;
    const least = worked(needed, "A", limit.source, () => [
      ...limit.steps,
      step("current the device needs to open in time", "", amps(needed)),
    ]);
    const value: Calculated = { value: gives.value, unit: "A", steps: [], source: asWritten };
    if (exceeds(needed, gives.value))
      return [{ source, value, limit: least, by: "current", holds: false, byRcd: opens(supply.U0 / gives.value) }];
  }
  const Z = loop && loopOn(loop.value, study);
  if (!Z) return [];
  const holds = !exceeds(Z.value, limit.value);
  return [{ source, value: Z, limit, by: "loop", holds, byRcd: opens(Z.value) }];
}

/**
 * The protective conductor in the fault that flows on a source; nothing where the device does not open in time there, which
 * is reported of the loop, or where an RCD opens instead.
 */
export function protectiveOn(study: WayStudy, source: Standby): ProtectiveNeed | undefined {
  const { edition } = study.context;
  const loop = source.args.loop && loopOn(source.args.loop.value, study);
  const gives = source.args.gives?.value;
  const kept = gives && edition ? (study.supply.U0 * edition.cmin.value) / gives : 0;
  const Z = Math.max(loop?.value ?? 0, kept);
  const limit = study.overcurrentLimit;
  if (study.supply.earthing === "TT" || Z <= 0 || !limit || exceeds(Z, limit.exact)) return undefined;
  return protectiveNeed(study, () => Z);
}

/** The loop of the circuit with the source in place of the supply: all that lies behind the origin stays. */
function loopOn(own: number, study: WayStudy): Calculated | undefined {
  const designed = designLoop(study);
  const Ze = exact(study.context.supply?.one("Ze")?.args.value);
  if (!designed || Ze === undefined || designed.value < Ze) return undefined;
  const behind = designed.value - Ze;
  const value = own + behind;
  const origin = asRead(Ze);
  const rest = { value: behind, source: differing(designed, origin) };
  const source = combine(summed({ value: own, source: asWritten }, rest), designed.source);
  // The band of the designed loop is that of what lies behind the origin, as a share of the sum.
  const remembered = summed({ value: own, source: asWritten }, rest).remembered;
  return worked(value, "Ω", remembered ? { ...source, remembered } : source, () => [
    ...designed.steps,
    step(
      "on the other source, Zs − Ze + its own Ze",
      `${ohms(designed.value)} − ${ohms(Ze)} + ${ohms(own)}`,
      ohms(value),
    ),
  ]);
}
