/** R1+R2 of a board's circuits beside what length and sizes give. */
import type { Calculated } from "../calc/result.ts";
import { memoInPlace } from "../circuit/kept.ts";
import { type ExactReading, exactReading } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { BoardInPlace } from "../model/installation.ts";
import { expectedR1R2At, latestDead } from "./dead.ts";

interface StudiedBoard extends BoardInPlace {
  readonly studies: readonly WayStudy[];
}

export interface AgainstLength {
  readonly study: WayStudy;
  readonly read: ExactReading;
  readonly expected: Calculated;
}

/** Circuits whose R1+R2 was measured to a figure and whose length and cable are known; rings are judged by their ends. */
export const againstLength = memoInPlace(({ studies }: StudiedBoard): readonly AgainstLength[] =>
  studies.flatMap((study) => {
    if (study.isSpare || study.isRing || study.facts.has("parallel-path")) return [];
    const read = exactReading(study.R1R2);
    const latest = latestDead(study, "R1+R2");
    const expected = latest && expectedR1R2At(study, latest.test);
    return read && expected && read.fact.provenance === "measured" ? [{ study, read, expected }] : [];
  }),
);

export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  const [low, high] = [sorted[Math.ceil(middle) - 1] ?? 0, sorted[Math.floor(middle)] ?? 0];
  return (low + high) / 2;
}
