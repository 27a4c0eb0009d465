import { type CallHierarchyItem, type ServerCapabilities, SymbolKind } from "vscode-languageserver";
import { type BoardItem, boardItemAt, fedBy, feeding } from "../features/feeders.ts";
import type { Spot } from "../rules/frame/rule.ts";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import { locationOf } from "./convert.ts";
import type { Service } from "./service.ts";

interface About {
  readonly textDocument: { readonly uri: string };
  readonly item: CallHierarchyItem;
}

/** Along the feeders: a board is called by what feeds it, and calls what it feeds. */
export function callHierarchy({ connection, ask, cursor, workspace }: Service): ServerCapabilities {
  const itemOf = (snapshot: Snapshot, board: BoardItem): CallHierarchyItem[] => itemIn(workspace, snapshot, board);
  connection.languages.callHierarchy.onPrepare(
    ask("textDocument/prepareCallHierarchy", null, (snapshot, { position }) => {
      const board = boardItemAt(snapshot, cursor(snapshot, position));
      const items = board ? itemOf(snapshot, board) : [];
      return items.length > 0 ? items : null;
    }),
  );
  const incoming = ask("callHierarchy/incomingCalls", [], (snapshot, { item }: About) =>
    fedBy(snapshot, item.name).flatMap(({ board, by }) =>
      itemOf(snapshot, board).map((from) => ({ from, fromRanges: rangesIn(workspace, snapshot, by, from.uri) })),
    ),
  );
  const outgoing = ask("callHierarchy/outgoingCalls", [], (snapshot, { item }: About) =>
    feeding(snapshot, item.name).flatMap(({ board, by }) =>
      itemOf(snapshot, board).map((to) => ({ to, fromRanges: rangesIn(workspace, snapshot, by, item.uri) })),
    ),
  );
  connection.languages.callHierarchy.onIncomingCalls(({ item }, token) =>
    incoming({ textDocument: { uri: item.uri }, item }, token),
  );
  connection.languages.callHierarchy.onOutgoingCalls(({ item }, token) =>
    outgoing({ textDocument: { uri: item.uri }, item }, token),
  );
  return { callHierarchyProvider: true };
}

function itemIn(workspace: Workspace, snapshot: Snapshot, { name, title, header }: BoardItem): CallHierarchyItem[] {
  const location = locationOf(workspace, snapshot, header);
  if (!location) return [];
  const { uri, range } = location;
  return [
    { name, ...(title === "" ? {} : { detail: title }), kind: SymbolKind.Module, uri, range, selectionRange: range },
  ];
}

/** Ranges of a call are those of the caller's own file. */
function rangesIn(workspace: Workspace, snapshot: Snapshot, spot: Spot, uri: string) {
  const location = locationOf(workspace, snapshot, spot);
  return location?.uri === uri ? [location.range] : [];
}
