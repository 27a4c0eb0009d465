/** The language server on Node: over stdio, a socket, or the channel an editor opens to a child process. */
import { readdir } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import {
  type Connection,
  createConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { Grounds } from "./disk/grounds.ts";
import { readSchedule } from "./disk/read.ts";
import { isSchedule } from "./disk/refusals.ts";
import { changesOf, enteredReport } from "./entry/change.ts";
import { enter } from "./entry/enter.ts";
import { resultOf } from "./features/report.ts";
import { connectionOptions } from "./lsp/connection.ts";
import type { PaperOffice, Runtime } from "./lsp/runtime.ts";
import { startServer } from "./lsp/server.ts";
import { digestOf } from "./papers/digest.ts";
import { incomingOf } from "./papers/incoming.ts";
import { paperOf } from "./papers/paper.ts";
import { decode } from "./text/decode.ts";
import type { ReadResult } from "./workspace/project.ts";
import { nameOfUri } from "./workspace/uri.ts";

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

/** A file that came back from a meter or a colleague holds a few thousand readings at the most. */
const mostBytes = 20_000_000;

const office: PaperOffice = {
  paper: async ({ uri, printed, ...asked }, snapshot) => {
    const file = pathOf(uri);
    const imprint = { file: file === undefined ? nameOfUri(uri) : basename(file), digest: digestOf(snapshot.files) };
    const stamped = printed === undefined ? imprint : { ...imprint, printed };
    const made = await paperOf(asked, snapshot.installations, () => resultOf(snapshot), stamped);
    return "failure" in made ? made : { base64: Buffer.from(made.content).toString("base64") };
  },
  entered: async ({ name, base64 }, { installations, files }) => {
    const [installation, ...others] = installations;
    if (!installation) return { failure: "There is no installation in this file to enter readings of." };
    if (others.length > 0)
      return { failure: "This file holds several installations: keep each in a file of its own to enter readings." };
    const bytes = Buffer.from(base64, "base64");
    if (bytes.length > mostBytes) return { failure: "The file of readings is too large." };
    const workbook = name.toLowerCase().endsWith(".xlsx");
    const text = workbook ? { text: "" } : decode(bytes);
    if ("failure" in text) return text;
    const read = await incomingOf(workbook ? { workbook: bytes } : text, installation, {});
    if ("failure" in read) return { failure: `“${name}”: ${read.failure}` };
    const entered = enter(installation, read.incoming, {});
    const changes = changesOf(files, installation, entered);
    if ("failure" in changes) return changes;
    const changed = read.base !== undefined && read.base !== digestOf(files);
    const names = changes.files.map(({ file }) => nameOfUri(file.path));
    return {
      files: changes.files.map(({ file, segments }) => ({ path: file.path, document: file.document, segments })),
      report: `${changed ? "The schedule has changed since the worksheet was made of it.\n" : ""}${enteredReport(entered, read, names, false)}`,
      misfits: entered.misfits.length,
    };
  },
};

const runtime: Runtime = {
  read,
  list,
  openedFolder: (uri) => admit(pathOf(uri)),
  openedFile: (uri) => admit(pathOf(uri), dirname),
  soon: (run) => void setImmediate(run),
  now: () => performance.now(),
  office,
};

function admit(path: string | undefined, folderOf = (folder: string): string => folder): void {
  if (path !== undefined) grounds.admit(folderOf(path));
}

/** Over stdio a frame that cannot be read is the end: nothing behind it can be told from it. */
function overStdio(): Connection {
  const reader = new StreamMessageReader(process.stdin);
  const made = createConnection(
    ProposedFeatures.all,
    reader,
    new StreamMessageWriter(process.stdout),
    connectionOptions(),
  );
  let isOrderly = false;
  made.onShutdown(() => {
    isOrderly = true;
  });
  reader.onClose(() => process.exit(isOrderly ? 0 : 1));
  reader.onError((error) => {
    // Behind a message that holds no JSON, or none that makes sense, the next is found all the same.
    if (!/^(?:Header must|Message header must|Content-Length value must) /.test(error.message)) return;
    const [reason] = error.message.split("\n");
    process.stderr.write(`The server ends: a message cannot be told from the next. ${reason}\n`);
    process.exit(1);
  });
  return made;
}

const connection = process.argv.includes("--stdio")
  ? overStdio()
  : createConnection(ProposedFeatures.all, connectionOptions());
startServer(connection, runtime);

/**
 * A failure outside of every request, which Node would end the process for: what is typed lives here, and what is kept
 * is never changed halfway. One of writing to an editor that is gone is the end.
 */
process.on("uncaughtException", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE" || error.code === "ERR_STREAM_DESTROYED") process.exit(1);
  connection.console.error(`The server stumbled: ${error.stack ?? error}`);
});
