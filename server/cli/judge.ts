/** Checks the files that were asked for with those they use, and puts what was found where it stands. */
import type { SuppressedFinding } from "../rules/frame/departures.ts";
import type { Finding, Severity } from "../rules/frame/rule.ts";
import { keyOf } from "../workspace/finding-order.ts";
import { findingsOfFile } from "../workspace/join-findings.ts";
import { type LoadedFile, Project, type Sources } from "../workspace/project.ts";
import { UseGraph } from "../workspace/use-graph.ts";
import { useSummary } from "../workspace/uses.ts";
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

export function checkFiles(asked: readonly LoadedFile[], disk: Sources): CheckRun {
  const projects = graphOf(asked, disk).roots.flatMap((path) => {
    const root = disk.file(path);
    return "failure" in root ? [] : [new Project(root, disk)];
  });
  const files = new Set([...asked, ...projects.flatMap((project) => project.files)]);
  const places = new Locator([...files]);
  const judged = [...files].map((file) => ({
    file,
    findings: findingsOfFile(
      file,
      projects.filter((project) => project.files.includes(file)),
    )
      .map((finding) => ({ finding, at: places.of(finding.spot) }))
      .sort((a, b) => a.at.offset - b.at.offset || a.at.endOffset - b.at.endOffset),
  }));
  const suppressed = onceBy(
    projects.flatMap(({ result }) => result.suppressed),
    ({ finding }) => finding,
  );
  return {
    files: judged,
    suppressed,
    counts: countOf(judged),
    survey: surveyOf([...files].map((file) => file.model)),
    places,
    unattached: projects.flatMap(({ installations, root }) =>
      installations.length === 0 && root.model.boards.length > 0 ? [root] : [],
    ),
  };
}

/** The files that were asked for and all they use. */
function graphOf(asked: readonly LoadedFile[], disk: Sources): UseGraph {
  const graph = new UseGraph();
  const add = (file: LoadedFile): void => {
    if (graph.has(file.path)) return;
    const links = useSummary(file.document.segments, (use) => disk.resolve(file.path, use));
    graph.set(file.path, links);
    for (const path of links.uses) {
      const used = disk.file(path);
      if (!("failure" in used)) add(used);
    }
  };
  for (const file of asked) add(file);
  return graph;
}

/** What several schedules suppress alike is listed once. */
function onceBy<T>(items: readonly T[], findingOf: (item: T) => Finding): T[] {
  const seen = new Map<unknown, Set<string>>();
  return items.filter((item) => {
    const finding = findingOf(item);
    const { segment } = finding.spot;
    const here = seen.get(segment) ?? new Set();
    const key = keyOf(finding);
    if (here.has(key)) return false;
    seen.set(segment, here.add(key));
    return true;
  });
}

function countOf(files: readonly JudgedFile[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, information: 0 };
  for (const { findings } of files) for (const { finding } of findings) counts[finding.severity]++;
  return counts;
}

/** Findings that wait for a figure to be looked up. */
export const unprovenIn = ({ files }: Pick<CheckRun, "files">): number =>
  files.flatMap(({ findings }) => findings).filter(({ finding }) => finding.verdict === "unproven").length;
