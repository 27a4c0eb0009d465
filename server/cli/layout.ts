/** What there is to lay out in one file, as plain data. */
import { lineEdits } from "../format/edits.ts";
import { format, formatDocument } from "../format/format.ts";
import { type Document, textOf } from "../syntax/document.ts";
import type { TextEdit } from "../text/lines.ts";
import { isNewer } from "../workspace/language-version.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { upgraded } from "../workspace/upgrade.ts";
import type { Disk } from "./files.ts";

export interface Layout {
  /** What tells the text it is of from any other. */
  readonly content: string;
  /** What makes of the text one in the one style; nothing where it is so already. */
  readonly edits: readonly TextEdit[];
  /** Whether there are lines that could not be read, and so were left alone. */
  readonly unread: boolean;
  /** Whether some of them are the marks of a merge conflict. */
  readonly conflicted: boolean;
}

/** Of a file in a newer version of the language nothing is known. */
export type LayoutResult = Layout | { readonly isNewer: true };

export const layoutMaker =
  (upgrade: boolean) =>
  (file: LoadedFile, disk: Disk): LayoutResult =>
    layoutOf(file, disk.contentOf(file.path), upgrade);

/** `upgrade`: in the present words too. */
export function layoutOf(file: LoadedFile, content: string, upgrade: boolean): LayoutResult {
  if (isNewer(file)) return { isNewer: true };
  const problems = [...file.model.problems.values()].flat();
  return {
    content,
    edits: editsOf(file.document, upgrade),
    unread: problems.length > 0,
    conflicted: problems.some(({ check }) => check === "conflict"),
  };
}

function editsOf(document: Document, upgrade: boolean): readonly TextEdit[] {
  const plain = () => formatDocument(document)?.edits ?? [];
  if (!upgrade) return plain();
  const text = textOf(document);
  const present = upgraded(text);
  return present === text ? plain() : lineEdits(text, format(present)?.text ?? present, 0);
}
