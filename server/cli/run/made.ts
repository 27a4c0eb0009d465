import type { RegisterResult, ScheduleResult } from "../../results/result.ts";

/** What can be made of a schedule. */
export interface Made {
  readonly findings: ScheduleResult;
  readonly register: RegisterResult;
}
export type Making = keyof Made;

export type TaskResult<M extends Making = "findings"> = Made[M] | { readonly failure: string };
