/** The language server on Node: over stdio, a socket, or the channel an editor opens to a child process. */
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { createConnection, ProposedFeatures } from "vscode-languageserver/node";
import { connectionOptions } from "./lsp/connection.ts";
import type { Runtime } from "./lsp/runtime.ts";
import { startServer } from "./lsp/server.ts";
import type { ReadResult } from "./workspace/project.ts";

async function read(uri: string): Promise<ReadResult> {
  if (!uri.startsWith("file:")) return { failure: "it is not a file on this computer." };
  try {
    return { text: await readFile(fileURLToPath(uri), "utf8") };
  } catch (error) {
    const missing = error instanceof Error && "code" in error && error.code === "ENOENT";
    return { failure: missing ? "there is no such file." : "it cannot be read." };
  }
}

/** Folders that hold no schedules of anybody's own. */
const passedOver = /^(?:\..*|node_modules)$/;

async function list(folders: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const pending = folders.filter((uri) => uri.startsWith("file:")).map((uri) => fileURLToPath(uri));
  for (let folder = pending.pop(); folder !== undefined; folder = pending.pop()) {
    const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      if (entry.isDirectory() && !passedOver.test(entry.name)) pending.push(join(folder, entry.name));
      else if (entry.isFile() && entry.name.endsWith(".ways")) found.push(pathToFileURL(join(folder, entry.name)).href);
    }
  }
  return found;
}

const runtime: Runtime = { read, list, soon: (run) => void setImmediate(run) };

startServer(createConnection(ProposedFeatures.all, connectionOptions), runtime);
