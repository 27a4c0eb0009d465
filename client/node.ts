/** The extension on Node: the server runs in a process of its own. */
import { join } from "node:path";
import { commands, type ExtensionContext } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { start, stop } from "./extension.ts";
import { serverFlags } from "./serverFlags.ts";

export async function activate(context: ExtensionContext): Promise<void> {
  // A server in a process sets papers as files of other programs; one in a worker of a browser has no libraries for it.
  void commands.executeCommand("setContext", "wayfile.office", true);
  const module = join(context.extensionPath, "dist/server.cjs");
  const server = { module, transport: TransportKind.ipc, options: { execArgv: [...serverFlags] } };
  await start(context, (options) => new LanguageClient("wayfile", "Wayfile", server, options));
}

export const deactivate = stop;
