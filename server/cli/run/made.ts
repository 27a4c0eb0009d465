import type { Comparison } from "../../reports/compare/comparison.ts";
import type { RegisterResult, ScheduleResult } from "../../results/result.ts";
import type { LayoutResult } from "../layout.ts";

/** What can be made of schedules, and be kept. */
export interface Made {
  readonly findings: ScheduleResult;
  readonly register: RegisterResult;
  /** How a file is laid out, and the same with the present words. */
  readonly layout: LayoutResult;
  readonly upgrade: LayoutResult;
  /** Of two versions of one schedule. */
  readonly comparison: Comparison;
}
export type Keeping = keyof Made;

/** What is made of one schedule. */
export type Making = Exclude<Keeping, "comparison">;

export type TaskResult<K extends Keeping = "findings"> = Made[K] | { readonly failure: string };
