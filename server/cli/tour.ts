/** What a folder of schedules shows, for someone who sees Wayfile for the first time, and what to try next. */
import type { Finding } from "../rules/frame/rule.ts";
import { type TerminalText, term } from "../text/terminal.ts";
import type { LoadedFile } from "../workspace/project.ts";
import { framed } from "./frame.ts";
import type { CheckRun, JudgedFile, Placed } from "./judge.ts";
import { counted, type ReportOptions } from "./report.ts";
import { surveyOf } from "./survey.ts";

export interface TourOptions extends ReportOptions {
  /** How this program is called here. */
  readonly program: string;
}

const mostFindings = 4;

/** Whether a file says by its name that it is there to show faults. */
export const isFaultyByName = ({ path }: LoadedFile): boolean => path.slice(path.lastIndexOf("/")).includes("faulty");

export function tour(judgement: CheckRun, args: readonly string[], options: TourOptions): TerminalText {
  const { colours } = options;
  const opening = term`Each schedule is read, what every reading ought to be is worked out, and each is compared with its limit.\n`;
  const overview = judgement.files.map((file) => fileEntry(file, options));
  const frame = { places: judgement.places, ...options };
  const unexpected = judgement.files
    .filter(({ file }) => !isFaultyByName(file))
    .flatMap(({ findings }) => findings.filter(({ finding }) => finding.severity === "error"))
    .map((placed) => framed(placed, frame));
  const next = term`${colours.bold("What to try next")}\n${suggestions(judgement, args, options)}`;
  const whole = fullest(judgement.files);
  const shown = whole ? [term`${colours.bold("One of the faults, as check shows it")}\n\n${framed(whole, frame)}`] : [];
  return term.join([opening, ...overview, ...unexpected, ...shown, next], "\n");
}

/** Of the faults that are shown briefly, the one with the most working. */
function fullest(files: readonly JudgedFile[]): Placed | undefined {
  const brief = files.filter(({ file }) => isFaultyByName(file)).flatMap(({ findings }) => telling(findings));
  const lines = ({ finding }: Placed) => finding.working?.split("\n").length ?? 0;
  return brief
    .filter(({ finding }) => finding.limit)
    .sort((a, b) => lines(b) - lines(a) || b.at.offset - a.at.offset)[0];
}

function fileEntry({ file, findings }: JudgedFile, options: TourOptions): TerminalText {
  const { colours, shown } = options;
  const { boards, ways } = surveyOf([file.model]);
  const title = file.model.installations.map(({ head }) => `“${head.title}”`).join(", ");
  const holds = boards > 0 ? `${counted(boards, "board")}, ${counted(ways, "way")}` : "no boards of its own";
  const about = [title, holds].filter((part) => part !== "").join(", ");
  const lines = [colours.bold(shown(file.path)), term`  ${about}`, term`  ${verdict(findings, options)}`];
  if (isFaultyByName(file)) {
    const shownHere = telling(findings);
    lines.push(...shownHere.map((placed) => term`    ${brief(placed, options)}`));
    if (shownHere.length < findings.length) lines.push(term`    and ${findings.length - shownHere.length} more`);
  }
  return term`${term.join(lines, "\n")}\n`;
}

function verdict(findings: readonly Placed[], { colours }: TourOptions): TerminalText {
  const count = (severity: Finding["severity"]) =>
    findings.filter(({ finding }) => finding.severity === severity).length;
  const errors = count("error");
  const warnings = count("warning");
  const found = [
    ...(errors > 0 ? [colours.red(counted(errors, "error"))] : []),
    ...(warnings > 0 ? [colours.yellow(counted(warnings, "warning"))] : []),
    ...(count("information") > 0 ? [`${count("information")} for information`] : []),
  ];
  return term.join([...(errors + warnings === 0 ? [colours.green("clean")] : []), ...found], ", ");
}

function brief({ finding, at }: Placed, { colours }: TourOptions): TerminalText {
  return term`${colours.dim(`line ${at.start.line + 1}`)}  ${finding.message}`;
}

/** The gravest findings first, those with a limit before others, one of each kind; in the order of the file. */
function telling(findings: readonly Placed[]): Placed[] {
  const weight = ({ finding }: Placed) =>
    ({ error: 0, warning: 2, information: 4 })[finding.severity] + (finding.limit ? 0 : 1);
  const kinds = new Map<string, Placed>();
  for (const placed of findings.toSorted((a, b) => weight(a) - weight(b))) {
    if (!kinds.has(placed.finding.check)) kinds.set(placed.finding.check, placed);
  }
  return [...kinds.values()].slice(0, mostFindings).sort((a, b) => a.at.offset - b.at.offset);
}

function suggestions({ files }: CheckRun, args: readonly string[], { shown, program }: TourOptions): TerminalText {
  const faulty = files.find(({ file, findings }) => isFaultyByName(file) && findings.length > 0);
  const example = faulty && telling(faulty.findings).find(({ finding }) => finding.limit);
  const rows: readonly (readonly [string, string])[] = [
    ...(faulty
      ? [[`check ${quoted(shown(faulty.file.path))}`, "every finding, with its working and source"] as const]
      : []),
    [`explain ${example?.finding.check ?? "loop/zs-over-limit"}`, "why a check matters, and a sample that passes it"],
    ["explain Zs", "what a word of the language means"],
    [`fmt --check ${args.map(quoted).join(" ") || "."}`, "whether the files are formatted"],
    ["--help", "all there is"],
  ];
  const width = Math.max(...rows.map(([command]) => command.length));
  return term.join(rows.map(([command, why]) => term`  ${program} ${command.padEnd(width)}   ${why}\n`));
}

const quoted = (path: string): string => (/^[\w./+,@%-]+$/.test(path) ? path : `"${path}"`);
