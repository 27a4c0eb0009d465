/** A schedule beside a revision of itself: what each changed line was, and the history of the reading at the cursor. */
import type { Installation } from "../model/installation.ts";
import type { Entry } from "../readings/entries.ts";
import { entriesOfFile } from "../readings/entries.ts";
import type { Change, Side } from "../reports/compare/change.ts";
import { type Comparison, comparisonOf } from "../reports/compare/comparison.ts";
import { comparisonReport } from "../reports/compare/report.ts";
import { cutOff, historyReport } from "../reports/history/report.ts";
import { isMeant, seriesOf } from "../reports/history/timeline.ts";
import type { Report } from "../reports/setting/document.ts";
import { type Spot, wordSpot } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import type { Sources } from "../workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";
import { Project } from "../workspace/project.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type PastCommit, versionsOf } from "./file-versions.ts";

export type Failure = { readonly failure: string };

/** Reads a file as a revision has it. */
export type ReadPast = (path: string) => Promise<{ readonly text: string } | Failure>;

/** A line that is not what it was. */
export interface ChangedLine {
  readonly spot: Spot;
  /** Beside the line: “was 0.42 Ω (69 % left), now fails”. */
  readonly text: string;
  /** Line by line, for a hover. */
  readonly detail: readonly string[];
  readonly isGrave: boolean;
}

export interface Beside {
  readonly report: Report;
  readonly lines: readonly ChangedLine[];
}

/** `called`: the revision, as a person names it. */
export async function besideRevision(
  snapshot: Snapshot,
  called: string,
  read: ReadPast,
  resolve: Sources["resolve"],
): Promise<Beside | Failure> {
  const [home] = snapshot.projects;
  if (!home) return { failure: "There is no such schedule." };
  const before = await projectAt(home.root.path, read, resolve);
  if ("failure" in before) return before;
  const comparisons = home.installations.flatMap((after, index) => {
    const old = before.installations.find(({ head }) => head.title === after.head.title) ?? before.installations[index];
    return old ? [compare(old, after, called)] : [];
  });
  const [first, ...others] = comparisons;
  if (!first) return { failure: "There is no installation in both versions, so nothing can be compared." };
  const report = comparisonReport(first);
  const sections = others.flatMap((one) => comparisonReport(one).sections);
  return {
    report: { ...report, sections: [...report.sections, ...sections] },
    lines: linesOf(comparisons, snapshot),
  };
}

const compare = (old: Installation, now: Installation, called: string): Comparison =>
  comparisonOf({ called, installation: old }, { called: "as it is now", installation: now });

/** A schedule and all it uses, as they were. */
async function projectAt(root: string, read: ReadPast, resolve: Sources["resolve"]): Promise<Project | Failure> {
  const files = new Map<string, LoadedFile | Failure>();
  for (let wanted = [root]; wanted.length > 0; ) {
    const loaded = await Promise.all(wanted.map(async (path) => [path, await read(path)] as const));
    for (const [path, text] of loaded) files.set(path, "failure" in text ? text : fileOfText(path, text.text));
    const uses = loaded.flatMap(([path]) => {
      const file = files.get(path);
      if (!file || "failure" in file) return [];
      return file.model.facts.all("use").map((use) => resolve(path, use.args.path.value));
    });
    wanted = [...new Set(uses)].filter((path) => !files.has(path));
  }
  const file = files.get(root);
  if (!file || "failure" in file) return file ?? { failure: "there is no such file." };
  const missing = { failure: "it was not there." };
  return new Project(file, { file: (path) => files.get(path) ?? missing, resolve });
}

/** Changes that have a line in the file, by line; what went stands on the first line of the block it stood in. */
function linesOf(comparisons: readonly Comparison[], snapshot: Snapshot): ChangedLine[] {
  const entries = entriesOfFile(snapshot.file.model);
  const byAddress = new Map(entries.map((entry) => [entry.at, entry]));
  const lines = new Map<string, { spot: Spot; changes: Change[] }>();
  const numbers = new Map(snapshot.file.document.segments.map((segment, number) => [segment, number]));
  for (const { places } of comparisons) {
    for (const place of places) {
      const header = headerOf(entries, place.where);
      for (const change of place.changes) {
        const own = change.now ? byAddress.get(change.at) : undefined;
        const spot = own ? wordSpot(own.fact) : header;
        if (!spot) continue;
        const key = `${numbers.get(spot.segment)} ${spot.start}`;
        const line = lines.get(key) ?? { spot, changes: [] };
        line.changes.push(change);
        lines.set(key, line);
      }
    }
  }
  return [...lines.values()].map(({ spot, changes }) => ({
    spot,
    text: changes.length > mostBeside ? `${changes.length} changes` : changes.map(changeText).join("; "),
    detail: changes.flatMap(detailOf),
    isGrave: changes.some(({ gravity, effect }) => gravity === "record" || effect === "now fails"),
  }));
}

/** More than these do not fit beside a line. */
const mostBeside = 3;

function headerOf(entries: readonly Entry[], where: string): Spot | undefined {
  const isHere = ({ address: { place } }: Entry) =>
    place.of === "way" ? `${place.board}/${place.way}` === where : place.of === "board" && place.board === where;
  const first = entries.find((entry) => isHere(entry));
  return first && wordSpot(first.fact);
}

const judgedText = ({ text, judged }: Side): string => (judged ? `${text} (${judged.left})` : text);

function changeText({ old, now, name, on, effect, kind }: Change): string {
  const end = effect ? `, ${effect}` : "";
  if (kind === "limit" && old?.judged && now?.judged) return `limit was ${old.judged.limit} (${old.judged.left})${end}`;
  if (!now) return `gone: ${name}${on ? ` of ${on}` : ""} ${old ? judgedText(old) : ""}`.trimEnd();
  if (!old) return kind === "struck-out" ? "struck out" : "new";
  return `was ${judgedText(old)}${end}`;
}

function detailOf({ old, now, name, on, effect, kind }: Change): string[] {
  const side = (word: string, one: Side | undefined): string[] =>
    one ? [`${word}: ${one.text}${one.judged ? `, limit ${one.judged.limit}, ${one.judged.left}` : ""}`] : [];
  return [
    `${name}${on ? `, ${on}` : ""}: ${kind}${effect ? `, ${effect}` : ""}`,
    ...side("before", old),
    ...side("now", now),
  ];
}

/** What git knows of a file. */
export interface PastOfFile {
  readonly commits: readonly PastCommit[];
  readonly textOf: (name: string) => string;
  readonly isShallow: boolean;
}

/** The readings of the line at the cursor, or of the way it is in, over days and commits. */
export function timelineAt(
  snapshot: Snapshot,
  segment: Segment,
  offset: number,
  called: string,
  past: PastOfFile,
): Report | Failure {
  const entries = entriesOfFile(snapshot.file.model);
  const here = entries.filter(({ fact, reading }) => reading !== undefined && fact.segment === segment);
  const own = here.filter(({ fact }) => fact.start <= offset && offset <= lineEnd(segment.text, fact.end));
  const meant = own.length > 0 ? own : here;
  if (meant.length === 0) return { failure: "Put the cursor in a reading, or in a way that has some." };
  const versions = versionsOf(snapshot.file, past.commits, past.textOf);
  const isWanted = (entry: Entry) => meant.some(({ address }) => isMeant(entry, { ...address, blocks: [] }));
  const series = seriesOf(entries, isWanted, versions, snapshot.installations[0]?.names);
  const [first] = meant;
  const wanted = own.length > 0 && first ? first.at.replace(/ · (?:dead|live) [^·]*(?= · )/, "") : undefined;
  return historyReport({
    file: called,
    ...(wanted === undefined ? {} : { wanted }),
    edits: versions,
    series,
    remarks: past.isShallow ? [cutOff] : [],
  });
}

function lineEnd(text: string, from: number): number {
  const end = text.slice(from).search(/[\r\n]/);
  return end < 0 ? text.length : from + end;
}
