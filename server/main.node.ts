/** The language server on Node: over stdio, a socket, or the channel an editor opens to a child process. */
import { readdir } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { Grounds } from "./disk/grounds.ts";
import { readSchedule } from "./disk/read.ts";
import { isSchedule } from "./disk/refusals.ts";
import { connectionOptions } from "./lsp/connection.ts";
import type { Runtime } from "./lsp/runtime.ts";
import { startServer } from "./lsp/server.ts";
import type { ReadResult } from "./workspace/project.ts";

const grounds = new Grounds();

/** An address may be of something else than a file here, or of no file there could be. */
function pathOf(uri: string): string | undefined {
  try {
    return uri.startsWith("file:") ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined;
  }
}

async function read(uri: string): Promise<ReadResult> {
  const path = pathOf(uri);
  return path === undefined ? { failure: "it is not a file on this computer." } : await readSchedule(path, grounds);
}

/** Folders that hold no schedules of anybody's own. */
const passedOver = /^(?:\..*|node_modules)$/;

async function list(folders: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const pending = folders.flatMap((uri) => pathOf(uri) ?? []);
  for (let folder = pending.pop(); folder !== undefined; folder = pending.pop()) {
    const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      if (entry.isDirectory() && !passedOver.test(entry.name)) pending.push(join(folder, entry.name));
      else if (entry.isFile() && isSchedule(entry.name)) found.push(pathToFileURL(join(folder, entry.name)).href);
    }
  }
  return found;
}

const runtime: Runtime = {
  read,
  list,
  openedFolder: (uri) => admit(pathOf(uri)),
  openedFile: (uri) => admit(pathOf(uri), dirname),
  soon: (run) => void setImmediate(run),
  now: () => performance.now(),
};

function admit(path: string | undefined, folderOf = (folder: string): string => folder): void {
  if (path !== undefined) grounds.admit(folderOf(path));
}

startServer(createConnection(ProposedFeatures.all, connectionOptions()), runtime);
