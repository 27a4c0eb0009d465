/** R2 as a part of R1+R2, by the sizes of the cable. */
import { fallsShort } from "../calc/compare.ts";
import { productStep } from "../calc/reproducible.ts";
import { type Calculated, ohms, plain, step } from "../calc/result.ts";
import { ratioOf } from "../circuit/cpc.ts";
import type { ExactReading } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { exact, type FactOf, type Quantity, quantityOf } from "../model/values.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { expectedConductorAt, latestDead, lengthMismatch } from "./dead.ts";
import { loopAgreement } from "./loop.ts";

interface R2Share {
  readonly R2: Quantity;
  readonly own: FactOf<"dead", "R2">;
  readonly both: FactOf<"dead", "R1+R2">;
  readonly R1R2: number;
  readonly ratio: Calculated | undefined;
  /** What R2 should be of the sum, and how far it may be from that; missing without the sizes. */
  readonly expected: number | undefined;
  readonly room: number;
  /** Line and protective conductor changed places. */
  readonly swapped: boolean;
}

/** Both readings of a radial, where both are there. */
export function r2Share(study: WayStudy): R2Share | undefined {
  const both = latestDead(study, "R1+R2")?.fact;
  const own = latestDead(study, "R2")?.fact;
  const R1R2 = exact(both?.args.value);
  const R2 = quantityOf(own?.args.value);
  if (study.isSpare || study.isRing || !both || !own || R1R2 === undefined || R2?.sign !== "=") return undefined;
  const { cable } = study;
  const { partLeast, radialRatio } = deadTestPractice;
  // An armour may be as much below its greatest resistance as a poor joint is above a core's: its share tells nothing.
  const ratio = cable?.cpcBy === "armour" ? undefined : ratioOf(cable);
  const bare = { R2, own, both, R1R2, ratio };
  if (!ratio) return { ...bare, expected: undefined, room: 0, swapped: false };
  const share = ratio.value / (1 + ratio.value);
  const expected = R1R2 * share;
  // A quarter of the ratio, as a departure of R2 itself at a given sum.
  const room = Math.max(radialRatio.value * expected * (1 - share), partLeast.value);
  const off = Math.abs(R2.value - expected) > room;
  const swapped = off && ratio.value > 1 && Math.abs(R1R2 - R2.value - expected) <= room;
  return { ...bare, expected, room, swapped };
}

/** Whether R2 is far from what its length and size give. */
export function r2OffLength(study: WayStudy): boolean {
  const latest = latestDead(study, "R2");
  const quantity = quantityOf(latest?.fact.args.value);
  const expected = latest && study.length && expectedConductorAt(study, "cpc", latest.test);
  return !!quantity && !!expected && lengthMismatch(quantity, expected.value) !== undefined;
}

interface R2OfLoop {
  readonly R2: Quantity;
  readonly own: FactOf<"dead", "R2">;
  readonly Zs: ExactReading;
  readonly board: ExactReading & { readonly name: "Ze" | "Zdb" };
  /** What R2 should be of what Zs leaves for the circuit. */
  readonly expected: Calculated;
  /** How far two readings of a loop may be apart. */
  readonly tolerance: Calculated;
}

/**
 * R2 on its own against its part of what Zs leaves for R1+R2, where nothing else tells: no R1+R2, no length. Metal in
 * parallel lowers Zs as well, so only an R2 that is far too small says anything.
 */
export function r2BelowLoop(study: WayStudy): R2OfLoop | undefined {
  const { cable } = study;
  const own = latestDead(study, "R2")?.fact;
  const R2 = quantityOf(own?.args.value);
  if (!own || R2?.sign !== "=" || study.isSpare || study.isRing || study.facts.has("parallel-path")) return undefined;
  const agreement = loopAgreement(study);
  const ratio = cable?.cpcBy !== undefined ? undefined : ratioOf(cable);
  if (!agreement?.board || agreement.atMost || agreement.R1R2 || !ratio || r2OffLength(study)) return undefined;
  const { Zs, board, tolerance } = agreement;
  const left = Zs.value - board.value;
  const share = ratio.value / (1 + ratio.value);
  const value = left * share;
  if (!fallsShort(R2.value, value - tolerance.value)) return undefined;
  const steps = [
    ...ratio.steps,
    step(`R1+R2 = Zs − ${board.name}`, `${ohms(Zs.value)} − ${ohms(board.value)}`, ohms(left)),
    productStep(
      "R2 = (R1+R2) × ratio / (1 + ratio)",
      [
        [left, ohms],
        [share, (one) => plain(one, 3)],
      ],
      [value, ohms],
    ),
  ];
  return { R2, own, Zs, board, tolerance, expected: { value, unit: "Ω", steps, source: ratio.source } };
}
