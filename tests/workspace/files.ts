/** Files of a folder as the server has them and as the terminal reads them, so that both can be asked the same. */
import type { Edit } from "../../server/syntax/document.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../../server/workspace/loaded-file.ts";
import { resolveUri } from "../../server/workspace/uri.ts";
import { type Snapshot, Workspace } from "../../server/workspace/workspace.ts";

const folder = "file:///schedules/";

export class Files {
  readonly workspace: Workspace;
  readonly #disk = new Map<string, string>();
  readonly #open = new Map<string, string>();
  #version = 0;
  readonly #indexed: Promise<unknown>;

  constructor(texts: Readonly<Record<string, string>>) {
    for (const [name, text] of Object.entries(texts)) this.#disk.set(this.path(name), text);
    this.workspace = new Workspace({
      read: async (path) => {
        const text = this.#disk.get(path);
        return text === undefined ? { failure: "there is no such file." } : { text };
      },
      resolve: resolveUri,
    });
    this.#indexed = this.workspace.index(Promise.resolve([...this.#disk.keys()]));
  }

  path(name: string): string {
    return `${folder}${name}`;
  }

  get names(): readonly string[] {
    return [...new Set([...this.#disk.keys(), ...this.#open.keys()])].map((path) => path.slice(folder.length)).sort();
  }

  /** The text of a file as it is: in the editor before that on disk. */
  text(name: string): string | undefined {
    return this.#open.get(this.path(name)) ?? this.#disk.get(this.path(name));
  }

  isOpen(name: string): boolean {
    return this.#open.has(this.path(name));
  }

  open(name: string, text = this.#disk.get(this.path(name)) ?? ""): void {
    this.#open.set(this.path(name), text);
    this.workspace.open(this.path(name), ++this.#version, text);
  }

  /** Replaces the text of an open file, as one edit without a range. */
  write(name: string, text: string): void {
    this.edit(name, { text }, text);
  }

  /** An edit as an editor reports it, with the text it leads to. */
  edit(name: string, edit: Edit, text: string): void {
    this.#open.set(this.path(name), text);
    this.workspace.edit(this.path(name), ++this.#version, [edit]);
  }

  close(name: string): void {
    this.#open.delete(this.path(name));
    this.workspace.close(this.path(name));
  }

  /** Writes a file on disk, or takes it away, and tells the workspace as a watcher would. */
  async onDisk(name: string, text: string | undefined): Promise<void> {
    if (text === undefined) this.#disk.delete(this.path(name));
    else this.#disk.set(this.path(name), text);
    if (!this.isOpen(name)) await this.workspace.changedOnDisk(this.path(name));
  }

  async snapshot(name: string): Promise<Snapshot> {
    await this.#indexed;
    await this.workspace.load(this.path(name));
    const snapshot = this.workspace.snapshot(this.path(name));
    if (!snapshot) throw new Error(`${name} is not there.`);
    return snapshot;
  }

  /** Every file as a program that has just been started reads it. */
  get all(): readonly LoadedFile[] {
    const disk = this.disk;
    return this.names.map((name) => disk.file(this.path(name)) as LoadedFile);
  }

  /** The same files with nothing known of them. */
  get disk(): Sources {
    this.#fresh ??= new Map();
    const fresh = this.#fresh;
    return {
      resolve: resolveUri,
      file: (path) => {
        const text = this.#open.get(path) ?? this.#disk.get(path);
        const before = fresh.get(path);
        if (text !== undefined && before?.text === text) return before.file;
        if (text === undefined) return { failure: "there is no such file." };
        const file = fileOfText(path, text);
        fresh.set(path, { text, file });
        return file;
      },
    };
  }

  #fresh: Map<string, { readonly text: string; readonly file: LoadedFile }> | undefined;

  /** Forgets what the terminal read: the next check begins with nothing. */
  forget(): void {
    this.#fresh = undefined;
  }
}
