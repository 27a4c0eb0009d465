/** What the loop of a circuit cannot be below before it is measured: what was read of it dead, or its cable by itself. */
import { totalLoop } from "../calc/loop-impedance.ts";
import { type Calculated, ohms } from "../calc/result.ts";
import { asRead, exactReading, type ReadingAt } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { quantityOf } from "../model/values.ts";
import { designBoardImpedance, designLoop, hotR1R2, r1r2InUncertainty } from "./loop.ts";

interface LeastLoop {
  /** Ω: cold where it was read, warm where it is calculated. */
  readonly loop: Calculated;
  /** R1+R2 as it was read. */
  readonly reading?: ReadingAt;
  /** What makes the loop, as a sentence begins: "R1+R2 1.90 Ω and Ze 0.30 Ω make a Zs of 2.20 Ω". */
  readonly words: string;
}

/** Nothing where Zs was read, or where the design as a whole gives it: that is judged by itself. */
export function leastLoop(study: WayStudy): LeastLoop | undefined {
  if (quantityOf(study.Zs?.value) || study.supply.earthing === "TT") return undefined;
  const reading = study.R1R2;
  const read = exactReading(reading);
  if (reading && read && !r1r2InUncertainty(study)) {
    const words = `R1+R2 ${ohms(read.value)}`;
    const start = study.facts.has("earthing") ? undefined : designBoardImpedance(study.context);
    if (!start)
      return {
        reading,
        loop: asRead(read.value),
        words: `${words} alone is`,
      };
    const name = study.boardImpedance?.name ?? "Zdb";
    const loop = totalLoop(start.value, read.value, name);
    return {
      reading,
      loop: { ...loop, steps: [...start.steps, ...loop.steps] },
      words: `${words} and ${name} ${ohms(start.value)} make a Zs of ${ohms(loop.value)},`,
    };
  }
  const cable = designLoop(study) ? undefined : hotR1R2(study);
  return cable && { loop: cable, words: `The R1+R2 of the cable alone is ${ohms(cable.value)} warm,` };
}
