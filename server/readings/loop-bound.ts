/** A loop that is too high for its device whatever the device's own limit, which is not known, may be. */
import { exceeds } from "../calc/compare.ts";
import type { LoopBound } from "../calc/loop-bound.ts";
import { type Calculated, ohms, seconds } from "../calc/result.ts";
import { deviceName } from "../circuit/describe.ts";
import { overcurrentBoundOf } from "../circuit/overcurrent-limit.ts";
import { asRead, exactReading, type ReadingAt } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { quantityOf } from "../model/values.ts";
import { designLoop } from "./loop.ts";

interface AboveBound {
  readonly bound: LoopBound;
  /** Ω: as it was read, or as the design has it, warm. */
  readonly loop: Calculated;
  /** Missing where it is calculated. */
  readonly reading?: ReadingAt;
}

/** A reading is worth more than a prediction; one off the upper end of the scale may be no more than that end. */
export function aboveBound(study: WayStudy): AboveBound | undefined {
  const bound = boundOfLimit(study);
  if (!bound) return undefined;
  const limit = bound.limit.value;
  const reading = study.Zs;
  const read = reading && quantityOf(reading.value);
  if (
    reading &&
    read &&
    read.sign !== "<" &&
    (exceeds(read.value, limit) || (read.sign === ">" && read.value === limit))
  )
    return { bound, reading, loop: asRead(read.value) };
  const loop = exactReading(reading) ? undefined : designLoop(study);
  return loop && exceeds(loop.value, limit) ? { bound, loop } : undefined;
}

/** What bounds the limit of a circuit's device; nothing where that limit is known or stated, or an electrode decides. */
function boundOfLimit(study: WayStudy): LoopBound | undefined {
  if (study.overcurrentLimit || study.supply.earthing === "TT" || study.facts.has("max-Zs")) return undefined;
  return overcurrentBoundOf(study);
}

/** "0.91 Ω of a 32 A BS 88-3 device in 0.4 s" */
export const boundWords = ({ limit, of }: LoopBound): string =>
  `${ohms(limit.value)} of a ${deviceName(of)} device in ${seconds(of.time)}`;
