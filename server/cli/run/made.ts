import type { RegisterResult, ScheduleResult } from "../../results/result.ts";
import type { LayoutResult } from "../layout.ts";

/** What can be made of a schedule. */
export interface Made {
  readonly findings: ScheduleResult;
  readonly register: RegisterResult;
  /** How a file is laid out, and the same with the present words. */
  readonly layout: LayoutResult;
  readonly upgrade: LayoutResult;
}
export type Making = keyof Made;

export type TaskResult<M extends Making = "findings"> = Made[M] | { readonly failure: string };
