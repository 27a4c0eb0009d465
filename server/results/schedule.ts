/** Checks one schedule with all it uses, and gives what is found as plain data. */
import type { SuppressedFinding } from "../rules/frame/departures.ts";
import { firstOfEach } from "../rules/frame/first-of-each.ts";
import { type Finding, type Severity, wordSpot } from "../rules/frame/rule.ts";
import type { Sources } from "../workspace/gather.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { Project } from "../workspace/project.ts";
import { Locator } from "./places.ts";
import type { FileHolds, FileResult, ResultFinding, ResultSource, ScheduleResult, Suppressed } from "./result.ts";
import { surveyOf } from "./survey.ts";

export const judgeSchedule = (
  root: LoadedFile,
  sources: Sources,
  nameOf: (path: string) => string = (path) => path,
): ScheduleResult => resultOf(new Project(root, sources), nameOf);

/** `nameOf`: the path of a file as the result is to call it. */
export function resultOf(project: Project, nameOf: (path: string) => string): ScheduleResult {
  const { root, result, installations, files } = project;
  const places = new Locator(files, nameOf);
  return {
    root: nameOf(root.path),
    name: project.name,
    files: result.files.map(({ file, findings }) => fileResult(file, findings, places, nameOf)),
    suppressed: result.suppressed.map((one) => suppressedResult(one, places)),
    unattached: installations.length === 0 && root.model.boards.length > 0,
  };
}

function fileResult(
  file: LoadedFile,
  findings: readonly Finding[],
  places: Locator,
  nameOf: (path: string) => string,
): FileResult {
  const { first, more } = firstOfEach(findings, mostKept);
  const found = first.map((finding) => findingResult(finding, places));
  return {
    path: nameOf(file.path),
    findings: found.sort(inTheirFile),
    more: [...more].map(([check, count]) => ({ check, count, severity: severityOf(check, findings) })),
    holds: holdsOf(file, places),
  };
}

/** The same with what was found by other means. */
export function withFindings(
  result: FileResult,
  file: LoadedFile,
  findings: readonly Finding[],
  nameOf: (path: string) => string,
): FileResult {
  if (findings.length === 0) return result;
  const places = new Locator([file], nameOf);
  const found = findings.map((finding) => findingResult(finding, places));
  return { ...result, findings: [...result.findings, ...found].sort(inTheirFile) };
}

/** Of one kind in one file. Rubbish of a few megabytes has a million, and each would be kept with its place. */
const mostKept = 10_000;

const severityOf = (check: string, findings: readonly Finding[]): Severity =>
  findings.find((finding) => finding.check === check)?.severity ?? "error";

/** The order of findings within a file. */
export const inTheirFile = ({ at: a }: ResultFinding, { at: b }: ResultFinding): number =>
  a.offset - b.offset || a.endOffset - b.endOffset;

function holdsOf({ model, document }: LoadedFile, places: Locator): FileHolds {
  const { queries, ...counts } = surveyOf(model);
  return {
    ...counts,
    queries: queries.map(({ text, spot }) => ({ text, at: places.of(spot) })),
    titles: model.installations.map(({ head }) => head.title),
    isEmpty: document.segments.every(({ text }) => text.trim() === ""),
  };
}

function findingResult(finding: Finding, places: Locator): ResultFinding {
  const { spot, related, fixes, source, ...plain } = finding;
  const begin = fixes.length > 0 ? places.offsetOf(spot.segment) : 0;
  return {
    ...plain,
    at: places.of(spot),
    ...(source ? { source: sourceResult(source) } : {}),
    related: related.map((one) => ({ at: places.of(one.spot), message: one.message })),
    fixes: fixes.map(({ title, safe, edits }) => ({
      title,
      safe,
      edits: edits.map(({ start, end, text }) => ({ start: begin + start, end: begin + end, text })),
    })),
  };
}

const sourceResult = ({ ref, standing, note }: ResultSource): ResultSource => ({
  ref,
  standing,
  ...(note === undefined ? {} : { note }),
});

function suppressedResult({ finding, departure }: SuppressedFinding, places: Locator): Suppressed {
  const { rule, reason, fact } = departure;
  return { finding: findingResult(finding, places), rule, reason, by: places.of(wordSpot(fact)) };
}
