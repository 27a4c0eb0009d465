/** The report of a check for programs. Its shape is described in the README; a change of it needs a new `version`. */

import type { LimitVerdict } from "../calc/verdict.ts";
import type { Amount, Severity } from "../rules/frame/rule.ts";
import type { Position } from "../text/lines.ts";
import { type CheckRun, type Placed, unprovenIn } from "./judge.ts";
import type { FindingLocation } from "./places.ts";

export interface JsonRange {
  readonly start: Position;
  readonly end: Position;
}

export interface JsonFinding {
  readonly check: string;
  readonly severity: Severity;
  readonly message: string;
  readonly range: JsonRange;
  readonly value: Amount | null;
  readonly limit: Amount | null;
  readonly margin: number | null;
  /** "unproven" fails by a figure from memory, but not if that is wrong in its favour; null where nothing is compared. */
  readonly verdict: LimitVerdict | null;
  readonly source: { readonly ref: string; readonly standing: string } | null;
  readonly working: string | null;
  readonly related: readonly { readonly path: string; readonly range: JsonRange; readonly message: string }[];
}

export interface JsonReport {
  readonly version: 1;
  readonly files: readonly { readonly path: string; readonly findings: readonly JsonFinding[] }[];
  readonly summary: {
    readonly errors: number;
    readonly warnings: number;
    /** Of the findings, those that wait for a figure to be looked up. */
    readonly unproven: number;
    readonly informations: number;
    readonly files: number;
    readonly boards: number;
    readonly ways: number;
  };
}

export interface JsonOptions {
  readonly info: boolean;
  shown(path: string): string;
}

export function jsonReport(judgement: CheckRun, options: JsonOptions): JsonReport {
  const { files, counts, survey } = judgement;
  return {
    version: 1,
    files: files.map(({ file, findings }) => ({
      path: options.shown(file.path),
      findings: findings
        .filter(({ finding }) => options.info || finding.severity !== "information")
        .map((placed) => findingJson(placed, judgement, options)),
    })),
    summary: {
      errors: counts.error,
      warnings: counts.warning,
      unproven: unprovenIn(judgement),
      informations: counts.information,
      files: files.length,
      boards: survey.boards,
      ways: survey.ways,
    },
  };
}

function findingJson({ finding, at }: Placed, { places }: CheckRun, { shown }: JsonOptions): JsonFinding {
  const { check, severity, message, value, limit, margin, verdict, source, working, related } = finding;
  return {
    check,
    severity,
    message,
    range: rangeOf(at),
    value: value ? amountJson(value) : null,
    limit: limit ? amountJson(limit) : null,
    margin: margin ?? null,
    verdict: verdict ?? null,
    source: source ? { ref: source.ref, standing: source.standing } : null,
    working: working ?? null,
    related: related.map((one) => {
      const stand = places.of(one.spot);
      return { path: shown(stand.file.path), range: rangeOf(stand), message: one.message };
    }),
  };
}

const rangeOf = ({ start, end }: FindingLocation): JsonRange => ({
  start: { line: start.line, character: start.character },
  end: { line: end.line, character: end.character },
});

const amountJson = ({ amount, unit }: Amount): Amount => ({ amount, unit });
