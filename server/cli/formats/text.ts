/** The report of a check for people: findings in their frames, then what was suppressed or asked, then one line of sums. */
import type { FileResult, Suppressed } from "../../results/result.ts";
import type { Totals } from "../../results/totals.ts";
import { firstOfEach } from "../../rules/frame/first-of-each.ts";
import { type TerminalText, term } from "../../text/terminal.ts";
import { counted } from "../../text/words.ts";
import type { Colours, Tint } from "../colours.ts";
import { framed, placeText } from "./frame.ts";
import { leftOut, type MakeReporter, type ReportOptions, shownOf } from "./reporter.ts";

export const textReporter: MakeReporter = (options) => ({
  file: (file) => term.join(framesOf(file, options).map((frame) => term`${frame}\n`)),
  end: (totals) => {
    const { colours, shown } = options;
    if (options.quiet) return term``;
    const parts = [
      ...list(
        "Departures",
        totals.suppressed.flatMap((one) => (one.settings ? [] : [departure(one, options)])),
        colours,
      ),
      ...list("Suppressed by the settings", bySettings(totals, options), colours),
      ...list(
        "Open queries",
        totals.queries.map(({ text, at }) => term`${placeText(at, shown)}  “${text}”`),
        colours,
      ),
      ...(options.statistics ? list("Findings by check", statistics(totals), colours) : []),
    ];
    return term.join([...parts, term`${summaryLine(totals, options)}\n`], "\n");
  },
});

/** Of one kind in one file; who meets more has one cause to look for, not a thousand. */
const mostFrames = 1_000;

function framesOf(file: FileResult, options: ReportOptions): TerminalText[] {
  const { first, more } = firstOfEach(shownOf(file, options.info), mostFrames);
  return [...first.map((finding) => framed(finding, options)), ...leftOut(file, options, more)];
}

function list(title: string, lines: readonly TerminalText[], colours: Colours): TerminalText[] {
  if (lines.length === 0) return [];
  return [term`${colours.bold(title)}\n${term.join(lines.map((line) => term`  ${line}\n`))}`];
}

function departure({ finding, rule, reason, by }: Suppressed, { shown, colours }: ReportOptions): TerminalText {
  const about = rule === finding.check ? finding.check : `${finding.check} (${rule})`;
  return term`${placeText(by ?? finding.at, shown)}  ${colours.dim(about)}  “${reason}”`;
}

/** An entry of the settings a line, with how much it suppresses. */
function bySettings({ suppressed }: Totals, { shown }: ReportOptions): TerminalText[] {
  const entries = Map.groupBy(
    suppressed.filter(({ settings }) => settings !== undefined),
    ({ settings, rule }) => `${settings?.path} ${settings?.line} ${rule}`,
  );
  return [...entries.values()].flatMap(([first, ...others]) =>
    first?.settings
      ? [
          term`${shown(first.settings.path)}:${first.settings.line + 1}  ${first.rule}  ${counted(others.length + 1, "finding")}  “${first.reason}”`,
        ]
      : [],
  );
}

/** How often each check has something to say, the most frequent first. */
function statistics({ checks }: Totals): TerminalText[] {
  const sorted = [...checks].sort(([a, one], [b, other]) => other - one || (a < b ? -1 : 1));
  const width = Math.max(0, ...sorted.map(([, count]) => String(count).length));
  return sorted.map(([check, count]) => term`${String(count).padStart(width)}  ${check}`);
}

export function summaryLine(totals: Totals, { colours, info }: Pick<ReportOptions, "colours" | "info">): TerminalText {
  const { error, warning } = totals.counts;
  const [held = "", errors = "", warnings = "", rest = ""] = sums(totals, info);
  return term`${held}: ${tinted(error, errors, colours.red)}, ${tinted(warning, warnings, colours.yellow)}, ${rest}`;
}

/** The same without colours. */
export function sumsText(totals: Totals, { info }: Pick<ReportOptions, "info">): string {
  const [held, ...found] = sums(totals, info);
  return `${held}: ${found.join(", ")}`;
}

function sums(totals: Totals, info: boolean): string[] {
  const { files, counts, boards, ways, unproven } = totals;
  const open = [
    ...some(totals.queries.length, "open query", "open queries"),
    ...some(totals.departures, "departure"),
    ...some(totals.limitations, "limitation"),
    ...none(totals.suppressed.filter(({ settings }) => settings).length, "suppressed by the settings"),
    ...none(totals.leftOut, "of checks that were left out"),
  ];
  return [
    [counted(files, "file"), counted(boards, "board"), counted(ways, "way")].join(", "),
    counted(counts.error, "error"),
    `${counted(counts.warning, "warning")}${unproven > 0 ? ` (${unproven} unproven)` : ""}`,
    `${counts.information} for information${!info && counts.information > 0 ? " (not shown)" : ""}${open.length > 0 ? `; ${open.join(", ")}` : ""}`,
  ];
}

const none = (count: number, what: string): string[] => (count > 0 ? [`${count} ${what}`] : []);

const some = (count: number, one: string, many?: string): string[] => (count > 0 ? [counted(count, one, many)] : []);

const tinted = (count: number, text: string, tint: Tint): string | TerminalText => (count > 0 ? tint(text) : text);
