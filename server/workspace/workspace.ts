/**
 * The files an editor works on: open documents, files on disk as a host lends them, and who uses whom. Loading is
 * asynchronous; everything asked of what is loaded is answered at once.
 */
import type { Installation } from "../model/installation.ts";
import type { Slices } from "../rules/frame/check-way.ts";
import type { CheckResult } from "../rules/frame/departures.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { type Document, documentOf, type Edit, Positions } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { CheckRun } from "./check-run.ts";
import { findingsOfFile } from "./join-findings.ts";
import { type Host, type LoadedFile, loadFile } from "./loaded-file.ts";
import { noteEdits, type OpenFile, openFile, upToDate } from "./open-file.ts";
import { type Project, wholeResult } from "./project.ts";
import { Projects, type ReadFile, type WorkspaceState } from "./projects.ts";
import { pastOf } from "./uri.ts";
import { UseGraph } from "./use-graph.ts";
import { useSummary } from "./uses.ts";

/**
 * A file at one moment, in its project: what a feature is given. Checks run when a feature first asks for findings: a
 * colour or an outline does not wait for them.
 */
export interface Snapshot {
  readonly file: LoadedFile;
  readonly version: number | undefined;
  readonly positions: Positions;
  /** The first schedule that uses this file, and all that one uses. */
  readonly files: readonly LoadedFile[];
  readonly installations: readonly Installation[];
  /** What every schedule that uses this file finds in it. */
  readonly findings: readonly Finding[];
  /**
   * What is found so far, while a check is under way; nothing of a file that several schedules use, where a finding says
   * in which of them it holds.
   */
  readonly soFar: readonly Finding[] | undefined;
  /** Whether the ways among some segments are checked already, and whether all of the boards that hold them is. */
  hasCheckedWays(segments: ReadonlySet<Segment>): boolean;
  hasCheckedBoards(segments: ReadonlySet<Segment>): boolean;
  /** The same in slices; segments that are looked at come first. */
  check(lookedAt?: ReadonlySet<Segment>): CheckRun;
  /** Every schedule that uses this file, with all it uses. */
  readonly projects: readonly Project[];
}

/** Files beyond this number are not looked into for who uses them. */
export const mostFiles = 5_000;

const nothingPressing = (): Promise<void> => Promise.resolve();

export class Workspace {
  readonly #host: Host;
  readonly #open = new Map<string, OpenFile>();
  readonly #disk = new Map<string, ReadFile>();
  readonly #graph = new UseGraph();
  /** Files whose links are not as their text says any more: open ones that were edited. */
  readonly #edited = new Set<string>();
  /** Files that were closed: what stands on disk may be another text than the one last seen. */
  readonly #closed = new Set<string>();
  readonly #projects = new Projects();
  readonly #positions = new Map<string, { readonly document: Document; readonly positions: Positions }>();
  #indexing: Promise<unknown> | undefined;
  /** Counts every change, so that what is kept can tell at a glance that nothing happened. */
  #revision = 0;

  constructor(host: Host) {
    this.#host = host;
  }

  /** Every file that is open or was found in the folders; what one was in a revision is not another one. */
  get knownPaths(): readonly string[] {
    return [...new Set([...this.#open.keys(), ...this.#links.paths])].filter((path) => !pastOf(path));
  }

  get openPaths(): readonly string[] {
    return [...this.#open.keys()];
  }

  open(path: string, version: number, text: string, uri = path): void {
    this.#revision++;
    const before = this.#disk.get(path);
    const onDisk = before && "document" in before ? before.document : undefined;
    this.#open.set(path, openFile(uri, version, text, onDisk));
    this.#closed.delete(path);
    this.#edited.add(path);
  }

  edit(path: string, version: number, edits: readonly Edit[]): void {
    const file = this.#open.get(path);
    // What is older than what is known already has been overtaken.
    if (!file || version < file.version) return;
    this.#revision++;
    noteEdits(file, version, edits);
    this.#edited.add(path);
  }

  close(path: string): void {
    this.#revision++;
    this.#open.delete(path);
    this.#disk.delete(path);
    this.#positions.delete(path);
    this.#projects.delete(path);
    this.#edited.delete(path);
    this.#closed.add(path);
  }

  isOpen(path: string): boolean {
    return this.#open.has(path);
  }

  /** The address of a file in the spelling its editor uses. */
  uri(path: string): string {
    return this.#open.get(path)?.uri ?? path;
  }

  version(path: string): number | undefined {
    return this.#open.get(path)?.version;
  }

  /** What stands on disk may have changed: it is read again when next asked for. */
  async changedOnDisk(path: string): Promise<void> {
    this.#revision++;
    this.#disk.delete(path);
    await this.#summarise(path);
  }

  /**
   * Looks into the files of the workspace for what each uses. Returns how many were left out. Until it is done, a file
   * that may be part of another is not judged alone. `room` settles whenever there is nothing more pressing.
   */
  async index(listed: Promise<readonly string[]>, room = nothingPressing): Promise<number> {
    const indexing = this.#index(listed, room);
    this.#indexing = indexing;
    const leftOut = await indexing.finally(() => {
      this.#indexing = undefined;
    });
    return leftOut;
  }

  async #index(listed: Promise<readonly string[]>, room: () => Promise<void>): Promise<number> {
    const paths = await listed;
    const wanted = paths.slice(0, mostFiles);
    for (let at = 0; at < wanted.length; at += 32) {
      await room();
      await Promise.all(wanted.slice(at, at + 32).map((path) => this.#summarise(path)));
    }
    return paths.length - wanted.length;
  }

  async #summarise(path: string): Promise<void> {
    const read = await this.#host.read(path);
    this.#closed.delete(path);
    if (!this.#open.has(path)) {
      if ("failure" in read) this.#graph.delete(path);
      else this.#noteLinks(path, documentOf(read.text));
    }
    this.#revision++;
  }

  /** Settles once it is known which files there are. */
  async indexed(): Promise<void> {
    await this.#indexing?.catch(() => undefined);
  }

  /** Reads a file by itself, if it is not known: enough to look into it, not to judge it. */
  async read(path: string): Promise<void> {
    if (!this.#find(path)) await this.#fetch(path);
  }

  /** Reads all that the file and the schedules that use it need. */
  async load(path: string): Promise<void> {
    if (this.#awaitsIndex(path)) await this.#indexing?.catch(() => undefined);
    for (;;) {
      await Promise.all([...this.#closed].map((one) => this.#summarise(one)));
      const missing = this.#missing(path);
      if (missing.length === 0) return;
      await Promise.all(missing.map((one) => this.#fetch(one)));
    }
  }

  isLoaded(path: string): boolean {
    return this.#closed.size === 0 && !this.#awaitsIndex(path) && this.#missing(path).length === 0;
  }

  #awaitsIndex(path: string): boolean {
    return this.#indexing !== undefined && !this.#links.get(path).hasInstallation;
  }

  async #fetch(path: string): Promise<void> {
    const read = await this.#host.read(path);
    // Whoever opened it meanwhile knows better.
    if (this.#open.has(path) || this.#disk.has(path)) return;
    this.#revision++;
    const file = "failure" in read ? read : loadFile(path, documentOf(read.text), this.#projects.lines);
    this.#disk.set(path, file);
    if ("document" in file) this.#noteLinks(path, file.document);
  }

  #noteLinks(path: string, document: Document): void {
    this.#graph.set(
      path,
      useSummary(document.segments, (use) => this.#host.resolve(path, use)),
    );
  }

  /** Who uses whom, with all edits. */
  get #links(): UseGraph {
    for (const path of this.#edited) {
      const file = this.#open.get(path);
      if (file) this.#noteLinks(path, upToDate(path, file, this.#projects.lines).document);
    }
    this.#edited.clear();
    return this.#graph;
  }

  #missing(path: string): string[] {
    const missing: string[] = [];
    const seen = new Set<string>();
    const visit = (one: string): void => {
      if (seen.has(one)) return;
      seen.add(one);
      const found = this.#find(one);
      if (!found) missing.push(one);
      else if ("document" in found) for (const use of this.#links.get(one).uses) visit(use);
    };
    visit(path);
    for (const root of this.roots(path)) visit(root);
    return missing;
  }

  /** A file as it stands now, if it is known. */
  #find(path: string): ReadFile | undefined {
    const file = this.#open.get(path);
    return file ? upToDate(path, file, this.#projects.lines) : this.#disk.get(path);
  }

  /** The schedules a file is checked in. */
  roots(path: string): string[] {
    return this.#links.rootsOf(path);
  }

  /** Open files whose findings may depend on a file, now or before its last edit. */
  dependents(path: string): string[] {
    const beside = this.#projects.readWith(path);
    const roots = new Set(this.roots(path));
    return this.openPaths.filter(
      (open) => open !== path && (beside.has(open) || this.roots(open).some((root) => roots.has(root))),
    );
  }

  /** A file in its projects, as far as they are loaded; nothing for a file that is not known or cannot be read. */
  snapshot(path: string): Snapshot | undefined {
    const file = this.#find(path);
    if (!file || "failure" in file) return undefined;
    const projects = this.#projectsOf(file);
    const [home] = projects;
    let revision = this.#revision;
    // Asked between any two steps of a check, mostly when nothing has happened.
    const isCurrent = (): boolean => {
      if (revision !== this.#revision && !this.#isCurrent(file, projects)) return false;
      revision = this.#revision;
      return true;
    };
    return {
      file,
      version: this.version(path),
      positions: this.positionsOf(file),
      files: home.files,
      get installations() {
        return home.installations;
      },
      get findings() {
        return findingsOfFile(file, projects);
      },
      get soFar() {
        return projects.length === 1 ? home.soFar(file) : undefined;
      },
      hasCheckedWays: (segments) => projects.every((project) => project.hasCheckedWays(segments)),
      hasCheckedBoards: (segments) => projects.every((project) => project.hasCheckedBoards(segments)),
      check: (lookedAt) => new CheckRun(checkFile(file, projects, lookedAt), isCurrent),
      projects,
    };
  }

  /** The newest project of each schedule a file is part of. */
  #projectsOf(file: LoadedFile): readonly [Project, ...Project[]] {
    const projects = this.roots(file.path).flatMap((path) => {
      const root = this.#find(path);
      const project = root && "document" in root ? this.#projects.of(root, this.#now) : undefined;
      return project?.files.includes(file) ? [project] : [];
    });
    const [first, ...others] = projects;
    return first ? [first, ...others] : [this.#projects.of(file, this.#now)];
  }

  #isCurrent(file: LoadedFile, projects: readonly Project[]): boolean {
    if (this.#find(file.path) !== file) return false;
    const now = this.#projectsOf(file);
    return now.length === projects.length && now.every((project, index) => project === projects[index]);
  }

  positionsOf(file: LoadedFile): Positions {
    const before = this.#positions.get(file.path);
    if (before?.document === file.document) return before.positions;
    const positions = new Positions(file.document, before?.positions);
    this.#positions.set(file.path, { document: file.document, positions });
    return positions;
  }

  get #now(): WorkspaceState {
    return {
      revision: this.#revision,
      find: (path) => this.#find(path),
      resolve: (from, use) => this.#host.resolve(from, use),
    };
  }
}

/** The segments that open the boards of a file. */
const boardsIn = ({ model: { boards, installations } }: LoadedFile): Segment[] =>
  [...boards, ...installations.flatMap((one) => one.boards)].map(({ head }) => head.header.segment);

/** Checks every project of a file, what is looked at first. */
function* checkFile(
  file: LoadedFile,
  projects: readonly Project[],
  lookedAt: ReadonlySet<Segment> | undefined,
): Slices<readonly Finding[]> {
  const own = new Set(boardsIn(file));
  if (lookedAt) for (const project of projects) yield* project.checkWays(lookedAt);
  for (const wanted of lookedAt ? [lookedAt, own] : [own]) {
    for (const project of projects) yield* project.checkBoards(wanted);
  }
  for (const project of projects) yield* project.check();
  return findingsOfFile(file, projects);
}

/** What the first schedule that uses the file finds in all of its files, and what its departures suppress. */
export function resultOf({ projects, findings }: Snapshot): CheckResult {
  const [home] = projects;
  return home ? wholeResult(home.result) : { findings, suppressed: [] };
}

/** The file a segment belongs to, in any schedule the snapshot was taken in. */
export const fileOfSegment = ({ projects }: Pick<Snapshot, "projects">, segment: Segment): LoadedFile | undefined => {
  for (const { files } of projects) {
    const file = files.find(({ document }) => document.segments.includes(segment));
    if (file) return file;
  }
  return undefined;
};
