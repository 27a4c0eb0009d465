/**
 * When findings are worked out and how they reach the editor. One that pulls is answered when it asks, and told when
 * another file has changed what it has; to any other they are pushed once the messages at hand are dealt with. Nothing
 * is sent twice, nothing of an older version is sent, and closing a file takes its findings away.
 */
import type {
  CancellationToken,
  ClientCapabilities,
  Connection,
  Diagnostic,
  DocumentDiagnosticReport,
} from "vscode-languageserver";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import type { Log } from "./answer.ts";
import { Calm } from "./calm.ts";
import type { Checking, CheckPart, CheckState } from "./checking.ts";
import { type DiagnosticSet, Diagnostics, underWay } from "./diagnostics.ts";
import type { HouseSettings } from "./house.ts";
import { at } from "./member.ts";
import type { Runtime } from "./runtime.ts";
import { Settings, type Shown } from "./settings.ts";

interface Surroundings {
  readonly connection: Connection;
  readonly workspace: Workspace;
  readonly runtime: Runtime;
  readonly checking: Checking;
  readonly log: Log;
  readonly house: HouseSettings;
}

export class Delivery {
  readonly #connection: Connection;
  readonly #workspace: Workspace;
  readonly #runtime: Runtime;
  readonly #checking: Checking;
  readonly #log: Log;
  readonly #diagnostics: Diagnostics;
  /** What is held back while a line is being written. */
  readonly calm = new Calm();
  /** The addresses as the editor spells them. */
  readonly #uris = new Map<string, string>();
  readonly #dirty = new Set<string>();
  readonly #published = new Map<string, { readonly id: string; readonly version: number | undefined }>();
  #scheduled = false;
  #pulls = false;
  #refreshes = false;
  #configuration = false;
  readonly #settings = new Settings();

  constructor({ connection, workspace, runtime, checking, log, house }: Surroundings) {
    this.#connection = connection;
    this.#workspace = workspace;
    this.#runtime = runtime;
    this.#checking = checking;
    this.#log = log;
    this.#diagnostics = new Diagnostics(workspace, house);
  }

  /** Whether the editor asks for findings itself. */
  get pulls(): boolean {
    return this.#pulls;
  }

  /** How the document of that address is to be shown. */
  shown(uri: string): Shown {
    return this.#settings.shown(uri);
  }

  configure(capabilities: ClientCapabilities): void {
    this.#pulls = capabilities.textDocument?.diagnostic !== undefined;
    this.#refreshes = capabilities.workspace?.diagnostics?.refreshSupport ?? false;
    this.#configuration = capabilities.workspace?.configuration ?? false;
  }

  /** The scheme under which the editor opens the pages of checks. */
  openPagesAt(scheme: string): void {
    this.#diagnostics.pageScheme = scheme;
  }

  async readSettings(folders: readonly string[]): Promise<void> {
    if (!this.#configuration) return;
    const before = this.#settings.showing;
    await this.#settings.read(this.#connection, folders);
    if (this.#settings.showing !== before) this.#showAnew();
  }

  readonly #onCalm: (() => void)[] = [];

  /** What else waits for a line to be left. */
  onCalm(then: () => void): void {
    this.#onCalm.push(then);
  }

  #inlayChanged: () => void = () => {};

  /** What is to be done once other hints are asked for than those that may be shown already. */
  onInlay(then: () => void): void {
    this.#inlayChanged = then;
  }

  settingsChanged(settings: unknown, folders: readonly string[]): void {
    const section = at(settings, "wayfile");
    const before = this.#settings.showing;
    if (section !== undefined) this.#settings.take(section);
    if (this.#settings.showing !== before) this.#showAnew();
    void this.readSettings(folders).then(() => this.everythingChanged());
  }

  #showAnew(): void {
    for (const then of this.#onCalm) then();
    this.#inlayChanged();
  }

  opened(path: string, uri: string): void {
    this.#uris.set(path, uri);
    this.#touched(path);
  }

  edited(path: string): void {
    if (this.#settings.checked.onType) this.#touched(path);
  }

  readonly #atRest: (() => void)[] = [];

  /** Settles once a file is saved, closed or changed on the disk, or once nobody waits any more. */
  changedAtRest(token: CancellationToken): Promise<void> {
    return new Promise((resolve) => {
      this.#atRest.push(resolve);
      token.onCancellationRequested(() => resolve());
    });
  }

  #wake(): void {
    for (const resolve of this.#atRest.splice(0)) resolve();
  }

  readonly #gone = new Map<string, string>();

  /**
   * Nothing is reported any more of a file that is closed. As it closes one, an editor asks once more, before or after it
   * says so, and drops the answer: it takes it from what is reported of all files, once that answer has come.
   */
  gone(path: string, uri: string): void {
    this.#gone.set(path, uri);
    this.#runtime.soon(() => this.#wake());
  }

  /** Addresses of what is gone since this was last asked. */
  takeGone(): ReadonlyMap<string, string> {
    const gone = new Map(this.#gone);
    this.#gone.clear();
    return gone;
  }

  /** Whether files that nobody has opened are checked as well. */
  get checksUnopened(): boolean {
    return this.#settings.checked.unopened;
  }

  /** The cursor has left a line, or rests in it: what was held back may be shown now. */
  async calmed(): Promise<void> {
    for (const then of this.#onCalm) then();
    const { path } = this.calm;
    if (path === undefined) return this.everythingChanged();
    if (!this.#pulls) this.#touched(path);
    else if (await this.#differs(path)) this.#refresh();
  }

  saved(path: string): void {
    this.#wake();
    if (this.#settings.checked.onType) {
      if (this.calm.saved(path)) this.everythingChanged();
      return;
    }
    this.#diagnostics.forget(path);
    this.#touched(path);
    this.#refresh();
  }

  closed(path: string, dependents: readonly string[]): void {
    const uri = this.#uris.get(path);
    if (uri !== undefined) this.#gone.set(path, uri);
    this.#wake();
    this.#uris.delete(path);
    this.#dirty.delete(path);
    this.#parts.delete(path);
    this.#diagnostics.forget(path);
    if (!this.#pulls && uri !== undefined && this.#published.delete(path)) {
      void this.#connection.sendDiagnostics({ uri, diagnostics: [] });
    }
    this.#others(dependents);
  }

  everythingChanged(): void {
    this.#wake();
    if (this.#workspace.openPaths.length === 0) return;
    if (this.#pulls) return this.#refresh();
    for (const path of this.#workspace.openPaths) this.#dirty.add(path);
    this.#schedule();
  }

  #touched(path: string): void {
    if (!this.#pulls) this.#dirty.add(path);
    if (this.#workspace.openPaths.length > 1 || !this.#pulls) this.#schedule(path);
  }

  /** Files that use the one that changed, in an editor that pulls: it is asked to pull them again. */
  #others(dependents: readonly string[]): void {
    if (dependents.length === 0) return;
    if (this.#pulls) this.#refresh();
    else {
      for (const path of dependents) this.#dirty.add(path);
      this.#schedule();
    }
  }

  #refresh(): void {
    if (!this.#pulls || !this.#refreshes) return;
    void this.#connection.sendRequest("workspace/diagnostic/refresh").catch(() => undefined);
  }

  readonly #changed = new Set<string>();

  #schedule(path?: string): void {
    if (path !== undefined) this.#changed.add(path);
    if (this.#scheduled) return;
    this.#scheduled = true;
    this.#runtime.soon(() => void this.#flush());
  }

  async #flush(): Promise<void> {
    this.#scheduled = false;
    const changed = [...this.#changed];
    this.#changed.clear();
    const dependents = new Set(changed.flatMap((path) => this.#workspace.dependents(path)));
    if (this.#pulls) {
      for (const path of dependents) if (await this.#differs(path)) return this.#refresh();
      return;
    }
    for (const path of dependents) this.#dirty.add(path);
    const paths = [...this.#dirty];
    this.#dirty.clear();
    for (const path of paths) await this.#push(path);
  }

  /** Whether a file has other findings than those its editor last had. */
  async #differs(path: string): Promise<boolean> {
    try {
      // What is outdated is asked about anew by whoever changed it; asking the editor to pull is never wrong.
      if (!this.#workspace.isLoaded(path) || (await this.#check(path)) === "outdated") return true;
      const before = this.#diagnostics.last(path);
      const snapshot = this.#workspace.snapshot(path);
      return snapshot !== undefined && this.setOf(snapshot) !== before;
    } catch {
      // It fails again when it is pulled, and is told of there.
      return true;
    }
  }

  /** Goes on for as long as the file is open. */
  #check(path: string, part?: CheckPart): Promise<CheckState> {
    return this.#checking.check(path, () => this.#uris.has(path), part);
  }

  /** How many parts of what is found in a file were shown, where not all of it was yet. */
  readonly #parts = new Map<string, number>();

  /** What is shown of a file next: the ways on the screen, then their boards, then everything. */
  #nextPart(path: string): CheckPart | undefined {
    return partsInOrder[this.#parts.get(path) ?? 0];
  }

  #showedPart(path: string): void {
    this.#parts.set(path, (this.#parts.get(path) ?? 0) + 1);
  }

  async #push(path: string): Promise<void> {
    try {
      for (let state: CheckState | undefined; state !== "ready"; ) {
        if (!this.#workspace.isLoaded(path)) await this.#workspace.load(path);
        // Touched again while it was read or checked: the next round speaks for it.
        if (!this.#uris.has(path) || this.#dirty.has(path)) return;
        const isFirst = !this.#published.has(path) || this.#parts.has(path);
        state = await this.#check(path, isFirst ? this.#nextPart(path) : undefined);
        if (state === "partly") await this.#publishPart(path);
      }
      this.#parts.delete(path);
      const snapshot = this.#workspace.snapshot(path);
      if (snapshot && !this.#dirty.has(path)) await this.#publish(path, this.setOf(snapshot));
    } catch (error) {
      this.#log(`Checking failed on ${path}: ${error instanceof Error ? error.stack : String(error)}`);
      await this.#publish(path, this.#diagnostics.failed(path, error));
    }
  }

  async #publishPart(path: string): Promise<void> {
    const snapshot = this.#workspace.snapshot(path);
    const set = snapshot && this.#partOf(snapshot);
    this.#showedPart(path);
    if (set) await this.#publish(path, set);
  }

  /** What is found so far: of use where nothing is shown yet, since what is shown is not to go and come again. */
  #partOf(snapshot: Snapshot): DiagnosticSet | undefined {
    const { soFar, projects } = snapshot;
    if (soFar === undefined || projects.every(({ known }) => known)) return undefined;
    return this.setOf(snapshot, soFar, [underWay]);
  }

  /** The findings of a file as they are sent. */
  setOf(snapshot: Snapshot, findings = snapshot.findings, more: readonly Diagnostic[] = []): DiagnosticSet {
    const before = this.#diagnostics.last(snapshot.file.path)?.items ?? [];
    return this.#diagnostics.of(snapshot, this.calm.shown(snapshot, findings, before), more);
  }

  async #publish(path: string, set: DiagnosticSet): Promise<void> {
    const uri = this.#uris.get(path);
    const version = this.#workspace.version(path);
    const sent = this.#published.get(path);
    // One that was typed in is answered for, version by version; one that only might have changed is not sent again.
    if (uri === undefined || (sent?.id === set.id && sent.version === version)) return;
    this.#published.set(path, { id: set.id, version });
    const diagnostics = [...set.items];
    await this.#connection.sendDiagnostics({ uri, diagnostics, ...(version === undefined ? {} : { version }) });
  }

  /** Whether the next pull shows what is found now, or what was found when the file was saved. */
  wants(path: string): "all" | CheckPart | "none" {
    const isFirst = this.#diagnostics.last(path) === undefined;
    if (!this.#settings.checked.onType) return isFirst ? "all" : "none";
    return ((isFirst || this.#parts.has(path)) && this.#refreshes && this.#nextPart(path)) || "all";
  }

  /** The answer to an editor that pulls. */
  pull(snapshot: Snapshot, previous: string | undefined): DocumentDiagnosticReport {
    const { path } = snapshot.file;
    const shown = this.#diagnostics.last(path);
    const part = this.#settings.checked.onType ? this.#partOf(snapshot) : undefined;
    if (part) {
      this.#showedPart(path);
      void this.#finish(path);
    } else this.#parts.delete(path);
    const set = part ?? (this.#settings.checked.onType ? undefined : shown) ?? this.setOf(snapshot);
    if (set.id === previous) return { kind: "unchanged", resultId: set.id };
    return reportOf(set);
  }

  /** Goes on with a check of which a part was shown, and has the editor ask for the next. */
  async #finish(path: string): Promise<void> {
    // One that is outdated was edited, and is asked for by that; one that fails is told of when it is asked for.
    const state = await this.#check(path, this.#nextPart(path)).catch(() => "ready");
    if (state !== "outdated") this.#refresh();
  }

  /** The answer where checking failed: what was found before stays, with a word on it. */
  pullFailed(path: string, error: unknown): DocumentDiagnosticReport {
    return reportOf(this.#diagnostics.failed(path, error));
  }
}

const partsInOrder: readonly CheckPart[] = ["ways", "boards"];

const reportOf = ({ id, items }: DiagnosticSet): DocumentDiagnosticReport => ({
  kind: "full",
  resultId: id,
  items: [...items],
});
