import type { RenameFilesParams, ServerCapabilities, TextEdit, WorkspaceEdit } from "vscode-languageserver";
import { links } from "../features/links.ts";
import { canonical, relativeUri, resolveUri } from "../workspace/uri.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { rangeOf } from "./convert.ts";
import type { Service } from "./service.ts";

/** Where a file or folder goes, each `use` that leads to it follows, and so do those of the file itself. */
export function fileOperations({ connection, workspace }: Service): ServerCapabilities {
  connection.workspace.onWillRenameFiles(async ({ files }: RenameFilesParams): Promise<WorkspaceEdit> => {
    const moved = movedBy(files);
    await workspace.indexed();
    const changes: Record<string, TextEdit[]> = {};
    for (const path of workspace.knownPaths) {
      await workspace.read(path);
      const snapshot = workspace.snapshot(path);
      const edits = snapshot ? followed(snapshot, moved) : [];
      // The editor applies this before it moves the file.
      if (edits.length > 0) changes[workspace.uri(path)] = edits;
    }
    return { changes };
  });
  const filters = [
    { scheme: "file", pattern: { glob: "**/*.ways" } },
    { scheme: "file", pattern: { glob: "**/" } },
  ];
  return { workspace: { fileOperations: { willRename: { filters } } } };
}

type Moved = (path: string) => string;

/** Where an address leads afterwards; one below a folder that is moved goes with it. */
function movedBy(files: RenameFilesParams["files"]): Moved {
  const moves = files.map(({ oldUri, newUri }) => [canonical(oldUri), canonical(newUri)] as const);
  return (path) => {
    for (const [from, to] of moves) {
      if (path === from) return to;
      if (path.startsWith(`${from.replace(/\/$/, "")}/`))
        return to.replace(/\/$/, "") + path.slice(from.replace(/\/$/, "").length);
    }
    return path;
  };
}

function followed(snapshot: Snapshot, moved: Moved): TextEdit[] {
  const here = snapshot.file.path;
  return links(snapshot, resolveUri).flatMap(({ spot, path }) => {
    const before = relativeUri(here, path);
    const after = relativeUri(moved(here), moved(path));
    if (after === undefined || after === before) return [];
    return [{ range: rangeOf(snapshot.positions, spot), newText: `"${after.replace(/["\\]/g, "\\$&")}"` }];
  });
}
