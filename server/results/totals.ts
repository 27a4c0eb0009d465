/** What a run adds up to. */
import type { Severity } from "../rules/frame/rule.ts";
import type { FileResult, OpenQuery, Suppressed } from "./result.ts";

export interface Totals {
  readonly files: number;
  readonly boards: number;
  readonly ways: number;
  readonly departures: number;
  readonly limitations: number;
  readonly counts: Readonly<Record<Severity, number>>;
  /** Of the findings, those that wait for a figure to be looked up. */
  readonly unproven: number;
  readonly queries: readonly OpenQuery[];
  readonly suppressed: readonly Suppressed[];
  /** How many findings are of checks that were not wanted. */
  readonly leftOut: number;
  /** How often each check has something to say. */
  readonly checks: ReadonlyMap<string, number>;
}

export class Sum implements Totals {
  files = 0;
  boards = 0;
  ways = 0;
  departures = 0;
  limitations = 0;
  unproven = 0;
  leftOut = 0;
  readonly counts: Record<Severity, number> = { error: 0, warning: 0, information: 0 };
  readonly queries: OpenQuery[] = [];
  readonly suppressed: Suppressed[] = [];
  readonly checks = new Map<string, number>();

  add({ findings, more, holds }: FileResult): void {
    this.files++;
    this.boards += holds.boards;
    this.ways += holds.ways;
    this.departures += holds.departures;
    this.limitations += holds.limitations;
    for (const query of holds.queries) this.queries.push(query);
    for (const { check, severity, verdict } of findings) {
      this.#count(check, severity, 1);
      if (verdict === "unproven") this.unproven++;
    }
    for (const { check, severity, count } of more) this.#count(check, severity, count);
  }

  #count(check: string, severity: Severity, times: number): void {
    this.counts[severity] += times;
    this.checks.set(check, (this.checks.get(check) ?? 0) + times);
  }
}
