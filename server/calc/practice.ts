import { Memo } from "../memo/memo.ts";
import { practiceValues } from "../tables/practice.ts";
import { rcdLimits } from "../tables/rcd-limits.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import type { Calculated } from "./result.ts";
import { looked, milliamps, plain, step } from "./result.ts";

/** A threshold of practiceValues by its short name, with common practice as its source. */
export function practiceOf(key: string): Calculated {
  const row = rowOf(practiceValues, { key });
  if (row === undefined) throw new Error(`${practiceValues.id} lacks ${key}`);
  return thresholds.of(row, computePracticeOf);
}

type PracticeRow = (typeof practiceValues.rows)[number];

const thresholds = new Memo<PracticeRow, Calculated>();

function computePracticeOf(row: PracticeRow): Calculated {
  const { item, value, unit } = row.facts;
  const source = { ...sourceOf(practiceValues, row, "value"), ref: `${practiceValues.ref}, ${item}` };
  return { value, unit, steps: [step(item, "", `${plain(value, 4)}${unit ? ` ${unit}` : ""}`)], source };
}

/** A limit for additional protection: rated residual current (A), depth (mm), rating (A). */
export function rcdLimit(key: "additional" | "concealed" | "outdoors" | "ev-dc"): Calculated {
  const row = rowOf(rcdLimits, { key });
  if (row === undefined) throw new Error(`${rcdLimits.id} lacks ${key}`);
  return limits.of(row, computeRcdLimit);
}

type LimitRow = (typeof rcdLimits.rows)[number];

const limits = new Memo<LimitRow, Calculated>();

function computeRcdLimit(row: LimitRow): Calculated {
  const { item, value, unit } = row.facts;
  const source = sourceOf(rcdLimits, row, "value");
  return {
    value,
    unit,
    steps: [looked(item, source.ref, unit === "A" ? milliamps(value) : `${plain(value)} ${unit}`)],
    source,
  };
}
