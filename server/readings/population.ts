/** R1+R2 of a board's circuits beside what length and sizes give. */
import type { Calculated } from "../calc/result.ts";
import { memoInPlace } from "../circuit/kept.ts";
import { type ExactReading, exactReading } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import type { BoardInPlace } from "../model/installation.ts";
import { type Quantity, quantityOf } from "../model/values.ts";
import { expectedR1R2At, latestDead } from "./dead.ts";

interface StudiedBoard extends BoardInPlace {
  readonly studies: readonly WayStudy[];
}

export interface AgainstLength {
  readonly way: Way;
  /** m, where it is known. */
  readonly length: number | undefined;
  readonly read: ExactReading;
  /** As it was written. */
  readonly quantity: Quantity;
  readonly expected: Calculated;
}

/** Circuits whose R1+R2 was measured to a figure and whose length and cable are known; rings are judged by their ends. */
export const againstLength = memoInPlace(({ studies }: StudiedBoard): readonly AgainstLength[] =>
  studies.flatMap((study) => {
    if (study.isSpare || study.isRing || study.facts.has("parallel-path")) return [];
    const read = exactReading(study.R1R2);
    const quantity = quantityOf(study.R1R2?.value);
    const latest = latestDead(study, "R1+R2");
    const expected = latest && expectedR1R2At(study, latest.test);
    if (!read || !quantity || !expected || read.fact.provenance !== "measured") return [];
    return [{ way: study.way, length: study.length?.value, read, quantity, expected }];
  }),
);

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const [low, high] = [sorted[Math.ceil(middle) - 1] ?? 0, sorted[Math.floor(middle)] ?? 0];
  return (low + high) / 2;
}
