/**
 * A test to be made, before or after it was: what it is called, what it should read and by what sums, the limit it is
 * compared with, and the reading where there is one. Worksheets, hints and blank lines are made of the same.
 */
import { type Calculated, megohms, milliseconds, ohms, percent, plain, type Step, seconds } from "../calc/result.ts";
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
  readonly sense: "most" | "least";
  readonly value: number;
  readonly text: string;
  readonly source: Source;
  /** Which of several limits it is: of cold conductors, of hot ones, of the RCD. */
  readonly which?: "cold" | "hot" | "by RCD";
}

export interface Recorded {
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

/** Shows a figure in the unit its test is written in. */
export function inUnit(value: number, unit: PlannedTest["unit"]): string {
  switch (unit) {
    case "MΩ":
      return megohms(value);
    case "kA":
      return `${plain(value / 1000)} kA`;
    case "ms":
      return value < 1 ? milliseconds(value) : seconds(value);
    default:
      return ohms(value);
  }
}

export function expecting(of: Calculated | undefined, unit: PlannedTest["unit"]): Expected | undefined {
  if (!of || !Number.isFinite(of.value)) return undefined;
  return { value: of.value, text: inUnit(of.value, unit), working: brief(of.steps), source: of.source };
}

/** The last line of the working, without what it comes to: that stands beside it. */
function brief(steps: readonly Step[]): string {
  const last = steps.at(-1);
  if (!last) return "";
  return last.numbers === "" ? last.formula : `${last.formula} = ${last.numbers}`;
}

const sayings = { most: "at most", least: "at least" } as const;

export function bound(
  sense: Bound["sense"],
  of: Calculated | undefined,
  unit: PlannedTest["unit"],
  which?: Bound["which"],
): Bound[] {
  if (!of || !Number.isFinite(of.value)) return [];
  const text = `${sayings[sense]} ${inUnit(of.value, unit)}`;
  return [{ sense, value: of.value, text, source: of.source, ...(which ? { which } : {}) }];
}

/** A value of a fact as it stands in the text. */
export function recordedAs(fact: Fact | undefined, name: string): Recorded | undefined {
  const value = fact?.args[name] as AnyValue | undefined;
  if (!fact || !value || Array.isArray(value)) return undefined;
  const text = isAbsent(value) ? value.absent : fact.segment.text.slice(value.start, value.end);
  return { fact, text: text.replace(/\s+/g, " "), value };
}

export const quantityOf = (recorded: Recorded | undefined): Quantity | undefined =>
  recorded && "sign" in recorded.value ? recorded.value : undefined;

export interface Margin {
  readonly passes: boolean;
  readonly text: string;
  /** The same with the limit in it, the margin first: `31 % left of `, `65 % over `. */
  readonly upTo: string;
}

/** What is left between a reading and a bound. Nothing where the reading shows nothing about it. */
export function marginTo({ sense, value: limit }: Bound, recorded: Recorded | undefined): Margin | undefined {
  const quantity = quantityOf(recorded);
  if (!quantity || limit <= 0 || !Number.isFinite(quantity.value)) return undefined;
  const { value, sign } = quantity;
  if (sense === "most") return sign === ">" && value < limit ? undefined : under(value, limit, sign);
  return sign === "<" && value > limit ? undefined : above(value, limit, sign);
}

function under(value: number, limit: number, sign: Quantity["sign"]): Margin {
  const left = ((limit - value) / limit) * 100;
  if (left < 0) return { passes: false, text: `over by ${whole(-left)}`, upTo: `${whole(-left)} over` };
  if (sign === ">") return { passes: false, text: "over it", upTo: "over" };
  return { passes: true, text: `${whole(left)} left`, upTo: `${whole(left)} left of` };
}

function above(value: number, limit: number, sign: Quantity["sign"]): Margin {
  if (value < limit || sign === "<") {
    const share = whole((value / limit) * 100);
    return { passes: false, text: `only ${share} of it`, upTo: `only ${share} of` };
  }
  const times = value / limit;
  const many = times >= 100 ? "far above it" : `${plain(times, times < 10 ? 1 : 0)} times it`;
  const text = times < 1.05 ? "just on it" : many;
  return { passes: true, text, upTo: text.replace(/ it$/, "") };
}

/** Under one hundredth the share is shown as it is, so that nothing over a limit reads as nothing. */
const whole = (share: number): string => percent(share < 1 ? Number(share.toPrecision(1)) : Math.round(share));
