import type {
  ClientCapabilities,
  RenameParams,
  ServerCapabilities,
  TextEdit,
  WorkspaceEdit,
} from "vscode-languageserver";
import { spotOf } from "../features/names.ts";
import { rename, renameable } from "../features/rename.ts";
import { locationOf, rangeOf } from "./convert.ts";
import { badRequest, type Service } from "./service.ts";

export function renaming(
  { connection, ask, cursor, workspace }: Service,
  client: ClientCapabilities,
): ServerCapabilities {
  connection.onPrepareRename(
    ask("textDocument/prepareRename", null, (snapshot, { position }) => {
      const named = renameable(snapshot, cursor(snapshot, position));
      return named ? { range: rangeOf(snapshot.positions, spotOf(named)), placeholder: named.name.value } : null;
    }),
  );
  connection.onRenameRequest(
    ask("textDocument/rename", null as WorkspaceEdit | null, (snapshot, { position, newName }: RenameParams) => {
      const renamed = rename(snapshot, cursor(snapshot, position), newName);
      if ("refused" in renamed) return badRequest(renamed.refused);
      const changes: Record<string, TextEdit[]> = {};
      for (const spot of renamed.spots) {
        const location = locationOf(workspace, snapshot, spot);
        if (!location) continue;
        changes[location.uri] ??= [];
        changes[location.uri]?.push({ range: location.range, newText: newName });
      }
      return { changes };
    }),
  );
  const prepares = client.textDocument?.rename?.prepareSupport ?? false;
  return { renameProvider: prepares ? { prepareProvider: true } : true };
}
