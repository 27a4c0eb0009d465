/** A name of a file that several schedules use stands in all of them, not only in the one it was asked from. */
import type { Position } from "vscode-languageserver";
import { definitions, type Named, nameAt } from "../features/names.ts";
import { canonical } from "../workspace/uri.ts";
import { fileOfSegment, type Snapshot, type Workspace } from "../workspace/workspace.ts";
import type { Service } from "./service.ts";

interface Asked {
  readonly textDocument: { readonly uri: string };
  readonly position: Position;
}

/** Reads every schedule that uses the files in which the name at a place is defined. */
export async function readUsers({ workspace, cursor }: Service, { textDocument, position }: Asked): Promise<void> {
  const path = canonical(textDocument.uri);
  await workspace.load(path);
  const snapshot = workspace.snapshot(path);
  const named = snapshot && nameAt(snapshot, cursor(snapshot, position));
  if (named) await Promise.all(homesOf(snapshot, named).map((home) => workspace.load(home)));
}

/** The schedules a name can stand in, the one it was asked from first. */
export function everySchedule(workspace: Workspace, snapshot: Snapshot, named: Named): readonly Snapshot[] {
  const own = new Set(snapshot.files);
  const roots = new Set(homesOf(snapshot, named).flatMap((home) => workspace.roots(home)));
  const others = [...roots].flatMap((root) => workspace.snapshot(root) ?? []);
  return [snapshot, ...others.filter(({ file }) => !own.has(file))];
}

function homesOf(snapshot: Snapshot, named: Named): readonly string[] {
  const files = definitions(snapshot, named).flatMap(({ fact }) => fileOfSegment(snapshot, fact.segment)?.path ?? []);
  return [...new Set(files)];
}
