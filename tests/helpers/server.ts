/** A real server in a process of its own, spoken to over stdio. */
import { type ChildProcessWithoutNullStreams, spawn } from "node:child_process";
import { readFileSync } from "node:fs";
import {
  type ClientCapabilities,
  type ConfigurationParams,
  createProtocolConnection,
  type Diagnostic,
  type InitializeResult,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import { bundled } from "./program.ts";

export interface Server {
  readonly connection: ProtocolConnection;
  readonly initialized: InitializeResult;
  readonly published: PublishDiagnosticsParams[];
  readonly exit: Promise<number | null>;
  readonly errors: string[];
  readonly process: ChildProcessWithoutNullStreams;
  open(uri: string, text: string): Promise<void>;
  change(uri: string, version: number, contentChanges: readonly object[]): Promise<void>;
  /** One answer to a pull: where a first check takes long, it may be a part of what there is. */
  pullOnce(uri: string, previousResultId?: string): Promise<Pulled>;
  /** The next push for a document that satisfies a wish; those that have arrived count. */
  push(
    uri: string,
    wish?: (diagnostics: readonly Diagnostic[]) => boolean,
    version?: number,
  ): Promise<PublishDiagnosticsParams>;
  /** What is found once all is checked. */
  pull(uri: string, previousResultId?: string): Promise<Pulled>;
  /** Resident memory of its process, MiB. */
  memory(): number;
  /** Processor time of its process since it began, ms. */
  cpu(): number;
  stop(): Promise<number | null>;
  /** Ends a server that a test has done with, in whatever state it is. */
  kill(): void;
}

export interface Pulled {
  readonly kind: string;
  readonly resultId?: string;
  readonly items?: Diagnostic[];
}

const isPart = (items: readonly Diagnostic[] = []): boolean => items.some(({ code }) => code === "check/under-way");

export interface ServerOptions {
  readonly capabilities?: ClientCapabilities;
  readonly folder?: string;
  readonly settings?: unknown;
  /** Those of a folder, where they differ. */
  readonly settingsOf?: (folder: string) => unknown;
  readonly initializationOptions?: unknown;
  /** What is run in the place of the server's own entry: a file that is bundled first, or a whole command. */
  readonly entry?: string;
  readonly command?: readonly string[];
  /** What its process finds in its environment besides. */
  readonly env?: Readonly<Record<string, string>>;
  /** The editor, with which the server ends. */
  readonly processId?: number;
}

export const pulling: ClientCapabilities = {
  textDocument: { diagnostic: {} },
  workspace: { diagnostics: { refreshSupport: true }, configuration: true },
};

export async function startServer(options: ServerOptions = {}): Promise<Server> {
  const command = options.command ?? [await bundled(options.entry ?? "server/main.node.ts")];
  const child = spawn(process.execPath, [...command, "--stdio"], {
    stdio: ["pipe", "pipe", "pipe"],
    env: { ...process.env, ...options.env },
  });
  const exit = new Promise<number | null>((resolve) => child.once("exit", resolve));
  const errors: string[] = [];
  child.stderr.on("data", (data) => errors.push(String(data)));
  const connection = createProtocolConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const published: PublishDiagnosticsParams[] = [];
  const waiting = new Set<() => void>();
  connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
    published.push(params);
    for (const look of [...waiting]) look();
  });
  connection.onNotification("window/logMessage", ({ message }: { message: string }) => {
    errors.push(message);
  });
  connection.onRequest("workspace/configuration", ({ items }: ConfigurationParams) =>
    items.map(({ scopeUri }) => (scopeUri ? options.settingsOf?.(scopeUri) : undefined) ?? options.settings ?? null),
  );
  connection.onRequest("client/registerCapability", () => null);
  connection.onRequest("workspace/diagnostic/refresh", () => null);
  connection.listen();
  // A test that waits for a server that is gone fails then, and with the reason: it would wait until its time is over.
  const gone = new Promise<never>((_, reject) => {
    child.once("close", (code) => {
      connection.dispose();
      reject(new Error(`The server ended with ${code}. ${errors.join("")}`));
    });
  });
  gone.catch(() => {});
  const folders = options.folder === undefined ? null : [{ uri: options.folder, name: "folder" }];
  const initialized: InitializeResult = await connection.sendRequest("initialize", {
    processId: options.processId ?? process.pid,
    rootUri: null,
    workspaceFolders: folders,
    capabilities: options.capabilities ?? {},
    ...(options.initializationOptions === undefined ? {} : { initializationOptions: options.initializationOptions }),
  });
  await connection.sendNotification("initialized", {});
  const pullOnce = (uri: string, previousResultId?: string): Promise<Pulled> =>
    connection.sendRequest("textDocument/diagnostic", {
      textDocument: { uri },
      ...(previousResultId === undefined ? {} : { previousResultId }),
    });
  return {
    connection,
    initialized,
    published,
    exit,
    errors,
    process: child,
    open: (uri, text) =>
      connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "wayfile", version: 1, text },
      }),
    change: (uri, version, contentChanges) =>
      connection.sendNotification("textDocument/didChange", { textDocument: { uri, version }, contentChanges }),
    push: (uri, wish = () => true, version) => {
      const pushed = new Promise<PublishDiagnosticsParams>((resolve) => {
        const look = (): void => {
          const found = published.findLast((one) => one.uri === uri);
          if (
            !found ||
            isPart(found.diagnostics) ||
            !wish(found.diagnostics) ||
            (version !== undefined && found.version !== version)
          )
            return;
          waiting.delete(look);
          resolve(found);
        };
        waiting.add(look);
        look();
      });
      return Promise.race([pushed, gone]);
    },
    pullOnce,
    pull: async (uri, previousResultId) => {
      let pulled = await pullOnce(uri, previousResultId);
      while (isPart(pulled.items)) pulled = await pullOnce(uri, pulled.resultId);
      return pulled;
    },
    cpu: () => {
      const fields = readFileSync(`/proc/${child.pid}/stat`, "utf8").split(") ").at(-1)?.split(" ") ?? [];
      // In hundredths of a second, of the program and of the system for it.
      return (Number(fields[11]) + Number(fields[12])) * 10;
    },
    memory: () =>
      Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${child.pid}/status`, "utf8"))?.[1] ?? Number.NaN) / 1024,
    kill: () => {
      connection.dispose();
      child.kill();
    },
    stop: async () => {
      await connection.sendRequest("shutdown");
      await connection.sendNotification("exit");
      const code = await exit;
      connection.dispose();
      return code;
    },
  };
}
