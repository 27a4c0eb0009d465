/**
 * A test to be made, before or after it was: what it is called, what it should read and by what sums, the limit it is
 * compared with, and the reading where there is one. Worksheets, hints and blank lines are made of the same.
 */

import { figure } from "../calc/figure.ts";
import { type Margin, marginOf, type Sense } from "../calc/margin.ts";
import { type Calculated, kiloamps, megohms, type Step } from "../calc/result.ts";
import { valueAt } from "../model/fact-values.ts";
import { type AnyValue, type Fact, isAbsent, type Quantity } from "../model/values.ts";
import type { Source } from "../tables/source.ts";

export type TestStep =
  | "continuity"
  | "ring-ends"
  | "ring-rounds"
  | "insulation"
  | "polarity"
  | "electrode"
  | "loop"
  | "fault"
  | "rcd"
  | "phase-sequence"
  | "function";

/** What a reading should be, and in one breath why. */
export interface Expected {
  readonly value: number;
  readonly text: string;
  readonly working: string;
  readonly source: Source;
}

/** What a reading is compared with. */
export interface Bound {
  readonly sense: Sense;
  readonly value: number;
  /** `at most 1.09 Ω cold` */
  readonly text: string;
  readonly source: Source;
  /** Which of several limits it is: `cold`, `hot`, `by the RCD`, `corrected to 12 °C`. It stands in the text too. */
  readonly which?: string;
}

interface Recorded {
  readonly fact: Fact;
  /** As it is written. */
  readonly text: string;
  readonly value: AnyValue;
}

export interface PlannedTest {
  readonly step: TestStep;
  readonly live: boolean;
  /** The quantity as it is called: `R1+R2`, `L-N at S3`. */
  readonly name: string;
  /** The unit a reading is written in; empty where a word is the answer. */
  readonly unit: "Ω" | "MΩ" | "kA" | "ms" | "";
  readonly expected?: Expected | undefined;
  readonly bounds: readonly Bound[];
  readonly recorded?: Recorded | undefined;
  /** Of a round of a ring: the point it is read at. */
  readonly point?: string;
  /** Of a reading at one point beside that of the circuit: the point. */
  readonly place?: string;
  /** How its line begins in a live block. */
  readonly write?: string | undefined;
}

const baseUnits = { Ω: "Ω", MΩ: "Ω", kA: "A", ms: "s", "": "" } as const;

/** Names that are no plain words are in quotes. */
export const writtenName = (name: string): string =>
  /^[\p{L}\p{N}][\p{L}\p{N}_-]*$/u.test(name) ? name : `"${name.replace(/["\\]/g, "\\$&")}"`;

/** A test whose answer is a word. */
export const word = (step: TestStep, name: string, fact: Fact | undefined, write?: string): PlannedTest => ({
  step,
  live: true,
  name,
  write,
  unit: "",
  bounds: [],
  recorded: recordedAs(fact, "verdict"),
});

/** Shows a figure in the unit its test is written in. */
export const inUnit = (value: number, unit: PlannedTest["unit"]): string =>
  unit === "MΩ" ? megohms(value) : unit === "kA" ? kiloamps(value) : figure(value, baseUnits[unit]);

/** Its words are written when somebody reads them: most plans are asked for what was recorded and what bounds it. */
export function expecting(of: Calculated | undefined, unit: PlannedTest["unit"]): Expected | undefined {
  if (!of || !Number.isFinite(of.value)) return undefined;
  return {
    value: of.value,
    get text() {
      return inUnit(of.value, unit);
    },
    get working() {
      return brief(of.steps);
    },
    source: of.source,
  };
}

/** The last line of the working, without what it comes to: that stands beside it. */
function brief(steps: readonly Step[]): string {
  const last = steps.at(-1);
  if (!last) return "";
  return last.numbers === "" ? last.formula : `${last.formula} = ${last.numbers}`;
}

export const sayings = { most: "at most", least: "at least" } as const;

export function bound(
  sense: Bound["sense"],
  of: Calculated | undefined,
  unit: PlannedTest["unit"],
  which?: Bound["which"],
): Bound[] {
  if (!of || !Number.isFinite(of.value)) return [];
  return [
    {
      sense,
      value: of.value,
      get text() {
        return `${sayings[sense]} ${inUnit(of.value, unit)}${which ? ` ${which}` : ""}`;
      },
      source: of.source,
      ...(which ? { which } : {}),
    },
  ];
}

/** A value of a fact as it stands in the text. */
export function recordedAs(fact: Fact | undefined, name: string): Recorded | undefined {
  const value = valueAt(fact, name);
  if (!fact || !value) return undefined;
  const text = isAbsent(value) ? value.absent : fact.segment.text.slice(value.start, value.end);
  return { fact, text: text.replace(/\s+/g, " "), value };
}

export const quantityOf = (recorded: Recorded | undefined): Quantity | undefined =>
  recorded && "sign" in recorded.value ? recorded.value : undefined;

/** What is left between a reading and a bound. Nothing where the reading shows nothing about it. */
export function marginTo({ sense, value: limit }: Bound, recorded: Recorded | undefined): Margin | undefined {
  const quantity = quantityOf(recorded);
  return quantity && marginOf(sense, quantity.value, limit, quantity.sign);
}

export interface Left {
  readonly bound: Bound;
  readonly margin: Margin;
}

/** Of several limits the governing one: that which fails, or leaves least. */
export const governing = (bounds: readonly Bound[], recorded: Recorded | undefined): Left | undefined =>
  bounds
    .flatMap((bound): Left[] => {
      const margin = marginTo(bound, recorded);
      return margin ? [{ bound, margin }] : [];
    })
    .sort((one, other) => one.margin.share - other.margin.share)[0];
