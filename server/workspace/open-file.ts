/** One document as an editor has it: its text, and the edits nobody has asked for yet. */
import type { KnownLines } from "../model/known-lines.ts";
import type { Document, Edit } from "../syntax/document.ts";
import { applyEdit } from "../syntax/edit.ts";
import { editText, isLarge, openText } from "./large-text.ts";
import { type LoadedFile, loadFile } from "./loaded-file.ts";

export interface OpenFile {
  /** The address as the editor spells it. */
  readonly uri: string;
  version: number;
  document: Document;
  /** Edits that were noted and not yet applied: typing costs nothing until somebody asks. */
  pending: Edit[];
  loaded: LoadedFile | undefined;
}

/** An editor that opens a file nobody changed keeps all that is known of it. */
export function openFile(uri: string, version: number, text: string, onDisk: Document | undefined): OpenFile {
  const document = onDisk && !isLarge(text.length) ? applyEdit(onDisk, { text }) : openText(text);
  return { uri, version, document, pending: [], loaded: undefined };
}

/** Edits up to one that brings the whole text anew are of no more use. */
export function noteEdits(file: OpenFile, version: number, edits: readonly Edit[]): void {
  const whole = edits.findLastIndex((edit) => edit.range === undefined);
  if (whole >= 0) file.pending = [...edits.slice(whole)];
  else file.pending.push(...edits);
  file.version = version;
  file.loaded = undefined;
}

/** The file with all its edits applied. */
export function upToDate(path: string, file: OpenFile, lines: KnownLines): LoadedFile {
  for (const edit of file.pending) file.document = editText(file.document, edit);
  file.pending = [];
  file.loaded ??= loadFile(path, file.document, lines);
  return file.loaded;
}
