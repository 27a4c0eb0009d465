import {
  type CancellationToken,
  type Connection,
  ErrorCodes,
  type Position,
  ResponseError,
} from "vscode-languageserver";
import type { Cursor } from "../features/cursor.ts";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import type { CheckPart } from "./checking.ts";
import type { Part } from "./part.ts";

interface AboutDocument {
  readonly textDocument: { readonly uri: string };
}

/** What a feature asks for besides its document. */
export interface Needs<T> {
  /** The findings of the document: they are worked out beforehand, in slices; some will do where all keep one waiting. */
  findings?(path: string): "all" | CheckPart | "none";
  /** What takes long in a large file, done beforehand in steps between which the server takes in what has arrived. */
  before?(snapshot: Snapshot): Iterable<unknown>;
  /** What of the program it needs loaded. */
  readonly part?: Pick<Part<unknown>, "isLoaded" | "load">;
  /** What is answered where it fails. */
  failed?(path: string, error: unknown): T;
  overtaken?(): ResponseError<unknown>;
}

/** For a feature that shows findings where the cursor is: it does not wait for those of a whole large project. */
export const findings = { findings: (): CheckPart => "boards" };

/** What a feature's registration is lent: a request comes in, its snapshot and cursor come ready. */
export interface Service {
  readonly connection: Connection;
  readonly workspace: Workspace;
  /** Runs a feature on a document. `neutral` is answered where there is no such document, or the feature fails. */
  ask<P extends AboutDocument, T>(
    name: string,
    neutral: T,
    work: (snapshot: Snapshot, params: P) => T | ResponseError<never>,
    needs?: Needs<T>,
  ): (params: P, token: CancellationToken) => Promise<T | ResponseError<never>>;
  cursor(snapshot: Snapshot, position: Position): Cursor;
}

/** A request whose parameters make no sense, or that cannot be granted. */
export const badRequest = (message: string): ResponseError<never> =>
  new ResponseError(ErrorCodes.InvalidParams, message);
