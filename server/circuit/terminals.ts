/** Whether what a 90 °C cable is connected to stands the heat of its conductors. */
import { exceeds } from "../calc/compare.ts";
import type { Calculated } from "../calc/result.ts";
import { capacityWith } from "./overload.ts";
import type { WayStudy } from "./way.ts";

/** What ordinary accessories and switchgear are made for, °C. */
const usual = 70;

interface TerminalHeat {
  /** The current that heats the conductors, A: the design current, or the device's rating where none is known. */
  readonly current: number;
  readonly stated: boolean;
  /** What the cable carries with its conductors at 70 °C. */
  readonly limit: Calculated;
}

/** The current of a 90 °C cable beside what it carries at 70 °C; nothing where its terminals are stated to stand more. */
export function terminalHeat(study: WayStudy): TerminalHeat | undefined {
  const { cable, device, designCurrent, facts } = study;
  if (!cable || cable.insulation <= usual || study.isSpare || study.isRing) return undefined;
  // What a rewirable fuse takes off the capacity is for its slowness, not for the heat of the load.
  if (device?.family === "BS 3036") return undefined;
  if (facts.isUnread("terminals") || (facts.one("terminals")?.args.temperature.value ?? usual) > usual)
    return undefined;
  const limit = capacityWith(study, cable.line, usual);
  const current = designCurrent?.value ?? device?.rating;
  return limit && current !== undefined ? { current, stated: designCurrent !== undefined, limit } : undefined;
}

export const isTooHot = ({ current, limit }: TerminalHeat): boolean => exceeds(current, limit.value);
