import type { ClientCapabilities, Range, RenameParams, ServerCapabilities, TextEdit } from "vscode-languageserver";
import { definedNames, type Named, nameAt, occurrences, spotOf } from "../features/names.ts";
import { rename, renameable } from "../features/rename.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { locationOf, rangeOf } from "./convert.ts";
import { badRequest, type Service } from "./service.ts";
import { everySchedule, readUsers } from "./shared-names.ts";

export function renaming(service: Service, client: ClientCapabilities): ServerCapabilities {
  const { connection, ask, cursor, workspace } = service;
  connection.onPrepareRename(
    ask("textDocument/prepareRename", null, (snapshot, { position }) => {
      const named = renameable(snapshot, cursor(snapshot, position));
      return named ? { range: rangeOf(snapshot.positions, spotOf(named)), placeholder: named.name.value } : null;
    }),
  );
  const answer = ask("textDocument/rename", null, (snapshot, { position, newName }: RenameParams) => {
    const at = cursor(snapshot, position);
    const renamed = rename(snapshot, at, newName);
    if ("refused" in renamed) return badRequest(renamed.refused);
    const named = nameAt(snapshot, at);
    const all = named ? everySchedule(workspace, snapshot, named) : [snapshot];
    if (named && all.some((one) => isTaken(one, named, newName))) return badRequest(`“${newName}” is taken already.`);
    const places = new Map<string, { readonly uri: string; readonly range: Range }>();
    for (const one of all)
      for (const spot of one === snapshot || !named ? renamed.spots : occurrences(one, named).map(spotOf)) {
        const location = locationOf(workspace, one, spot);
        if (location) places.set(JSON.stringify(location), location);
      }
    const byFile = Map.groupBy(places.values(), ({ uri }) => uri);
    const edits = [...byFile].map(([uri, own]) => [
      uri,
      own.map(({ range }): TextEdit => ({ range, newText: newName })),
    ]);
    return { changes: Object.fromEntries(edits) };
  });
  connection.onRenameRequest(async (params, token) => {
    await readUsers(service, params);
    return answer(params, token);
  });
  const prepares = client.textDocument?.rename?.prepareSupport ?? false;
  return { renameProvider: prepares ? { prepareProvider: true } : true };
}

const isTaken = (snapshot: Snapshot, { names, board, way }: Named, newName: string): boolean =>
  definedNames(snapshot, names, board, way).some(({ name }) => name.value === newName);
