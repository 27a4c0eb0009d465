/**
 * The language server: the only room that speaks the protocol. It notes what is typed, asks the features when it is
 * asked, and turns places into lines and columns.
 */
import {
  type Connection,
  type InitializeParams,
  type InitializeResult,
  type Range,
  ResponseError,
  TextDocumentSyncKind,
} from "vscode-languageserver";
import { settingsFile } from "../settings/settings.ts";
import { canonical, resolveUri } from "../workspace/uri.ts";
import { mostFiles, Workspace } from "../workspace/workspace.ts";
import { answer, overtaken } from "./answer.ts";
import { Checking, type CheckState, inPart } from "./checking.ts";
import { refusedRequest } from "./connection.ts";
import { Delivery } from "./delivery.ts";
import { type ClientWishes, registerFeatures } from "./features.ts";
import type { Refusal } from "./gate.ts";
import { HouseSettings } from "./house.ts";
import { at } from "./member.ts";
import { type CursorNote, cursorNote } from "./protocol.ts";
import type { Runtime } from "./runtime.ts";
import type { Service } from "./service.ts";

export function startServer(connection: Connection, runtime: Runtime): void {
  const workspace = new Workspace({ read: (uri) => runtime.read(uri), resolve: resolveUri });
  const log = (line: string): void => connection.console.error(line);
  const checking = new Checking(connection, workspace, runtime);
  const house = new HouseSettings(connection, runtime);
  const delivery = new Delivery(connection, workspace, runtime, checking, log, house);
  let folders: string[] = [];
  let canWatch = false;
  let hasFolders = false;

  const service: Service = {
    connection,
    workspace,
    ask: (name, neutral, work, needs) => (params, token) => {
      const path = canonical(params.textDocument.uri);
      const asked = {
        name,
        path,
        version: () => workspace.version(path),
        failed: (error: unknown) => needs?.failed?.(path, error) ?? neutral,
        overtaken: needs?.overtaken ?? overtaken,
      };
      if (seen.has(name)) checking.looksAt(path, (params as typeof params & { readonly range: Range }).range);
      const wanted = needs?.findings?.(path) ?? "none";
      let state: CheckState = "ready";
      const prepare = async (): Promise<CheckState> => {
        await needs?.part?.load();
        if (!workspace.isLoaded(path)) await workspace.load(path);
        if (wanted === "none") return state;
        state = await checking.check(path, () => !token.isCancellationRequested, wanted === "some");
        return state;
      };
      const isReady = wanted === "none" && workspace.isLoaded(path) && needs?.part?.isLoaded !== false;
      return answer(asked, token, log, isReady ? undefined : prepare, () => {
        const snapshot = workspace.snapshot(path);
        if (!snapshot) return neutral;
        return work(state === "partly" ? inPart(snapshot) : snapshot, params);
      });
    },
    cursor: (snapshot, position) => {
      const at = snapshot.positions.at(position);
      return at ?? { segment: emptySegment, offset: 0 };
    },
  };

  connection.onInitialize((params): InitializeResult => {
    folders = foldersOf(params);
    for (const folder of folders) runtime.openedFolder(folder);
    canWatch = params.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false;
    hasFolders = params.capabilities.workspace?.workspaceFolders ?? false;
    checking.configure(params.capabilities);
    delivery.configure(params.capabilities);
    const { initializationOptions: wishes } = params;
    if (at(wishes, "cursor") === true) delivery.calm.begin();
    const pages = at(wishes, "pages");
    if (typeof pages === "string" && /^[a-z][a-z-]*$/.test(pages)) delivery.openPagesAt(pages);
    const features = registerFeatures(service, delivery, checking, params.capabilities, wishesOf(wishes), runtime);
    return {
      capabilities: {
        positionEncoding: "utf-16",
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: { includeText: false } },
        ...features,
        workspace: { ...features.workspace, workspaceFolders: { supported: true, changeNotifications: true } },
      },
      serverInfo: { name: "wayfile" },
    };
  });

  /** Looks into the schedules below some folders. */
  const index = async (below: readonly string[]): Promise<void> => {
    const leftOut = await workspace.index(
      runtime.list(below).then((uris) => uris.filter((uri) => !house.leavesOut(uri)).map(canonical)),
    );
    if (leftOut === 0) return;
    connection.console.warn(
      `${leftOut} schedules beyond the first ${mostFiles} were not looked into for what they use.`,
    );
  };

  connection.onInitialized(async () => {
    if (canWatch) {
      void connection
        .sendRequest("client/registerCapability", {
          registrations: [
            {
              id: "files",
              method: "workspace/didChangeWatchedFiles",
              registerOptions: { watchers: [{ globPattern: "**/*.ways" }, { globPattern: `**/${settingsFile}` }] },
            },
          ],
        })
        .catch(() => undefined);
    }
    if (hasFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(async ({ added, removed }) => {
        const uris = added.map(({ uri }) => uri);
        folders = [...folders.filter((folder) => !removed.some(({ uri }) => uri === folder)), ...uris];
        for (const uri of uris) runtime.openedFolder(uri);
        await Promise.all([index(uris), delivery.readSettings(folders)]);
        delivery.everythingChanged();
      });
    }
    await Promise.all([index(folders), delivery.readSettings(folders)]);
    delivery.everythingChanged();
  });

  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    const path = canonical(uri);
    runtime.openedFile(uri);
    workspace.open(path, version, text, uri);
    delivery.opened(path, uri);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    const path = canonical(uri);
    workspace.edit(path, version, contentChanges);
    delivery.calm.edited(path, contentChanges);
    delivery.edited(path);
  });
  connection.onDidSaveTextDocument(({ textDocument: { uri } }) => delivery.saved(canonical(uri)));
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    const path = canonical(uri);
    const dependents = workspace.dependents(path);
    workspace.close(path);
    checking.forget(path);
    delivery.closed(path, dependents);
  });
  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const { uri } of changes) {
      if (house.changed(uri)) continue;
      const path = canonical(uri);
      if (!workspace.isOpen(path)) await workspace.changedOnDisk(path);
    }
    delivery.everythingChanged();
  });
  connection.onNotification(cursorNote, ({ uri, line, rests }: CursorNote) => {
    if (delivery.calm.moved(canonical(uri), { line, rests: rests === true })) void delivery.calmed();
  });
  connection.onDidChangeConfiguration(({ settings }) => delivery.settingsChanged(settings, folders));

  connection.onRequest(refusedRequest, ({ code, message }: Refusal) => new ResponseError(code, message));
  connection.listen();
}

/** Requests that say what an editor shows of a file. */
const seen: ReadonlySet<string> = new Set(["textDocument/inlayHint", "textDocument/semanticTokens/range"]);

/** From whoever connects, so of any shape. */
function wishesOf(options: unknown): ClientWishes {
  const text = (key: string) => {
    const value = at(options, key);
    return typeof value === "string" ? { [key]: value } : {};
  };
  return { pictures: at(options, "pictures") === true, ...text("goOn"), ...text("lens") };
}

const emptySegment = { kind: "lines", word: "", text: "", breaks: 0 } as const;

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  if (workspaceFolders) return workspaceFolders.map(({ uri }) => uri);
  return rootUri ? [rootUri] : [];
}
