/** The language server on Node: over stdio, a socket, or the channel an editor opens to a child process. */
import { readdir } from "node:fs";
import { dirname, join, sep } from "node:path";
import { getBuiltinModule, hrtime } from "node:process";
import { fileURLToPath, pathToFileURL } from "node:url";
import { promisify } from "node:util";
import {
  type Connection,
  createConnection,
  ProposedFeatures,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { announceChecked } from "./checked.ts";
import { Grounds } from "./disk/grounds.ts";
import { readSchedule } from "./disk/read.ts";
import { isSchedule } from "./disk/refusals.ts";
import { nearestAbove } from "./disk/settings-file.ts";
import { connectionOptions } from "./lsp/connection.ts";
import { FrameWatch } from "./lsp/frames.ts";
import type { PaperOffice, PastRuntime, Runtime } from "./lsp/runtime.ts";
import { startServer } from "./lsp/server.ts";
import { decode } from "./text/decode.ts";
import type { ReadResult } from "./workspace/loaded-file.ts";
import { pastOf } from "./workspace/uri.ts";

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
  if (path !== undefined) return await readSchedule(path, grounds);
  const before = pastOf(uri);
  return before ? await past.text(before.uri, before.revision) : { failure: "it is not a file on this computer." };
}

/** Folders that hold no schedules of anybody's own. */
const passedOver = /^(?:\..*|node_modules)$/;

/** `node:fs/promises` takes longer to load than a schedule to be read. */
const entriesOf = promisify(readdir);

async function list(folders: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  const pending = folders.flatMap((uri) => pathOf(uri) ?? []);
  for (let folder = pending.pop(); folder !== undefined; folder = pending.pop()) {
    const entries = await entriesOf(folder, { withFileTypes: true }).catch(() => []);
    for (const entry of entries) {
      if (entry.isDirectory() && !passedOver.test(entry.name)) pending.push(join(folder, entry.name));
      else if (entry.isFile() && isSchedule(entry.name)) found.push(pathToFileURL(join(folder, entry.name)).href);
    }
  }
  return found;
}

/** Papers and what comes back from them are a part of their own, loaded when the first is asked for. */
const office = async (): Promise<PaperOffice> => (await import("./office.node.ts")).officeWith(pathOf);

function settings(uri: string, name: string): { readonly uri: string; readonly text: string } | undefined {
  const path = pathOf(uri);
  const folder = path === undefined ? undefined : dirname(path);
  const outermost = grounds.folders.filter((one) => folder === one || folder?.startsWith(one + sep)).toSorted()[0];
  const found = folder === undefined ? undefined : nearestAbove(folder, name, outermost);
  if (!found || "failure" in found.read) return undefined;
  return { uri: pathToFileURL(found.path).href, text: found.read.text };
}

/** Only a schedule that may be read has a past that may be. */
function scheduleAt(uri: string): string | undefined {
  const path = pathOf(uri);
  return path !== undefined && isSchedule(path) && grounds.holds(path) ? path : undefined;
}

const elsewhere = { failure: "It is not a schedule of a folder that is open." };

const textOf = (body: Uint8Array | undefined): string => {
  const read = body ? decode(body) : { text: "" };
  return "failure" in read ? "" : read.text;
};

const git = () => import("./git/file-commits.ts");

const past: PastRuntime = {
  commits: async (uri) => {
    const path = scheduleAt(uri);
    const found = path === undefined ? elsewhere : await (await git()).fileCommits(path);
    if ("failure" in found) return found;
    return { ...found, textOf: (name) => textOf(found.bodies.get(name)) };
  },
  text: async (uri, revision) => {
    const path = scheduleAt(uri);
    const found = path === undefined ? elsewhere : await (await git()).fileAt(path, revision);
    return "failure" in found ? found : decode(found.body);
  },
};

/**
 * V8 lets a heap grow to several times what is in it before it collects all of it. Loaded for those alone who need it.
 * The room for what is new is left as it is here: held small once it runs, it is never given back what a rest has taken
 * from it. Who starts the process can hold it small from the start.
 */
const goEasy = (): void => getBuiltinModule("node:v8").setFlagsFromString("--heap-growing-percent=50");

const runtime: Runtime = {
  read,
  list,
  openedFolder: (uri) => admit(pathOf(uri)),
  openedFile: (uri) => admit(pathOf(uri), dirname),
  settings,
  past,
  today: () => new Date().toLocaleDateString("sv-SE"),
  soon: (run) => void setImmediate(run),
  // The clock of `performance` comes with all that measures a program.
  now: () => Number(hrtime.bigint()) / 1e6,
  checked: announceChecked,
  holdsMuch: goEasy,
  office: {
    paper: async (asked, snapshot) => (await office()).paper(asked, snapshot),
    entered: async (asked, snapshot) => (await office()).entered(asked, snapshot),
  },
};

function admit(path: string | undefined, folderOf = (folder: string): string => folder): void {
  if (path !== undefined) grounds.admit(folderOf(path));
}

/** Over stdio a frame that cannot be read is the end: what follows cannot be separated from it. */
function overStdio(): Connection {
  const end = (reason: string): never => {
    process.stderr.write(`The server ends: a message cannot be told from the next. ${reason}\n`);
    return process.exit(1);
  };
  // It listens before the reader does, which then never sees such a frame.
  const frames = new FrameWatch();
  process.stdin.on("data", (bytes: Buffer) => {
    const reason = frames.take(bytes);
    if (reason !== undefined) end(`${reason}.`);
  });
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
    end(reason ?? "");
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
