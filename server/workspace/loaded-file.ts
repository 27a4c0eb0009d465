/** A file as it is read, and where it comes from. Nothing here knows where files are: a host lends a way to read them. */
import { type FileModel, readFile } from "../model/file.ts";
import type { KnownLines } from "../model/known-lines.ts";
import { type Document, documentOf } from "../syntax/document.ts";
import { isLarge, sizeOf } from "./large-text.ts";

export type ReadResult = { readonly text: string } | { readonly failure: string };

export interface Host {
  /** The text of a file, or one sentence that says why it cannot be had. */
  read(path: string): Promise<ReadResult>;
  /** The path a `use` means, from the file it stands in. */
  resolve(from: string, use: string): string;
}

export interface LoadedFile {
  readonly path: string;
  readonly document: Document;
  readonly model: FileModel;
  /** Of a file that is too large to be read: it stands as an empty one. */
  readonly unreadSize?: number;
}

/** `lines`: those that were met in other files, where several are read. */
export function loadFile(path: string, document: Document, lines?: KnownLines): LoadedFile {
  const size = sizeOf(document);
  if (isLarge(size)) return { ...loadFile(path, documentOf("")), unreadSize: size };
  return { path, document, model: readFile(document.segments, lines) };
}

/** Text of unknown origin as a file. */
export const fileOfText = (path: string, text: string, lines?: KnownLines): LoadedFile =>
  loadFile(path, documentOf(text), lines);
