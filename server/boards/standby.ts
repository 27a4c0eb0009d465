/** Circuits on a source that takes over: what flows into a fault to earth then, and whether their device opens. */
import { exceeds } from "../calc/compare.ts";
import { type Calculated, rcdLoopLimit } from "../calc/index.ts";
import { amps, ohms, step, worked } from "../calc/result.ts";
import { type ProtectiveNeed, protectiveNeed } from "../circuit/protective.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import { exact } from "../model/values.ts";
import { designLoop } from "../readings/loop.ts";
import { combine, differing, summed } from "../tables/source.ts";
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
  return standbyOf(study.context).flatMap((source) => judged(source, study));
}

/** The sources that take over at a board: those that name it or a board before it, and those that name none. */
export const standbyOf = (context: Context): readonly Standby[] =>
  (context.supply?.all("standby") ?? []).filter((source) => supplies(source, context));

function supplies({ args }: Standby, context: Context): boolean {
  if (!args.boards) return true;
  const names = [context.board, ...context.upstream.map(({ board }) => board)].map(({ name }) => name);
  return args.boards.some(({ value }) => names.includes(value));
}

function judged(source: Standby, study: WayStudy): OnStandby[] {
  const { overcurrentLimit: limit, supply, context, rcds } = study;
  const { edition } = context;
  if (!limit || !edition) return [];
  const { loop, gives } = source.args;
  const opens = (Z: number): boolean => rcds.some(({ sensitivity }) => Z <= (rcdLoopLimit(sensitivity)?.value ?? 0));
  if (gives) {
    const needed = (supply.U0 * edition.cmin.value) / limit.exact;
    const least = worked(needed, "A", limit.source, () => [
      ...limit.steps,
      step("current the device needs to open in time", "", amps(needed)),
    ]);
    const value: Calculated = { value: gives.value, unit: "A", steps: [], source: asStated };
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
  return protectiveNeed(study, Z);
}

/** The loop of the circuit with the source in place of the supply: all that lies behind the origin stays. */
function loopOn(own: number, study: WayStudy): Calculated | undefined {
  const designed = designLoop(study);
  const Ze = exact(study.context.supply?.one("Ze")?.args.value);
  if (!designed || Ze === undefined || designed.value < Ze) return undefined;
  const behind = designed.value - Ze;
  const value = own + behind;
  const origin: Calculated = { value: Ze, unit: "Ω", steps: [], source: asStated };
  const rest = { value: behind, source: differing(designed, origin) };
  const source = combine(summed({ value: own, source: asStated }, rest), designed.source);
  // The band of the designed loop is that of what lies behind the origin, as a share of the sum.
  const remembered = summed({ value: own, source: asStated }, rest).remembered;
  return worked(value, "Ω", remembered ? { ...source, remembered } : source, () => [
    ...designed.steps,
    step(
      "on the other source, Zs − Ze + its own Ze",
      `${ohms(designed.value)} − ${ohms(Ze)} + ${ohms(own)}`,
      ohms(value),
    ),
  ]);
}

const asStated = { ref: "", standing: "printed" } as const;
