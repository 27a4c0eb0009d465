import type { ReadResult } from "../workspace/project.ts";

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
}
