/** A comment for a pull request: sums, then the gravest findings as rows, then the rest counted by check. */
import type { ResultFinding } from "../../results/result.ts";
import type { Totals } from "../../results/totals.ts";
import { type Severity, severities } from "../../rules/frame/rule.ts";
import { type Markdown, md } from "../../text/markdown.ts";
import { lines, term } from "../../text/terminal.ts";
import { counted } from "../../text/words.ts";
import { type MakeReporter, shownOf } from "./reporter.ts";
import { sumsText } from "./text.ts";

/** A host drops a comment that is much longer without a word. */
const mostRows = 100;

export const markdownReporter: MakeReporter = (options) => {
  const rows: Readonly<Record<Severity, ResultFinding[]>> = { error: [], warning: [], information: [] };
  return {
    file: (file) => {
      for (const finding of shownOf(file, options.info)) {
        if (rows[finding.severity].length < mostRows) rows[finding.severity].push(finding);
      }
      return term``;
    },
    end: (totals) => {
      const shown = severities.flatMap((grade) => rows[grade]).slice(0, mostRows);
      const all = severities.reduce(
        (sum, grade) => sum + (grade === "information" && !options.info ? 0 : totals.counts[grade]),
        0,
      );
      const parts = [
        md`### Circuit schedules\n\n${sumsText(totals, options)}\n`,
        ...table(shown, options.shown),
        ...rest(all - shown.length, totals),
      ];
      return lines(md.join(parts, "\n").text);
    },
  };
};

function table(findings: readonly ResultFinding[], shown: (name: string) => string): Markdown[] {
  if (findings.length === 0) return [];
  const row = ({ severity, check, message, at }: ResultFinding): Markdown =>
    md`| ${severity} | ${shown(at.path)}:${at.start.line + 1} | ${message} | ${check} |\n`;
  return [md`| | where | what | check |\n| --- | --- | --- | --- |\n${md.join(findings.map(row))}`];
}

function rest(more: number, { checks }: Totals): Markdown[] {
  if (more <= 0) return [];
  const counts = [...checks].sort(([, a], [, b]) => b - a).slice(0, mostRows);
  const row = ([check, count]: readonly [string, number]): Markdown => md`| ${check} | ${count} |\n`;
  return [
    md`${counted(more, "more finding")} not shown. All of them by check:\n\n| check | count |\n| --- | --- |\n${md.join(counts.map(row))}`,
  ];
}
