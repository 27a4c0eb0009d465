/** The extension where there is no Node: the server runs in a worker of the browser. */
import { type ExtensionContext, Uri } from "vscode";
import { LanguageClient, RequestType } from "vscode-languageclient/browser";
import { type FileAnswer, listRequest, readRequest } from "../../server/lsp/file-protocol.ts";
import { start, stop } from "../extension.ts";
import { listSchedules, readSchedule } from "./files.ts";

export async function activate(context: ExtensionContext): Promise<void> {
  const parts = `${Uri.joinPath(context.extensionUri, "dist/web-server").toString(true)}/`;
  await start(context, (options) => {
    const client = new LanguageClient("wayfile", "Wayfile", new Worker(`${parts}main.js`), {
      ...options,
      // A worker does not know where its script lies: an editor may start it from a copy.
      initializationOptions: { ...options.initializationOptions, parts },
    });
    client.onRequest(new RequestType<{ readonly uri?: unknown }, FileAnswer, void>(readRequest), ({ uri }) =>
      readSchedule(uri),
    );
    client.onRequest(listRequest, () => listSchedules());
    return client;
  });
}

export const deactivate = stop;
