/** What a folder of schedules shows, for someone who sees Wayfile for the first time, and what to try next. */
import type { FileResult, ResultFinding } from "../results/result.ts";
import type { Severity } from "../rules/frame/rule.ts";
import { type TerminalText, term } from "../text/terminal.ts";
import { counted } from "../text/words.ts";
import { framed } from "./formats/frame.ts";
import { type ReportOptions, shownOf } from "./formats/reporter.ts";

export interface TourOptions extends ReportOptions {
  /** How this program is called here. */
  readonly program: string;
}

const mostFindings = 4;

/** Whether a file says by its name that it is there to show faults. */
export const isFaultyByName = ({ path }: Pick<FileResult, "path">): boolean =>
  path.slice(path.lastIndexOf("/") + 1).includes("faulty");

export function tour(files: readonly FileResult[], args: readonly string[], options: TourOptions): TerminalText {
  const { colours } = options;
  const opening = term`Each schedule is read, what every reading ought to be is worked out, and each is compared with its limit.\n`;
  const overview = files.map((file) => fileEntry(file, options));
  const unexpected = files
    .filter((file) => !isFaultyByName(file))
    .flatMap(({ findings }) => findings.filter(({ severity }) => severity === "error"))
    .map((finding) => framed(finding, options));
  const next = term`${colours.bold("What to try next")}\n${suggestions(files, args, options)}`;
  const whole = fullest(files);
  const shown = whole
    ? [term`${colours.bold("One of the faults, as check shows it")}\n\n${framed(whole, options)}`]
    : [];
  return term.join([opening, ...overview, ...unexpected, ...shown, next], "\n");
}

/** Of the faults that are shown briefly, the one with the most working. */
function fullest(files: readonly FileResult[]): ResultFinding | undefined {
  const brief = files.filter(isFaultyByName).flatMap(({ findings }) => telling(findings));
  const lines = ({ working }: ResultFinding) => working?.split("\n").length ?? 0;
  return brief.filter(({ limit }) => limit).sort((a, b) => lines(b) - lines(a) || b.at.offset - a.at.offset)[0];
}

function fileEntry(file: FileResult, options: TourOptions): TerminalText {
  const { colours, shown } = options;
  const { boards, ways, titles } = file.holds;
  const findings = shownOf(file, true);
  const title = titles.map((one) => `“${one}”`).join(", ");
  const holds = boards > 0 ? `${counted(boards, "board")}, ${counted(ways, "way")}` : "no boards of its own";
  const about = [title, holds].filter((part) => part !== "").join(", ");
  const lines = [colours.bold(shown(file.path)), term`  ${about}`, term`  ${verdict(findings, options)}`];
  if (isFaultyByName(file)) {
    const shownHere = telling(findings);
    lines.push(...shownHere.map((finding) => term`    ${brief(finding, options)}`));
    if (shownHere.length < findings.length) lines.push(term`    and ${findings.length - shownHere.length} more`);
  }
  return term`${term.join(lines, "\n")}\n`;
}

function verdict(findings: readonly ResultFinding[], { colours }: TourOptions): TerminalText {
  const count = (wanted: Severity) => findings.filter(({ severity }) => severity === wanted).length;
  const errors = count("error");
  const warnings = count("warning");
  const found = [
    ...(errors > 0 ? [colours.red(counted(errors, "error"))] : []),
    ...(warnings > 0 ? [colours.yellow(counted(warnings, "warning"))] : []),
    ...(count("information") > 0 ? [`${count("information")} for information`] : []),
  ];
  return term.join([...(errors + warnings === 0 ? [colours.green("clean")] : []), ...found], ", ");
}

function brief({ message, at }: ResultFinding, { colours }: TourOptions): TerminalText {
  return term`${colours.dim(`line ${at.start.line + 1}`)}  ${message}`;
}

/** The gravest findings first, those with a limit before others, one of each kind; in the order of the file. */
function telling(findings: readonly ResultFinding[]): ResultFinding[] {
  const weight = ({ severity, limit }: ResultFinding) =>
    ({ error: 0, warning: 2, information: 4 })[severity] + (limit ? 0 : 1);
  const kinds = new Map<string, ResultFinding>();
  for (const finding of findings.toSorted((a, b) => weight(a) - weight(b))) {
    if (!kinds.has(finding.check)) kinds.set(finding.check, finding);
  }
  return [...kinds.values()].slice(0, mostFindings).sort((a, b) => a.at.offset - b.at.offset);
}

function suggestions(
  files: readonly FileResult[],
  args: readonly string[],
  { shown, program }: TourOptions,
): TerminalText {
  const faulty = files.find((file) => isFaultyByName(file) && file.findings.length > 0);
  const example = faulty && telling(faulty.findings).find(({ limit }) => limit);
  const rows: readonly (readonly [string, string])[] = [
    ...(faulty ? [[`check ${quoted(shown(faulty.path))}`, "every finding, with its working and source"] as const] : []),
    [`explain ${example?.check ?? "loop/zs-over-limit"}`, "why a check matters, and a sample that passes it"],
    ["explain Zs", "what a word of the language means"],
    [`fmt --check ${args.map(quoted).join(" ") || "."}`, "whether the files are formatted"],
    ["--help", "all there is"],
  ];
  const width = Math.max(...rows.map(([command]) => command.length));
  return term.join(rows.map(([command, why]) => term`  ${program} ${command.padEnd(width)}   ${why}\n`));
}

const quoted = (path: string): string => (/^[\w./+,@%-]+$/.test(path) ? path : `"${path}"`);
