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

/** What one server is made of. */
interface Rooms {
  readonly connection: Connection;
  readonly runtime: Runtime;
  readonly workspace: Workspace;
  readonly checking: Checking;
  readonly house: HouseSettings;
  readonly delivery: Delivery;
  readonly log: (line: string) => void;
}

export function startServer(connection: Connection, runtime: Runtime): void {
  const workspace = new Workspace({ read: (uri) => runtime.read(uri), resolve: resolveUri });
  const log = (line: string): void => connection.console.error(line);
  const checking = new Checking(connection, workspace, runtime);
  const house = new HouseSettings(connection, runtime);
  const delivery = new Delivery({ connection, workspace, runtime, checking, log, house });
  const rooms: Rooms = { connection, runtime, workspace, checking, house, delivery, log };
  beginning(rooms);
  documents(rooms);
  watchedFiles(rooms);
  connection.onRequest(refusedRequest, ({ code, message }: Refusal) => new ResponseError(code, message));
  connection.listen();
}

/** What a feature's registration is lent. */
function serviceOf({ connection, workspace, checking, log }: Rooms): Service {
  return {
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
        const isWanted = (): boolean => !token.isCancellationRequested;
        if (wanted !== "none") state = await checking.check(path, isWanted, wanted === "all" ? undefined : wanted);
        const snapshot = needs?.before && state === "ready" ? workspace.snapshot(path) : undefined;
        const isCurrent = (): boolean => isWanted() && workspace.version(path) === snapshot?.version;
        if (snapshot && needs?.before) await checking.through(needs.before(snapshot), isCurrent);
        return state;
      };
      const isReady =
        wanted === "none" && !needs?.before && workspace.isLoaded(path) && needs?.part?.isLoaded !== false;
      return answer(asked, token, log, isReady ? undefined : prepare, () => {
        const snapshot = workspace.snapshot(path);
        if (!snapshot) return neutral;
        return work(state === "partly" ? inPart(snapshot) : snapshot, params);
      });
    },
    cursor: (snapshot, position) => snapshot.positions.at(position) ?? { segment: emptySegment, offset: 0 },
  };
}

/** The first words with an editor: what each side can, which folders are open, and what holds in them. */
function beginning(rooms: Rooms): void {
  const { connection, runtime, checking, delivery } = rooms;
  const service = serviceOf(rooms);
  let folders: string[] = [];
  let canWatch = false;
  let hasFolders = false;

  connection.onInitialize((params): InitializeResult => {
    folders = foldersOf(params);
    for (const folder of folders) runtime.openedFolder(folder);
    canWatch = params.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false;
    hasFolders = params.capabilities.workspace?.workspaceFolders ?? false;
    checking.configure(params.capabilities);
    delivery.configure(params.capabilities);
    const { initializationOptions: wishes } = params;
    if (at(wishes, "cursor") === true) delivery.calm.begin();
    const parts = at(wishes, "parts");
    if (typeof parts === "string") runtime.partsAt?.(parts);
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

  connection.onInitialized(async () => {
    if (canWatch) watchFiles(connection);
    if (hasFolders) {
      connection.workspace.onDidChangeWorkspaceFolders(async ({ added, removed }) => {
        const uris = added.map(({ uri }) => uri);
        folders = [...folders.filter((folder) => !removed.some(({ uri }) => uri === folder)), ...uris];
        for (const uri of uris) runtime.openedFolder(uri);
        await Promise.all([index(rooms, uris), delivery.readSettings(folders)]);
        delivery.everythingChanged();
      });
    }
    await Promise.all([index(rooms, folders), delivery.readSettings(folders)]);
    delivery.everythingChanged();
  });
  connection.onDidChangeConfiguration(({ settings }) => delivery.settingsChanged(settings, folders));
}

/** Looks into the schedules below some folders. */
async function index(
  { connection, runtime, workspace, checking, house }: Rooms,
  below: readonly string[],
): Promise<void> {
  const room = (): Promise<void> => checking.firstShown();
  const listed = room().then(() => runtime.list(below));
  const leftOut = await workspace.index(
    listed.then((uris) => uris.filter((uri) => !house.leavesOut(uri)).map(canonical)),
    room,
  );
  if (leftOut === 0) return;
  connection.console.warn(`${leftOut} schedules beyond the first ${mostFiles} were not looked into for what they use.`);
}

/** Asks to be notified of schedules and settings that change on the disk. */
function watchFiles(connection: Connection): void {
  const watchers = [{ globPattern: "**/*.ways" }, { globPattern: `**/${settingsFile}` }];
  const registrations = [{ id: "files", method: "workspace/didChangeWatchedFiles", registerOptions: { watchers } }];
  void connection.sendRequest("client/registerCapability", { registrations }).catch(() => undefined);
}

/** About what two thousand ways take. */
const largeText = 800_000;

/** What a person opens, types and closes, and where the cursor stands. */
function documents({ connection, runtime, workspace, checking, delivery }: Rooms): void {
  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => {
    const path = canonical(uri);
    runtime.openedFile(uri);
    if (text.length > largeText) runtime.holdsMuch?.();
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
  connection.onNotification(cursorNote, ({ uri, line, rests }: CursorNote) => {
    if (delivery.calm.moved(canonical(uri), { line, rests: rests === true })) void delivery.calmed();
  });
}

function watchedFiles({ connection, workspace, house, delivery }: Rooms): void {
  connection.onDidChangeWatchedFiles(async ({ changes }) => {
    for (const { uri } of changes) {
      if (house.changed(uri)) continue;
      const path = canonical(uri);
      if (!workspace.isOpen(path)) await workspace.changedOnDisk(path);
    }
    delivery.everythingChanged();
  });
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
