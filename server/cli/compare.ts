import { comparisonReport, rowsReport } from "../reports/compare/report.ts";
import { paragraph, type Report, type Section, table, together } from "../reports/setting/document.ts";
import { counted } from "../text/words.ts";
import { compareJson } from "./compare-json.ts";
import { compareVersions, differs, type VersionComparison, type Whole } from "./compare-pairs.ts";
import { exit } from "./exit.ts";
import { type Setting, written } from "./reporting.ts";
import { tidy } from "./run/cache.ts";
import { Pace } from "./run/pace.ts";
import { jsonText, refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { type LoadedVersion, versionsNamed } from "./versions.ts";

export interface CompareOptions {
  readonly format: Setting | "json";
  readonly exitCode?: boolean;
  readonly stdinPath?: string;
  readonly cache: boolean;
  readonly threads?: number;
}

/** `wayfile compare`: a schedule beside its revision, or the brief beside what was built. */
export async function compare(args: readonly string[], options: CompareOptions, terminal: Terminal): Promise<number> {
  const versions = await versionsNamed(args, options, terminal);
  if ("failure" in versions) return refuse(versions.failure, terminal);
  const [before, ...built] = versions;
  if (!before || built.length === 0) return refuse("Two versions are compared: name the other one as well.", terminal);
  const empty = versions.find(({ schedules, single }) => single && schedules.length === 0);
  if (empty) return refuse(`“${empty.called}” holds nothing that can be compared.`, terminal);
  // What could not be read is not compared, and a person has to know.
  const unread = versions.flatMap((version) => version.failures);
  if (versions.every(({ schedules, same }) => schedules.length + same === 0)) {
    terminal.err(sentences([...new Set(unread)]));
    return refuse("There is nothing to compare in either.", terminal);
  }
  const submissions = built.flatMap((after) => submissionsIn(after, before));
  const all = await comparedBeside(before, submissions, options, terminal);
  if (options.format === "json") terminal.out(jsonText(compareJson(all)));
  else terminal.out(written(reportOf(before, all, options.format), options.format, terminal));
  const failures = [...new Set([...unread, ...all.flatMap((one) => one.failures)])];
  terminal.err(sentences(failures));
  if (failures.length > 0) return exit.failed;
  return options.exitCode && all.some(differs) ? exit.errors : exit.clean;
}

/** By threads, where there is much to compare, and with what an earlier run kept. */
async function comparedBeside(
  before: LoadedVersion,
  others: readonly LoadedVersion[],
  options: CompareOptions,
  terminal: Terminal,
): Promise<readonly VersionComparison[]> {
  const { program, count = 1 } = terminal.threads ?? {};
  const cache = options.cache ? terminal.cache : undefined;
  const pace = new Pace(terminal, false);
  const all = await compareVersions(before, others, {
    cache,
    program,
    threads: { room: count, wanted: options.threads },
    signal: new AbortController().signal,
    done: (done, of) => (done < of ? pace.breathe(() => `${done} of ${counted(of, "schedule")} compared`) : undefined),
  });
  pace.end();
  if (cache) tidy(cache);
  return all;
}

/** A folder beside one brief holds submissions to it, unless the brief's own file is among them. */
function submissionsIn(after: LoadedVersion, before: LoadedVersion): readonly LoadedVersion[] {
  const [brief, ...others] = before.schedules;
  if (!before.single || after.single || !brief || others.length > 0 || after.schedules.length < 2) return [after];
  if (after.schedules.some(({ path }) => brief.path === path || brief.path.endsWith(`/${path}`))) return [after];
  const [first, ...rest] = after.schedules.map((one) => ({
    ...after,
    called: `${after.called.replace(/\/$/, "")}/${one.path}`,
    schedules: [one],
    single: true,
    failures: [],
  }));
  return first ? [{ ...first, failures: after.failures }, ...rest] : [after];
}

/** A comment on a code host holds some 65 000 signs: about so many places. */
const placesInComment = 60;

function reportOf({ called }: LoadedVersion, all: readonly VersionComparison[], format: Setting): Report {
  const [first, ...others] = all;
  if (first && others.length === 0) return reportOfOne(first, format);
  const comparisons = all.flatMap((one) => one.comparisons.map(({ comparison }) => comparison));
  return rowsReport(called, comparisons);
}

function reportOfOne(compared: VersionComparison, format: Setting): Report {
  const { comparisons, came, went, before, after } = compared;
  const extent = format === "markdown" ? { places: Math.ceil(placesInComment / Math.max(comparisons.length, 1)) } : {};
  const reports = comparisons.map(({ comparison, was, path }): Report => {
    const report = comparisonReport(comparison, extent);
    return was === undefined ? report : { ...report, lead: [...report.lead, `The file was ${was} and is ${path}.`] };
  });
  const whole = together(reports) ?? sameReport(compared);
  const files = scheduleSection(went, came);
  if (files.length === 0 && comparisons.length < 2) return whole;
  const lead = [`Before: ${before}`, `After: ${after}`, countLine(compared)];
  const several = comparisons.length < 2 ? whole : { ...whole, title: `Compared: ${scheduleCount(compared)}` };
  return { ...several, lead: comparisons.length === 1 ? whole.lead : lead, sections: [...files, ...whole.sections] };
}

const countLine = (compared: VersionComparison): string =>
  compared.compared === 0
    ? "No installation is in both: nothing was compared."
    : `${scheduleCount(compared, compared.compared)} ${compared.compared === 1 ? "was" : "were"} compared; ${compared.comparisons.length} differ${compared.comparisons.length === 1 ? "s" : ""}.`;

/** A file of boards that others use is no installation. */
function scheduleCount({ hasParts, comparisons }: VersionComparison, count = comparisons.length): string {
  return `${count} ${hasParts ? "schedule" : "installation"}${count === 1 ? "" : "s"}`;
}

function sameReport(compared: VersionComparison): Report {
  const { before, after } = compared;
  return {
    title: "Compared",
    lead: [`Before: ${before}`, `After: ${after}`],
    sections:
      compared.compared === 0 ? [] : [{ level: 1, title: "The same", blocks: [paragraph(countLine(compared))] }],
    cautions: "What the versions state is compared, not how it is written. Comments are not compared.",
  };
}

function scheduleSection(went: readonly Whole[], came: readonly Whole[]): Section[] {
  const row = (word: string) => (one: Whole) => [word, one.path, one.title, contentOf(one)];
  const rows = [...went.map(row("gone")), ...came.map(row("new"))];
  const blocks = table(["", "file", "installation", "content"], rows);
  return blocks.length > 0 ? [{ level: 1, title: "Installations that are in one version only", blocks }] : [];
}

const contentOf = ({ boards, ways }: Whole): string => `${counted(boards, "board")}, ${ways} ways`;
