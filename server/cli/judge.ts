/** Checks the files that were asked for with those they use, and puts what was found where it stands. */
import type { SuppressedFinding } from "../rules/frame/departures.ts";
import type { Finding, Severity } from "../rules/frame/rule.ts";
import { checkProject, type LoadedFile } from "../workspace/project.ts";
import type { Disk } from "./files.ts";
import { type FindingLocation, Locator } from "./places.ts";
import { type Survey, surveyOf } from "./survey.ts";

export interface Placed {
  readonly finding: Finding;
  readonly at: FindingLocation;
}

export interface JudgedFile {
  readonly file: LoadedFile;
  readonly findings: readonly Placed[];
}

export interface CheckRun {
  /** First the files that were asked for, then those they use. */
  readonly files: readonly JudgedFile[];
  readonly suppressed: readonly SuppressedFinding[];
  readonly counts: Readonly<Record<Severity, number>>;
  readonly survey: Survey;
  readonly places: Locator;
  /** Files that hold boards which no installation takes up, so that nothing judges them. */
  readonly unattached: readonly LoadedFile[];
}

export function checkFiles(asked: readonly LoadedFile[], disk: Disk): CheckRun {
  const roots = rootsOf(asked, disk);
  const results = roots.map((root) => checkProject(root, disk));
  const files = new Set([...asked, ...results.flatMap((result) => result.files.map(({ file }) => file))]);
  const places = new Locator([...files]);
  const judged = [...files].map((file) => ({
    file,
    findings: once(results.flatMap((result) => result.files.find((entry) => entry.file === file)?.findings ?? []))
      .map((finding) => ({ finding, at: places.of(finding.spot) }))
      .sort((a, b) => a.at.offset - b.at.offset || a.at.endOffset - b.at.endOffset),
  }));
  const suppressed = onceBy(
    results.flatMap((result) => result.suppressed),
    ({ finding }) => finding,
  );
  return {
    files: judged,
    suppressed,
    counts: countOf(judged),
    survey: surveyOf([...files].map((file) => file.model)),
    places,
    unattached: results.flatMap(({ installations, files: [root] }) =>
      installations.length === 0 && root && root.file.model.boards.length > 0 ? [root.file] : [],
    ),
  };
}

/**
 * Where checking begins: at every file but those that have no installation of their own and are used by another. Files
 * that only use each other would all be passed over, so what no root reaches becomes one.
 */
function rootsOf(asked: readonly LoadedFile[], disk: Disk): LoadedFile[] {
  const used = new Set(asked.flatMap((file) => usedBy(file, disk).filter((path) => path !== file.path)));
  const roots = asked.filter((file) => file.model.installations.length > 0 || !used.has(file.path));
  const reached = new Set<string>();
  for (const root of roots) reach(root, disk, reached);
  for (const file of asked) {
    if (reached.has(file.path)) continue;
    roots.push(file);
    reach(file, disk, reached);
  }
  return roots;
}

const usedBy = (file: LoadedFile, disk: Disk): string[] =>
  file.model.facts.all("use").map((use) => disk.resolve(file.path, use.args.path.value));

function reach(file: LoadedFile, disk: Disk, reached: Set<string>): void {
  if (reached.has(file.path)) return;
  reached.add(file.path);
  for (const path of usedBy(file, disk)) {
    const used = disk.file(path);
    if (!("failure" in used)) reach(used, disk, reached);
  }
}

/** A file that several others use is judged in each of them, and mostly found the same. */
const once = (findings: readonly Finding[]): Finding[] => onceBy(findings, (finding) => finding);

function onceBy<T>(items: readonly T[], findingOf: (item: T) => Finding): T[] {
  const seen = new Map<unknown, Set<string>>();
  return items.filter((item) => {
    const { spot, check, message } = findingOf(item);
    const here = seen.get(spot.segment) ?? new Set();
    const key = `${spot.start} ${spot.end} ${check} ${message}`;
    if (here.has(key)) return false;
    seen.set(spot.segment, here.add(key));
    return true;
  });
}

function countOf(files: readonly JudgedFile[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, information: 0 };
  for (const { findings } of files) for (const { finding } of findings) counts[finding.severity]++;
  return counts;
}
