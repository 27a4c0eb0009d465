import type { PastOfFile } from "../features/past.ts";
import type { Document } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import type { ReadResult } from "../workspace/loaded-file.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { EnterAnswer, EnterQuestion, PaperAnswer, PaperQuestion } from "./paper-protocol.ts";

type Failure = { readonly failure: string };

/** Papers and readings from outside, whose libraries no browser has. */
export interface PaperOffice {
  paper(asked: PaperQuestion, snapshot: Snapshot): Promise<PaperAnswer | Failure>;
  /** The files that readings change, and in words what was entered. */
  entered(asked: EnterQuestion, snapshot: Snapshot): Promise<EnteredFiles | Failure>;
}

export interface EnteredFiles {
  readonly files: readonly {
    readonly path: string;
    readonly document: Document;
    readonly segments: ReadonlyMap<Segment, string>;
  }[];
  readonly report: string;
  readonly misfits: number;
  readonly asks?: EnterAnswer["asks"];
}

/** A file as git knows it. Each answers with one sentence where it cannot. */
export interface PastRuntime {
  /** The commits that changed a file, with all its texts. */
  commits(uri: string): Promise<PastOfFile | { readonly failure: string }>;
  /** The text of a file in a revision. */
  text(uri: string, revision: string): Promise<ReadResult>;
}

/** What the server needs of the world it runs in. Node lends one, a browser another, a test a third. */
export interface Runtime {
  /** The text at an address, or one sentence that says why it cannot be had. */
  read(uri: string): Promise<ReadResult>;
  /** Addresses of the schedules below some folders. */
  list(folders: readonly string[]): Promise<readonly string[]>;
  /** A folder was opened: what lies in it may be read. */
  openedFolder(uri: string): void;
  /** A document was opened: what lies in its folder may be read. */
  openedFile(uri: string): void;
  /** Runs something once the messages that have already arrived are dealt with. */
  soon(run: () => void): void;
  /** The nearest settings above a file, by the name they have; missing where the files are somebody else's. */
  settings?(uri: string, name: string): { readonly uri: string; readonly text: string } | undefined;
  /** What git knows of files; missing where there is no disk. */
  readonly past?: PastRuntime;
  /** The day, ISO 8601, by the calendar on the wall. */
  today(): string;
  /** Milliseconds of a clock that only runs forwards. */
  now(): number;
  readonly office?: PaperOffice;
  /** Told where the parts of the server lie, where it could not know by itself. */
  partsAt?(address: string): void;
  /** Told that so much is about to be read that it should go easy on memory. */
  holdsMuch?(): void;
  /** Told that all of a file was checked, or the boards that are shown: what is compiled by then is worth keeping. */
  checked?(goesOn: boolean): void;
}
