/** The language server in a Web Worker: the same one, with the files of the editor's own file system. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from "vscode-languageserver/browser";
import { connectionOptions } from "../../server/lsp/connection.ts";
import { type FileAnswer, listRequest, readRequest } from "../../server/lsp/file-protocol.ts";
import type { Runtime } from "../../server/lsp/runtime.ts";
import { startServer } from "../../server/lsp/server.ts";

/** `wayfileParts`: where the parts of the server lie; whatever loads them reads it. */
const scope = self as unknown as DedicatedWorkerGlobalScope & { wayfileParts?: string };
const connection = createConnection(
  new BrowserMessageReader(scope),
  new BrowserMessageWriter(scope),
  connectionOptions(),
);

/** Messages that have arrived are dealt with before a message to oneself is: a timer would wait four milliseconds. */
const channel = new MessageChannel();
const waiting: (() => void)[] = [];
channel.port1.onmessage = () => waiting.shift()?.();

const runtime: Runtime = {
  partsAt: (address) => {
    scope.wayfileParts = address;
  },
  today: () => new Date().toLocaleDateString("sv-SE"),
  // The editor decides what may be read: the folders that are open, and the folder of an open schedule.
  read: async (uri) =>
    await connection
      .sendRequest<FileAnswer>(readRequest, { uri })
      .catch((error: unknown) => ({ failure: error instanceof Error ? error.message : String(error) })),
  list: async () => await connection.sendRequest<readonly string[]>(listRequest).catch(() => []),
  openedFolder: () => {},
  openedFile: () => {},
  soon: (run) => {
    waiting.push(run);
    channel.port2.postMessage(undefined);
  },
  now: () => performance.now(),
};

startServer(connection, runtime);
