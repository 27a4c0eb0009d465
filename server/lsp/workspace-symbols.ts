import type { ServerCapabilities, WorkspaceSymbol } from "vscode-languageserver";
import { symbols } from "../features/symbols.ts";
import { matching } from "../features/workspace-symbols.ts";
import { rangeOf, symbolKind } from "./convert.ts";
import type { Service } from "./service.ts";

/** As many as a list can show; a longer query finds the rest. */
const most = 500;

/** What is found by its name in every schedule of the folders, opened or not. */
export function workspaceSymbols({ connection, workspace }: Service): ServerCapabilities {
  connection.onWorkspaceSymbol(async ({ query }, token): Promise<WorkspaceSymbol[]> => {
    const found: WorkspaceSymbol[] = [];
    await workspace.indexed();
    for (const path of workspace.knownPaths) {
      if (token.isCancellationRequested || found.length >= most) break;
      await workspace.read(path);
      const snapshot = workspace.snapshot(path);
      if (!snapshot) continue;
      for (const { symbol, within } of matching(symbols(snapshot), query)) {
        found.push({
          name: symbol.name,
          kind: symbolKind(symbol),
          containerName: within,
          location: { uri: workspace.uri(path), range: rangeOf(snapshot.positions, symbol.header) },
        });
      }
    }
    return found.slice(0, most);
  });
  return { workspaceSymbolProvider: true };
}
