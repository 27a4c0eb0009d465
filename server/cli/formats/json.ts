/** The report of a check for programs. Its shape is described in client/guide/command-line.md; a change of it needs a new `version`. */
import type { LimitVerdict } from "../../calc/verdict.ts";
import type { FileResult, ResultFinding, ResultPlace } from "../../results/result.ts";
import type { Totals } from "../../results/totals.ts";
import type { Amount, Severity } from "../../rules/frame/rule.ts";
import type { Position } from "../../text/lines.ts";
import { type TerminalText, term } from "../../text/terminal.ts";
import { jsonPart } from "../say.ts";
import { type MakeReporter, type ReportOptions, shownOf } from "./reporter.ts";

export interface JsonRange {
  readonly start: Position;
  readonly end: Position;
}

type JsonAmount = Pick<Amount, "amount" | "unit">;

export interface JsonFinding {
  readonly check: string;
  readonly severity: Severity;
  readonly message: string;
  readonly range: JsonRange;
  readonly value: JsonAmount | null;
  /** `which` of several limits it is: "hot", "cold", "by the RCD"; null where there is one. */
  readonly limit: (JsonAmount & { readonly which: string | null }) | null;
  readonly margin: number | null;
  /** The margin as hovers, hints and reports word it: "31 % left". */
  readonly marginText: string | null;
  /** "unproven" fails by a figure from memory, but not if that is wrong in its favour; null where nothing is compared. */
  readonly verdict: LimitVerdict | null;
  readonly source: { readonly ref: string; readonly standing: string } | null;
  readonly working: string | null;
  readonly related: readonly { readonly path: string; readonly range: JsonRange; readonly message: string }[];
}

export interface JsonFile {
  readonly path: string;
  readonly findings: readonly JsonFinding[];
}

export interface JsonReport {
  readonly version: 1;
  readonly files: readonly JsonFile[];
  readonly summary: {
    readonly errors: number;
    readonly warnings: number;
    /** Of the findings, those that wait for a figure to be looked up. */
    readonly unproven: number;
    readonly informations: number;
    readonly files: number;
    readonly boards: number;
    readonly ways: number;
    /** By departures and by the settings of the repository. */
    readonly suppressed: number;
    /** Findings of checks that were not wanted. */
    readonly leftOut: number;
  };
}

/** Written piece by piece, so that a large run is never held whole. */
export const jsonReporter: MakeReporter = (options) => {
  let isFirst = true;
  const opening = term`{\n  "version": 1,\n  "files": [`;
  return {
    file: (file) => {
      const before = isFirst ? opening : term`,`;
      isFirst = false;
      return term`${before}\n    ${jsonPart(fileJson(file, options), 4)}`;
    },
    end: (totals): TerminalText => {
      const before = isFirst ? term`${opening}],` : term`\n  ],`;
      return term`${before}\n  "summary": ${jsonPart(summaryJson(totals), 2)}\n}\n`;
    },
  };
};

export const fileJson = (file: FileResult, options: Pick<ReportOptions, "info" | "shown">): JsonFile => ({
  path: options.shown(file.path),
  findings: shownOf(file, options.info).map((finding) => findingJson(finding, options)),
});

export const summaryJson = ({
  counts,
  unproven,
  files,
  boards,
  ways,
  suppressed,
  leftOut,
}: Totals): JsonReport["summary"] => ({
  errors: counts.error,
  warnings: counts.warning,
  unproven,
  informations: counts.information,
  files,
  boards,
  ways,
  suppressed: suppressed.length,
  leftOut,
});

function findingJson(finding: ResultFinding, { shown }: Pick<ReportOptions, "shown">): JsonFinding {
  const { check, severity, message, at, value, limit, margin, marginText, verdict, source, working, related } = finding;
  return {
    check,
    severity,
    message,
    range: rangeOf(at),
    value: value ? amountJson(value) : null,
    limit: limit ? { ...amountJson(limit), which: limit.which ?? null } : null,
    margin: margin ?? null,
    marginText: marginText ?? null,
    verdict: verdict ?? null,
    source: source ? { ref: source.ref, standing: source.standing } : null,
    working: working ?? null,
    related: related.map((one) => ({ path: shown(one.at.path), range: rangeOf(one.at), message: one.message })),
  };
}

const rangeOf = ({ start, end }: ResultPlace): JsonRange => ({
  start: { line: start.line, character: start.character },
  end: { line: end.line, character: end.character },
});

const amountJson = ({ amount, unit }: Amount): JsonAmount => ({ amount, unit });
