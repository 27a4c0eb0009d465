/** What a reading is compared with, and what is left to it: asked of the plan of tests, for any day's reading of it. */
import type { Quantity } from "../../model/values.ts";
import type { Entry } from "../../readings/entries.ts";
import { type Bound, governing, type PlannedTest } from "../../readings/planned.ts";

export interface Judged {
  /** “at most 1.37 Ω”. */
  readonly limit: string;
  /** “23 % left”. */
  readonly left: string;
  readonly passes: boolean;
  readonly bound: Pick<Bound, "sense" | "value">;
}

export type Limits = (entry: Entry) => Judged | undefined;

/** `entries` and `tests` are of one way, board or supply. */
export function limitsFor(entries: readonly Entry[], tests: readonly PlannedTest[]): Limits {
  const planned = new Map<string, PlannedTest>();
  const days = new Map<string, string | undefined>();
  for (const test of tests) {
    const { recorded } = test;
    if (!recorded || test.bounds.length === 0) continue;
    const same = entries.filter(
      ({ fact, reading }) => reading?.start === recorded.value.start && fact.segment === recorded.fact.segment,
    );
    // A pair of conductors that was read with all others has their figure.
    const entry = same.find(({ address }) => address.part === test.name) ?? same[0];
    if (!entry) continue;
    planned.set(slot(entry), test);
    days.set(slot(entry), entry.on);
  }
  const noted = new Set(entries.flatMap(({ address, on }) => (address.line?.word === "temperature" ? [on] : [])));
  return (entry) => {
    const test = planned.get(slot(entry));
    if (!test || !isQuantity(entry.reading)) return undefined;
    // A limit that was corrected for the temperature of one day is not that of another.
    const day = days.get(slot(entry));
    if (entry.on !== day && (noted.has(entry.on) || noted.has(day))) return undefined;
    return judged(entry, entry.reading, test);
  };
}

const isQuantity = (reading: Entry["reading"]): reading is Quantity => reading !== undefined && "sign" in reading;

const slot = ({ address: { line, part }, kind }: Entry): string =>
  [kind, line?.word, ...(line?.key ?? []), part].join("\0");

/** Of two bounds the one that fails, or the one with less room. */
function judged(entry: Entry, value: Quantity, test: PlannedTest): Judged | undefined {
  const left = governing(test.bounds, { fact: entry.fact, text: entry.shown, value });
  if (!left) return undefined;
  const { margin } = left;
  const { text, sense, value: most } = left.bound;
  return { limit: text, left: margin.text, passes: margin.passes, bound: { sense, value: most } };
}
