import type { Document } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import type { ReadResult } from "../workspace/project.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { EnterQuestion, PaperAnswer, PaperQuestion } from "./paper-protocol.ts";

export type Failure = { readonly failure: string };

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
  /** Milliseconds of a clock that only runs forwards. */
  now(): number;
  readonly office?: PaperOffice;
}
