/** A bare client of the protocol over stdio, for measuring: no editor, no library's own work on its side. */
import { type ChildProcess, spawn } from "node:child_process";
import { readFileSync } from "node:fs";

export interface Client {
  request(method: string, params: unknown): Promise<unknown>;
  notify(method: string, params: unknown): void;
  /** The next diagnostics published for a version. */
  diagnostics(version: number): Promise<readonly unknown[]>;
  /** Resident memory of the server, MiB. */
  memory(): number;
  stop(): Promise<void>;
}

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: { readonly version?: number; readonly diagnostics?: readonly unknown[] };
  readonly result?: unknown;
}

/** `pull`: whether this client asks for diagnostics itself, as newer editors do. */
export async function startClient(args: readonly string[], pull: boolean): Promise<Client> {
  const child: ChildProcess = spawn(process.execPath, args, { stdio: ["pipe", "pipe", "inherit"] });
  const answers = new Map<number, (result: unknown) => void>();
  const published = new Map<number, (diagnostics: readonly unknown[]) => void>();
  let nextId = 1;
  const send = (message: object): void => {
    const body = Buffer.from(JSON.stringify({ jsonrpc: "2.0", ...message }));
    child.stdin?.write(`Content-Length: ${body.length}\r\n\r\n`);
    child.stdin?.write(body);
  };
  readMessages(child, (message) => {
    if (message.method === "textDocument/publishDiagnostics") {
      const version = message.params?.version ?? -1;
      published.get(version)?.(message.params?.diagnostics ?? []);
      published.delete(version);
    } else if (message.method !== undefined && message.id !== undefined) send({ id: message.id, result: null });
    else if (message.id !== undefined) {
      answers.get(message.id)?.(message.result);
      answers.delete(message.id);
    }
  });
  const client: Client = {
    request: (method, params) =>
      new Promise((resolve) => {
        const id = nextId++;
        answers.set(id, resolve);
        send({ id, method, params });
      }),
    notify: (method, params) => send({ method, params }),
    diagnostics: (version) => new Promise((resolve) => published.set(version, resolve)),
    memory: () =>
      Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, "utf8"))?.[1] ?? Number.NaN) / 1024,
    stop: async () => {
      await client.request("shutdown", null);
      send({ method: "exit" });
      await new Promise((resolve) => child.once("exit", resolve));
    },
  };
  await client.request("initialize", {
    processId: process.pid,
    rootUri: null,
    capabilities: {
      textDocument: {
        publishDiagnostics: { relatedInformation: true, versionSupport: true },
        ...(pull ? { diagnostic: { relatedDocumentSupport: false } } : {}),
      },
    },
  });
  client.notify("initialized", {});
  return client;
}

function readMessages(child: ChildProcess, onMessage: (message: Message) => void): void {
  let chunks: Buffer[] = [];
  let held = 0;
  let wanted = 0;
  child.stdout?.on("data", (chunk: Buffer) => {
    chunks.push(chunk);
    held += chunk.length;
    if (wanted > 0 && held < wanted) return;
    let buffer = Buffer.concat(chunks);
    for (;;) {
      const split = buffer.indexOf("\r\n\r\n");
      const length =
        split < 0 ? undefined : Number(/Content-Length: (\d+)/i.exec(buffer.toString("latin1", 0, split))?.[1]);
      wanted = length === undefined ? 0 : split + 4 + length;
      if (length === undefined || buffer.length < wanted) break;
      onMessage(JSON.parse(buffer.toString("utf8", split + 4, wanted)) as Message);
      buffer = buffer.subarray(wanted);
      wanted = 0;
    }
    chunks = [buffer];
    held = buffer.length;
  });
}
