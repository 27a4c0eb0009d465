/**
 * The files an editor works on: open documents, files on disk as a host lends them, and who uses whom. Loading is
 * asynchronous; everything asked of what is loaded is answered at once.
 */
import { type Installation, installationsOf } from "../model/installation.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { type Document, documentOf, type Edit, Positions } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { type ReadFile, RootCache, type WorkspaceState } from "./kept-by-root.ts";
import { noteEdits, type OpenFile, openFile, upToDate } from "./open-file.ts";
import { checkProject, gather, type Host, type LoadedFile, loadFile, type ProjectResult } from "./project.ts";
import { type UseSummary, useSummary } from "./uses.ts";

/**
 * A file at one moment, in its project: what a feature is given. Checks run when a feature first asks for findings: a
 * colour or an outline does not wait for them.
 */
export interface Snapshot {
  readonly file: LoadedFile;
  readonly version: number | undefined;
  readonly positions: Positions;
  /** The file of the schedule and all it uses. */
  readonly files: readonly LoadedFile[];
  readonly installations: readonly Installation[];
  /** What is found in this file. */
  readonly findings: readonly Finding[];
  /** Every schedule that uses this file, the one it was judged in first. */
  readonly roots: readonly string[];
}

interface Gathered {
  readonly files: readonly LoadedFile[];
  readonly installations: readonly Installation[];
}

/** Files beyond this number are not looked into for who uses them. */
export const mostFiles = 5_000;

export class Workspace {
  readonly #host: Host;
  readonly #open = new Map<string, OpenFile>();
  readonly #disk = new Map<string, ReadFile>();
  readonly #summaries = new Map<string, UseSummary>();
  readonly #gathered = new RootCache<Gathered>();
  readonly #projects = new RootCache<ProjectResult>();
  readonly #positions = new Map<string, { readonly document: Document; readonly positions: Positions }>();
  #indexing: Promise<unknown> | undefined;
  /** Counts every change, so that what is kept can tell at a glance that nothing happened. */
  #revision = 0;

  constructor(host: Host) {
    this.#host = host;
  }

  /** Every file that is open or was found in the folders. */
  get knownPaths(): readonly string[] {
    return [...new Set([...this.#open.keys(), ...this.#summaries.keys()])];
  }

  get openPaths(): readonly string[] {
    return [...this.#open.keys()];
  }

  open(path: string, version: number, text: string, uri = path): void {
    this.#revision++;
    const before = this.#disk.get(path);
    const onDisk = before && "document" in before ? before.document : undefined;
    this.#open.set(path, openFile(uri, version, text, onDisk));
  }

  edit(path: string, version: number, edits: readonly Edit[]): void {
    const file = this.#open.get(path);
    // What is older than what is known already has been overtaken.
    if (!file || version < file.version) return;
    this.#revision++;
    noteEdits(file, version, edits);
  }

  close(path: string): void {
    this.#revision++;
    this.#open.delete(path);
    this.#disk.delete(path);
    this.#positions.delete(path);
    this.#gathered.delete(path);
    this.#projects.delete(path);
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
   * that may be part of another is not judged alone.
   */
  async index(listed: Promise<readonly string[]>): Promise<number> {
    const indexing = this.#index(listed);
    this.#indexing = indexing;
    const leftOut = await indexing.finally(() => {
      this.#indexing = undefined;
    });
    return leftOut;
  }

  async #index(listed: Promise<readonly string[]>): Promise<number> {
    const paths = await listed;
    const wanted = paths.slice(0, mostFiles);
    for (let at = 0; at < wanted.length; at += 32) {
      await Promise.all(wanted.slice(at, at + 32).map((path) => this.#summarise(path)));
    }
    return paths.length - wanted.length;
  }

  async #summarise(path: string): Promise<void> {
    const read = await this.#host.read(path);
    if ("failure" in read) this.#summaries.delete(path);
    else this.#noteUses(path, read.text);
    this.#revision++;
  }

  /** Reads all that the file and the schedules that use it need. */
  async load(path: string): Promise<void> {
    if (this.#awaitsIndex(path)) await this.#indexing?.catch(() => undefined);
    for (;;) {
      const missing = this.#missing(path);
      if (missing.length === 0) return;
      await Promise.all(missing.map((one) => this.#fetch(one)));
    }
  }

  isLoaded(path: string): boolean {
    return !this.#awaitsIndex(path) && this.#missing(path).length === 0;
  }

  #awaitsIndex(path: string): boolean {
    return this.#indexing !== undefined && !this.#summary(path)?.hasInstallation;
  }

  async #fetch(path: string): Promise<void> {
    const read = await this.#host.read(path);
    // Whoever opened it meanwhile knows better.
    if (this.#open.has(path) || this.#disk.has(path)) return;
    this.#revision++;
    this.#disk.set(path, "failure" in read ? read : loadFile(path, documentOf(read.text)));
    if (!("failure" in read)) this.#noteUses(path, read.text);
  }

  #noteUses(path: string, text: string): void {
    this.#summaries.set(
      path,
      useSummary(text, (use) => this.#host.resolve(path, use)),
    );
  }

  #missing(path: string): string[] {
    const missing: string[] = [];
    const seen = new Set<string>();
    const visit = (one: string): void => {
      if (seen.has(one)) return;
      seen.add(one);
      const found = this.#find(one);
      if (!found) missing.push(one);
      else if ("document" in found) for (const use of this.#uses(found)) visit(use);
    };
    visit(path);
    for (const root of this.roots(path)) visit(root);
    return missing;
  }

  #uses(file: LoadedFile): string[] {
    return file.model.facts.all("use").map((use) => this.#host.resolve(file.path, use.args.path.value));
  }

  /** A file as it stands now, if it is known. */
  #find(path: string): ReadFile | undefined {
    const file = this.#open.get(path);
    return file ? upToDate(path, file) : this.#disk.get(path);
  }

  /**
   * The schedules a file is part of: itself where it holds an installation, or else every one that uses it, directly or
   * through others. A file that nobody uses stands alone.
   */
  roots(path: string): string[] {
    if (this.#summary(path)?.hasInstallation) return [path];
    const roots: string[] = [];
    const seen = new Set([path]);
    const climb = (one: string): void => {
      for (const user of this.#users(one)) {
        if (seen.has(user)) continue;
        seen.add(user);
        if (this.#summary(user)?.hasInstallation) roots.push(user);
        else climb(user);
      }
    };
    climb(path);
    return roots.length === 0 ? [path] : roots.sort();
  }

  #users(path: string): string[] {
    const known = new Set([...this.#open.keys(), ...this.#summaries.keys()]);
    return [...known].filter((one) => this.#summary(one)?.uses.includes(path));
  }

  #summary(path: string): UseSummary | undefined {
    const file = this.#open.get(path);
    if (!file) return this.#summaries.get(path);
    if (file.summary) return file.summary;
    const loaded = upToDate(path, file);
    file.summary = {
      uses: this.#uses(loaded),
      hasInstallation: loaded.model.installations.length > 0,
    };
    return file.summary;
  }

  /** Open files whose findings may depend on a file. */
  dependents(path: string): string[] {
    return this.openPaths.filter((open) => {
      if (open === path) return false;
      return this.#gathered.hasRead(this.roots(open)[0] ?? open, path);
    });
  }

  /** A file in its project, as far as it is loaded; nothing for a file that is not known or cannot be read. */
  snapshot(path: string): Snapshot | undefined {
    const file = this.#find(path);
    if (!file || "failure" in file) return undefined;
    const roots = this.roots(path);
    const root = this.#find(roots[0] ?? path);
    const inRoot = root && "document" in root ? this.#gather(root) : undefined;
    const home = root && "document" in root && inRoot?.files.includes(file) ? root : file;
    const { files, installations } = home === root && inRoot ? inRoot : this.#gather(home);
    const check = (): readonly Finding[] => this.#project(home).files.find((one) => one.file === file)?.findings ?? [];
    return {
      file,
      version: this.version(path),
      positions: this.positionsOf(file),
      files,
      installations,
      get findings() {
        return check();
      },
      roots,
    };
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

  #gather(root: LoadedFile): Gathered {
    return this.#gathered.of(root, this.#now, (sources) => {
      const { files, unread } = gather(root, sources);
      return { files, installations: installationsOf(files, unread) };
    });
  }

  #project(root: LoadedFile): ProjectResult {
    return this.#projects.of(root, this.#now, (sources) => checkProject(root, sources));
  }
}

/** The file of a project a segment belongs to. */
export const fileOfSegment = ({ files }: Pick<Snapshot, "files">, segment: Segment): LoadedFile | undefined =>
  files.find(({ document }) => document.segments.includes(segment));
