/** The report of a check for people: findings in their frames, then what was suppressed or asked, then one line of sums. */
import { firstOfEach } from "../rules/frame/first-of-each.ts";
import { wordSpot } from "../rules/frame/rule.ts";
import { type TerminalText, term } from "../text/terminal.ts";
import type { Colours, Tint } from "./colours.ts";
import { type Frame, framed, placeText } from "./frame.ts";
import { type CheckRun, type JudgedFile, unprovenIn } from "./judge.ts";

export interface ReportOptions {
  readonly colours: Colours;
  readonly info: boolean;
  shown(path: string): string;
}

export function textReport(judgement: CheckRun, options: ReportOptions): TerminalText {
  const frame = { places: judgement.places, ...options };
  const frames = judgement.files.flatMap((file) => framesOf(file, frame, options));
  const parts = [...frames, ...list("Departures", departures(judgement, options), options.colours)];
  parts.push(...list("Open queries", queries(judgement, options), options.colours));
  return term.join([...parts, term`${summaryLine(judgement, options)}\n`], "\n");
}

/** Of one kind in one file; who meets more has one cause to look for, not a thousand. */
const mostFrames = 1_000;

function framesOf({ file, findings }: JudgedFile, frame: Frame, { info, shown }: ReportOptions): TerminalText[] {
  const all = findings.filter(({ finding }) => info || finding.severity !== "information");
  const { first, more } = firstOfEach(
    all.map((placed) => ({ check: placed.finding.check, placed })),
    mostFrames,
  );
  return [
    ...first.map(({ placed }) => framed(placed, frame)),
    ...[...more].map(
      ([check, count]) =>
        term`${counted(count, "more finding")} of ${check} in ${shown(file.path)}; --format json lists all.\n`,
    ),
  ];
}

function list(title: string, lines: readonly TerminalText[], colours: Colours): TerminalText[] {
  if (lines.length === 0) return [];
  return [term`${colours.bold(title)}\n${term.join(lines.map((line) => term`  ${line}\n`))}`];
}

function departures({ suppressed, places }: CheckRun, { shown, colours }: ReportOptions): TerminalText[] {
  return suppressed.map(({ finding, departure }) => {
    const place = placeText(places.of(wordSpot(departure.fact)), shown);
    const about = departure.rule === finding.check ? finding.check : `${finding.check} (${departure.rule})`;
    return term`${place}  ${colours.dim(about)}  “${departure.reason}”`;
  });
}

function queries({ survey, places }: CheckRun, { shown }: ReportOptions): TerminalText[] {
  return survey.queries.map(({ text, spot }) => term`${placeText(places.of(spot), shown)}  “${text}”`);
}

function summaryLine(judgement: CheckRun, { colours, info }: ReportOptions): TerminalText {
  const { files, counts, survey } = judgement;
  const held = [counted(files.length, "file"), counted(survey.boards, "board"), counted(survey.ways, "way")];
  const found = [
    tinted(counts.error, counted(counts.error, "error"), colours.red),
    tinted(counts.warning, `${counted(counts.warning, "warning")}${unprovenText(judgement)}`, colours.yellow),
    `${counts.information} for information${!info && counts.information > 0 ? " (not shown)" : ""}`,
  ];
  const open = [
    ...some(survey.queries.length, "open query", "open queries"),
    ...some(survey.departures, "departure"),
    ...some(survey.limitations, "limitation"),
  ];
  return term`${held.join(", ")}: ${term.join(found, ", ")}${open.length > 0 ? `; ${open.join(", ")}` : ""}`;
}

function unprovenText(run: CheckRun): string {
  const unproven = unprovenIn(run);
  return unproven > 0 ? ` (${unproven} unproven)` : "";
}

const some = (count: number, one: string, many?: string): string[] => (count > 0 ? [counted(count, one, many)] : []);

export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

const tinted = (count: number, text: string, tint: Tint): string | TerminalText => (count > 0 ? tint(text) : text);
