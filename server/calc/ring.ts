import { Memo } from "../memo/memo.ts";
import { conductorResistance } from "../tables/conductors.ts";
import { ringContinuity, ringRules } from "../tables/ring.ts";
import type { Source } from "../tables/source.ts";
import { combine, fromFormula, lasting } from "../tables/source.ts";
import { known, rowOf, sourceOf } from "../tables/table.ts";
import { r1r2PerMetre, resistancePerMetre } from "./conductor-resistance.ts";
import { reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { metres, milliohms, ohms, plain, step, worked } from "./result.ts";

/** End-to-end readings of a ring, Ω. */
interface RingEnds {
  readonly r1: number;
  readonly rn: number;
  readonly r2: number;
}

/** Expected line-neutral reading (Ω) at every point, opposite ends cross-connected: (r1 + rn)/4. */
export function quarterLineNeutral({ r1, rn }: RingEnds): Calculated {
  return quarter("(r1 + rn) / 4", r1, rn, continuity("quarter-line-neutral"));
}

/** Expected line-cpc reading (Ω) half way round, and R1+R2 of the circuit: (r1 + r2)/4. */
export function quarterLineCpc({ r1, r2 }: RingEnds): Calculated {
  return quarter("(r1 + r2) / 4", r1, r2, continuity("quarter-line-cpc"));
}

function quarter(formula: string, first: number, second: number, source: Source): Calculated {
  const value = (first + second) / 4;
  return worked(value, "Ω", fromFormula(source), () => [
    reproducible(
      formula,
      [
        [first, ohms],
        [second, ohms],
      ],
      {
        write: (one, other) => `(${one} + ${other}) / 4`,
        compute: (one, other) => (one + other) / 4,
      },
      [value, ohms],
    ),
  ]);
}

/**
 * Reading (Ω) at a fraction of the way round (0 at the board, 0.5 opposite), opposite ends cross-connected at the board:
 * two paths in parallel, each part of one conductor and the rest of the other. Undefined for an open ring, or one without resistance, which the
 * formula does not describe.
 */
export function readingAt(first: number, second: number, fraction: number): Calculated | undefined {
  const total = first + second;
  if (!(total > 0 && Number.isFinite(total))) return undefined;
  const one = fraction * first + (1 - fraction) * second;
  const other = fraction * second + (1 - fraction) * first;
  const value = (one * other) / total;
  return worked(value, "Ω", fromFormula(continuity("quarter-line-cpc")), () => {
    const formula = "R(x) = [x·ra + (1−x)·rb] × [x·rb + (1−x)·ra] / (ra + rb)";
    return [
      step("x, the share of the way round", "", plain(fraction, 3)),
      reproducible(
        formula,
        [
          [one, ohms],
          [other, ohms],
          [total, ohms],
        ],
        {
          write: (left, right, both) => `${left} × ${right} / ${both}`,
          compute: (left, right, both) => (left * right) / both,
        },
        [value, ohms],
      ),
    ];
  });
}

/** Least and greatest reading a sound ring can show, Ω: at the board, and half way round. */
interface Span {
  readonly least: Calculated;
  readonly greatest: Calculated;
}

export function expectedSpan(first: number, second: number): Span | undefined {
  const least = readingAt(first, second, 0);
  const greatest = readingAt(first, second, 0.5);
  return least === undefined || greatest === undefined ? undefined : { least, greatest };
}

/** What an unfused spur adds to both rounds, Ω; length in m, sizes in mm². Undefined for a size without data. */
interface SpurAddition {
  readonly lineNeutral: Calculated;
  readonly lineCpc: Calculated;
}

export function spurAddition({
  length,
  line,
  cpc,
}: {
  length: number;
  line: number;
  cpc: number;
}): SpurAddition | undefined {
  const lineNeutral = spurOver(length, r1r2PerMetre(line, line));
  const lineCpc = spurOver(length, r1r2PerMetre(line, cpc));
  return lineNeutral === undefined || lineCpc === undefined ? undefined : { lineNeutral, lineCpc };
}

function spurOver(length: number, perMetre: Calculated | undefined): Calculated | undefined {
  if (perMetre === undefined) return undefined;
  const value = length * perMetre.value;
  return worked(value, "Ω", fromFormula(combine(perMetre.source, continuity("spur"))), () => [
    step("the spur adds", `${metres(length)} × ${milliohms(perMetre.value)}/m`, ohms(value)),
  ]);
}

/** Longest advisable unfused spur (m): an eighth of the cable from its start to the furthest point of the ring. */
export function longestSpur(furthest: number): Calculated {
  const value = furthest / 8;
  const steps = [step("longest spur, 1/8 of the way to the furthest point", `${metres(furthest)} / 8`, metres(value))];
  return {
    value,
    unit: "m",
    steps,
    source: spurRule,
  };
}

const spurRule = lasting({ ref: "IET On-Site Guide, spurs of ring final circuits", standing: "quoted" });

/** r2/r1 for the same length: by tabulated resistance, 12.1/7.41 = 1.633 for 2.5/1.5, not by area. */
export function cpcRatio(line: number, cpc: number): Calculated | undefined {
  const r1 = resistancePerMetre(line);
  const r2 = resistancePerMetre(cpc);
  if (r1 === undefined || r2 === undefined) return undefined;
  const known = ratios.of(r1, () => new Map());
  const before = known.get(r2);
  if (before) return before;
  const fresh = ratioOf(r1, r2);
  known.set(r2, fresh);
  return fresh;
}

/** A size has one resistance, the same object each time. */
const ratios = new Memo<Calculated, Map<Calculated, Calculated>>();

function ratioOf(r1: Calculated, r2: Calculated): Calculated {
  const value = r2.value / r1.value;
  const steps = [step("r2 / r1", `${milliohms(r2.value)} / ${milliohms(r1.value)}`, plain(value, 3))];
  return {
    value,
    unit: "",
    steps,
    source: fromFormula({ ref: conductorResistance.ref, standing: r2.source.standing }),
  };
}

/** The most by which r1 and rn may differ, and a point may differ from its expectation (Ω): common practice. */
export const ringTolerance: Calculated = {
  value: 0.05,
  unit: "Ω",
  steps: [step("tolerance between like readings of a ring", "", ohms(0.05))],
  source: lasting({ ref: "Common practice, ring final circuit test", standing: "practice" }),
};

/** A rule of 433.1.204 that is a number: rating (A), size (mm²), capacity (A), fuse of a spur (A), floor area (m²). */
export function ringRule(
  key: "csa" | "csa-mineral" | "capacity" | "fused-spur" | "spurs-per-point" | "area",
): Calculated {
  const { value, source } = known(ringRules, { key }, "value");
  const row = rowOf(ringRules, { key })?.facts;
  const unit = row?.unit ?? "";
  return {
    value,
    unit,
    steps: [step(row?.rule ?? key, "", `${plain(value)}${/^(?:|ratio)$/.test(unit) ? "" : ` ${unit}`}`)],
    source,
  };
}

/** The ratings (A) of a device that may protect a ring. */
export const ringRatings: readonly number[] = [30, 32];

function continuity(key: string): Source {
  const row = rowOf(ringContinuity, { key });
  if (row === undefined) throw new Error(`${ringContinuity.id} lacks ${key}`);
  return sourceOf(ringContinuity, row, "expected");
}
