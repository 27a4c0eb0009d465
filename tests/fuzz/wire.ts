/**
 * A whole language server, spoken to in this thread: several files of two folders are typed in, opened, closed and
 * changed on disk while everything is asked that an editor may ask. Nothing may fall over, and in the end it answers as
 * a server does that has just been started.
 */
import assert from "node:assert/strict";
import { PassThrough } from "node:stream";
import {
  CancellationTokenSource,
  createConnection,
  createProtocolConnection,
  ErrorCodes,
  ProposedFeatures,
  type ProtocolConnection,
  ResponseError,
  StreamMessageReader,
  StreamMessageWriter,
} from "vscode-languageserver/node";
import type { PastOfFile } from "../../server/features/past.ts";
import { reportKinds } from "../../server/features/report-kinds.ts";
import { connectionOptions } from "../../server/lsp/connection.ts";
import type { Runtime } from "../../server/lsp/runtime.ts";
import { startServer } from "../../server/lsp/server.ts";
import { officeWith } from "../../server/office.node.ts";
import { applyEdits, lineStarts, positionOf } from "../../server/text/lines.ts";
import { viewKinds } from "../../server/views/kinds.ts";
import { everything } from "../helpers/capabilities.ts";
import { mutated, startingFolder } from "../workspace/folder-changes.ts";
import type { Dice } from "./dice.ts";
import { anyText, figures } from "./texts.ts";
import type { Trial } from "./trials.ts";

const folders = ["file:///one/", "file:///two/"];

interface Host {
  readonly disk: Map<string, string>;
  readonly open: Map<string, { text: string; version: number }>;
  /** What the editor has set, and the folders that are open in it. */
  configuration: unknown;
  readonly folders: Set<string>;
}

const settingsName = ".wayfile.json";

function runtimeOf({ disk }: Host): Runtime {
  return {
    settings: (uri, name) => {
      const found = folders.map((folder) => folder + name).find((one) => uri.startsWith(one.slice(0, -name.length)));
      const text = found === undefined ? undefined : disk.get(found);
      return found === undefined || text === undefined ? undefined : { uri: found, text };
    },
    read: async (uri) => {
      const text = uri.endsWith(".ways") ? disk.get(uri) : undefined;
      return text === undefined ? { failure: "there is no such file." } : { text };
    },
    list: async (below) =>
      [...disk.keys()].filter((uri) => uri.endsWith(".ways") && below.some((folder) => uri.startsWith(folder))),
    openedFolder: () => {},
    openedFile: () => {},
    today: () => "2026-05-04",
    soon: (run) => void setImmediate(run),
    now: () => performance.now(),
    past: {
      commits: async (uri) => pastOf(disk.get(uri) ?? ""),
      text: async (uri, revision) =>
        revision === "" ? { failure: "there is no such revision." } : { text: disk.get(uri) ?? "" },
    },
    office: officeWith(() => undefined),
  };
}

/** A file that was half of what it is, and before that was not there. */
function pastOf(text: string): PastOfFile {
  const commit = (id: string, parents: readonly string[]) => ({
    ...{ id, parents, author: "T. Ash", when: "2026-03-05T10:00:00+00:00", subject: "\u202eRead" },
    ...{ path: "a.ways", before: "a.ways" },
  });
  const texts: Readonly<Record<string, string>> = { "2:a.ways": text, "1:a.ways": text.slice(0, text.length / 2) };
  return {
    commits: [commit("2", ["1"]), commit("1", [])],
    isShallow: true,
    textOf: (name) => texts[name] ?? "",
  };
}

class Conversation {
  readonly host: Host;
  readonly client: ProtocolConnection;
  readonly faults: string[] = [];
  readonly #server: { dispose(): void };

  private constructor(host: Host) {
    this.host = host;
    const [there, back] = [new PassThrough(), new PassThrough()];
    const server = createConnection(
      ProposedFeatures.all,
      new StreamMessageReader(there),
      new StreamMessageWriter(back),
      connectionOptions(),
    );
    this.#server = server;
    startServer(server, runtimeOf(host));
    this.client = createProtocolConnection(new StreamMessageReader(back), new StreamMessageWriter(there));
    this.client.onNotification("window/logMessage", ({ message }: { message: string }) => {
      this.faults.push(message);
    });
    this.client.onRequest("workspace/configuration", ({ items }: { items: readonly unknown[] }) =>
      items.map(() => host.configuration),
    );
    this.client.onRequest("client/registerCapability", () => null);
    this.client.onRequest("workspace/diagnostic/refresh", () => null);
    this.client.listen();
  }

  static async begin(host: Host): Promise<Conversation> {
    const made = new Conversation(host);
    const workspaceFolders = [...host.folders].map((uri) => ({ uri, name: uri }));
    await made.client.sendRequest("initialize", {
      processId: null,
      rootUri: null,
      workspaceFolders,
      capabilities: everything,
    });
    await made.client.sendNotification("initialized", {});
    for (const [uri, { text, version }] of host.open) await made.#opened(uri, text, version);
    return made;
  }

  async end(): Promise<void> {
    await this.client.sendRequest("shutdown");
    this.client.dispose();
    this.#server.dispose();
  }

  #opened(uri: string, text: string, version: number): Promise<void> {
    const textDocument = { uri, languageId: "wayfile", version, text };
    return this.client.sendNotification("textDocument/didOpen", { textDocument });
  }

  /** What a request comes to: an answer, or the reason why there is none. */
  async ask(method: string, params: object, cancelled = false): Promise<unknown> {
    const source = new CancellationTokenSource();
    const answer = this.client.sendRequest(method, params, source.token);
    if (cancelled) source.cancel();
    try {
      return await answer;
    } catch (error) {
      assert.ok(error instanceof ResponseError, String(error));
      const inner = error.code === ErrorCodes.InternalError || error.code === ErrorCodes.UnknownErrorCode;
      assert.ok(!inner, `${method} ${JSON.stringify(params)}: ${error.message}`);
      return error.message;
    }
  }

  async open(uri: string): Promise<void> {
    const text = this.host.disk.get(uri) ?? "";
    this.host.open.set(uri, { text, version: 1 });
    await this.#opened(uri, text, 1);
  }

  async close(uri: string): Promise<void> {
    this.host.open.delete(uri);
    await this.client.sendNotification("textDocument/didClose", { textDocument: { uri } });
  }

  async change(uri: string, { start, end, text }: { start: number; end: number; text: string }): Promise<void> {
    const document = this.host.open.get(uri);
    if (!document) return;
    const starts = lineStarts(document.text);
    const range = { start: positionOf(starts, start), end: positionOf(starts, end) };
    document.text = applyEdits(document.text, [{ start, end, text }]);
    document.version++;
    const textDocument = { uri, version: document.version };
    await this.client.sendNotification("textDocument/didChange", { textDocument, contentChanges: [{ range, text }] });
  }

  /** Several changes in one message, each of the text that the one before leaves; the last may be all of it. */
  async changes(uri: string, dice: Dice): Promise<void> {
    const document = this.host.open.get(uri);
    if (!document) return;
    const contentChanges = dice.times(1 + dice.below(3), () => {
      const { text: now } = document;
      if (dice.chance(0.15)) {
        document.text = anyText(dice);
        return { text: document.text };
      }
      const start = dice.below(now.length + 1);
      const end = Math.min(now.length, start + dice.below(9));
      const starts = lineStarts(now);
      const text = dice.pick(typed);
      document.text = applyEdits(now, [{ start, end, text }]);
      return { range: { start: positionOf(starts, start), end: positionOf(starts, end) }, text };
    });
    document.version += 1 + dice.below(3);
    const textDocument = { uri, version: document.version };
    await this.client.sendNotification("textDocument/didChange", { textDocument, contentChanges });
  }

  async onDisk(uri: string, text: string | undefined): Promise<void> {
    const type = text === undefined ? 3 : this.host.disk.has(uri) ? 2 : 1;
    if (text === undefined) this.host.disk.delete(uri);
    else this.host.disk.set(uri, text);
    await this.client.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri, type }] });
  }

  /**
   * What is found in the files that nobody has opened. Where there is none, or none is looked at, the request is held
   * until something changes: it is called off.
   */
  async foundUnopened(): Promise<readonly string[]> {
    const { disk, open, folders: opened, configuration } = this.host;
    const isOurs = (uri: string) => uri.endsWith(".ways") && [...opened].some((folder) => uri.startsWith(folder));
    const isHeld = configuration !== null || ![...disk.keys()].some((uri) => isOurs(uri) && !open.has(uri));
    const answer = (await this.ask("workspace/diagnostic", { previousResultIds: [] }, isHeld)) as {
      readonly items?: readonly { readonly uri: string; readonly items: readonly unknown[] }[];
    };
    if (isHeld) return [];
    return (answer.items ?? []).flatMap(({ uri, items }) => items.map((one) => `${uri} ${JSON.stringify(one)}`)).sort();
  }

  /** All that is found in a file. */
  async found(uri: string): Promise<readonly string[]> {
    for (let previousResultId: string | undefined; ; ) {
      const textDocument = { uri };
      const answer = (await this.ask("textDocument/diagnostic", { textDocument, previousResultId })) as {
        readonly items?: readonly { readonly code?: string }[];
        readonly resultId?: string;
      };
      if (!answer.items?.some(({ code }) => code === "check/under-way"))
        return (answer.items ?? []).map((one) => JSON.stringify(one)).sort();
      previousResultId = answer.resultId;
    }
  }
}

const typed = [
  "",
  "}",
  "{",
  '"',
  "\n",
  "x",
  " ",
  "0",
  "way 7 {\n",
  "Zs ",
  "Ω",
  ">",
  'use "shared.ways"\n',
  "board B {\n",
];

const houses = [
  "{}",
  '{"skip": ["loop"], "raise": {"ring": "error"}}',
  '{"suppress": [{"check": "demand", "reason": "x", "files": ["**/*.ways"]}], "columns": ["x=Zs"]}',
  '{"only": 1, "__proto__": {"only": []}',
  "[".repeat(3_000),
  "",
];

/** Something that is not of a text: settings, the cursor, the folders that are open, what is saved. */
async function elsewhere(now: Conversation, dice: Dice): Promise<string> {
  const uri = dice.pick([...now.host.open.keys(), ...now.host.disk.keys()]);
  const notes: readonly (readonly [method: string, params: object])[] = [
    ["textDocument/didSave", { textDocument: { uri } }],
    ["wayfile/cursor", { uri, line: dice.pick([0, 3, 9, -1, 1e9, 0.5]), rests: dice.chance(0.5) }],
    ["$/setTrace", { value: "verbose" }],
    ["$/cancelRequest", { id: dice.pick([0, 1, "x", -1]) }],
    ["textDocument/willSave", { textDocument: { uri }, reason: 1 }],
    ["wayfile/no-such-note", { uri }],
    [
      "workspace/didChangeWorkspaceFolders",
      dice.pick([
        { event: { added: [{ uri: "file:///three", name: "" }], removed: [] } },
        { event: { added: [], removed: [{ uri: "file:///three", name: "" }] } },
      ]),
    ],
  ];
  if (dice.chance(0.3)) {
    const house = dice.pick(folders) + settingsName;
    await now.onDisk(house, dice.chance(0.8) ? dice.pick(houses) : undefined);
    return `settings of ${house}`;
  }
  if (dice.chance(0.2)) {
    now.host.configuration = dice.pick([
      null,
      { check: { onType: dice.chance(0.5), unopened: false }, inlay: "limits", lens: "off" },
      { check: [], inlay: 7, lens: {} },
      "x",
    ]);
    await now.client.sendNotification("workspace/didChangeConfiguration", {
      settings: { wayfile: now.host.configuration },
    });
    return `configuration ${JSON.stringify(now.host.configuration)}`;
  }
  const [method, params] = dice.pick(notes);
  await now.client.sendNotification(method, params);
  return `${method} ${JSON.stringify(params)}`;
}

/** Something that happens next, in words. */
async function something(now: Conversation, dice: Dice): Promise<string> {
  const roll = dice.next();
  const { open, disk } = now.host;
  const opened = [...open.keys()];
  const closed = [...disk.keys()].filter((uri) => !open.has(uri) && uri.endsWith(".ways"));
  if (roll < 0.6 && opened.length > 0) {
    const uri = dice.pick(opened);
    const { text } = open.get(uri) ?? { text: "" };
    if (dice.chance(0.5)) {
      const { at, end, text: by } = mutated(`${text}\n\n`, dice.next);
      await now.change(uri, { start: Math.min(at, text.length), end: Math.min(end, text.length), text: by });
      return `edit of ${uri}`;
    }
    if (dice.chance(0.3)) {
      await now.changes(uri, dice);
      return `changes of ${uri}`;
    }
    const start = dice.below(text.length + 1);
    await now.change(uri, { start, end: Math.min(text.length, start + dice.below(6)), text: dice.pick(typed) });
    return `key in ${uri}`;
  }
  if (roll < 0.75 && closed.length > 0) {
    const uri = dice.pick(closed);
    await now.open(uri);
    return `open ${uri}`;
  }
  if (roll < 0.82 && opened.length > 1) {
    const uri = dice.pick(opened);
    await now.onDisk(uri, open.get(uri)?.text);
    await now.close(uri);
    return `save and close ${uri}`;
  }
  if (roll < 0.88) return await elsewhere(now, dice);
  if (closed.length === 0) return "nothing";
  const uri = dice.pick(closed);
  await now.onDisk(uri, roll < 0.95 ? disk.get(dice.pick([...disk.keys()])) : undefined);
  return `${uri} on disk`;
}

/** A question that an editor may ask of a file, at a place. */
function question(dice: Dice, uri: string, text: string): readonly [method: string, params: object] {
  const starts = lineStarts(text);
  const place = () => positionOf(starts, dice.below(text.length + 1));
  const [position, other] = [place(), place()];
  const range = { start: position, end: other };
  const textDocument = { uri };
  const options = { tabSize: 2, insertSpaces: true };
  const base64 = Buffer.from(`way,Zs (Ω),${dice.pick(["on", "x"])}\n1,${dice.pick(figures)},2026-04-01\n`).toString(
    "base64",
  );
  return dice.pick<readonly [string, object]>([
    ...["hover", "completion", "signatureHelp", "definition", "documentHighlight", "prepareRename"].map(
      (name) => [`textDocument/${name}`, { textDocument, position }] as const,
    ),
    ["textDocument/prepareCallHierarchy", { textDocument, position }],
    ["textDocument/references", { textDocument, position, context: { includeDeclaration: true } }],
    ["textDocument/rename", { textDocument, position, newName: dice.pick(["Q", "", "a b", "\u202e"]) }],
    ["textDocument/selectionRange", { textDocument, positions: [position, other] }],
    ...["documentSymbol", "foldingRange", "documentLink", "codeLens", "semanticTokens/full"].map(
      (name) => [`textDocument/${name}`, { textDocument }] as const,
    ),
    ["textDocument/formatting", { textDocument, options }],
    ["textDocument/rangeFormatting", { textDocument, range, options }],
    ["textDocument/onTypeFormatting", { textDocument, position, ch: "}", options }],
    [
      "textDocument/codeAction",
      {
        textDocument,
        range,
        context: {
          diagnostics: [{ range, message: "", code: dice.pick(["language/unknown-word", 1, null]) }],
          ...dice.pick([
            {},
            { only: [dice.pick(["quickfix", "source.fixAll", "refactor", "", "source.fixAll.wayfile"])] },
          ]),
        },
      },
    ],
    ["textDocument/documentColor", { textDocument }],
    ["codeLens/resolve", { range, data: dice.pick([{ uri, line: position.line }, uri, null]) }],
    ...["incomingCalls", "outgoingCalls"].map(
      (name) =>
        [
          `callHierarchy/${name}`,
          {
            item: { name: dice.pick(["A", "B", ""]), kind: 5, uri, range, selectionRange: range, data: { board: "A" } },
          },
        ] as const,
    ),
    ["workspace/executeCommand", { command: dice.pick(["wayfile.summary", "", "__proto__"]), arguments: [uri, {}] }],
    ["wayfile/past", { uri, revision: dice.pick(["HEAD", "", "-x", "a\nb"]) }],
    ["wayfile/choices", {}],
    [
      "wayfile/newSchedule",
      {
        name: dice.pick(["Loft", "", '"\n}']),
        ...{ earthing: "TN-S", standard: "BS 7671:2018+A2:2022", ways: dice.pick([1, 12, -1, 1e9, 0.5]) },
        premises: dice.pick(["dwelling", "none"]),
      },
    ],
    ["textDocument/inlayHint", { textDocument, range }],
    ["textDocument/semanticTokens/range", { textDocument, range }],
    ["workspace/symbol", { query: dice.pick(["", "A", "way", "\u0000"]) }],
    ["workspace/willRenameFiles", { files: [{ oldUri: uri, newUri: `${folders[1]}new.ways` }] }],
    ["wayfile/view", { uri, view: dice.pick(viewKinds), position }],
    ["wayfile/view", { uri, view: dice.pick(viewKinds), board: dice.pick(["A", "x"]) }],
    [
      "wayfile/enter",
      {
        uri,
        board: "A",
        row: dice.pick(["1", "3", "x"]),
        column: dice.pick(["Zs", "r1", "polarity", "x"]),
        text: dice.pick([...figures, "ok", "LIM"]),
        day: dice.pick(["2026-04-01", "x"]),
        ...dice.pick([{}, { point: "S1", instrument: "M1", why: "no access", draft: "0.3" }]),
      },
    ],
    [
      "wayfile/report",
      { uri, kind: dice.pick([...reportKinds.filter((kind) => kind !== "editions"), "size"]), position },
    ],
    ["wayfile/report", { uri, kind: dice.pick(["working", "size"]), of: dice.pick(["A", "A/1", "A/x", "\u202e"]) }],
    ["wayfile/worksheet", { uri, position }],
    ["wayfile/conversations", { uri }],
    ["wayfile/say", { uri, line: position.line, text: dice.pick(["why?", "", '"\n']), answers: dice.chance(0.5) }],
    ["wayfile/register", {}],
    ["wayfile/revisions", { uri }],
    ["wayfile/beside", { uri, revision: "HEAD~1" }],
    ["wayfile/timeline", { uri, position }],
    [
      "wayfile/paper",
      {
        uri,
        paper: dice.pick(["schedule", "inspection", "sheet"]),
        format: dice.pick(["csv", "html", "markdown", "text", "xlsx", "pdf"]),
        fill: dice.pick(["filled", "blank", "last"]),
        printed: "2026-05-04",
      },
    ],
    [
      "wayfile/enterReadings",
      { uri, name: dice.pick(["r.xlsx", "r.json", "r"]), base64: dice.pick([base64, "", "UEsFBg", "e30=", "!"]) },
    ],
    [
      "wayfile/enterReadings",
      { uri, name: "r.csv", base64, column: ["x=Zs"], ...(dice.chance(0.5) ? { on: "2026-04-01" } : {}) },
    ],
  ]);
}

const noParameters = [
  null,
  -1,
  2 ** 53,
  0.5,
  1e300,
  true,
  "",
  "\u202e",
  "x".repeat(10_000),
  [],
  {},
  [[[]]],
  { line: -1 },
];

/** The same with one of its parameters, however deep, replaced by what belongs nowhere, or left out. */
function twisted(params: unknown, dice: Dice): unknown {
  if (typeof params !== "object" || params === null || dice.chance(0.2)) return dice.pick(noParameters);
  const entries = Object.entries(params);
  const at = dice.below(entries.length);
  const changed = entries.flatMap(([key, value], index): [string, unknown][] => {
    if (index !== at) return [[key, value]];
    return dice.chance(0.2) ? [] : [[key, twisted(value, dice)]];
  });
  return Array.isArray(params) ? changed.map(([, value]) => value) : Object.fromEntries(changed);
}

/** What a file shows, as far as it does not depend on what was before. */
async function shownOf(server: Conversation, uri: string, questions: readonly (readonly [string, object])[]) {
  const found = await server.found(uri);
  const answers: unknown[] = [];
  for (const [method, params] of questions) {
    const answer = await server.ask(method, params);
    // Names of a project stand in no order.
    const isList = method === "workspace/symbol" && Array.isArray(answer);
    answers.push(isList ? answer.map((one) => JSON.stringify(one)).sort() : answer);
  }
  return {
    found,
    answers: JSON.parse(JSON.stringify(answers, (key, one) => (/^(?:version|resultId|data)$/.test(key) ? 0 : one))),
  };
}

export async function wire(trial: Trial): Promise<number> {
  const { dice, at } = trial;
  const disk = new Map(
    folders.flatMap((folder) => Object.entries(startingFolder).map(([name, text]) => [folder + name, text] as const)),
  );
  disk.set(`${folders[0]}any.ways`, anyText(dice));
  if (dice.chance(0.4)) disk.set(folders[0] + settingsName, dice.pick(houses));
  const host: Host = { disk, open: new Map(), configuration: null, folders: new Set(folders) };
  const server = await Conversation.begin(host);
  const done: string[] = [];
  const note = (what: string): void => {
    done.push(what);
    at([...done, ...[...host.open].map(([uri, { text }]) => `# ---- ${uri}\n${text}`)].join("\n"));
  };
  const steps = 24;
  for (let step = 0; step < steps; step++) {
    note(await something(server, dice));
    const uri = dice.pick([...host.disk.keys(), ...host.open.keys()]);
    const asked = question(dice, uri, host.open.get(uri)?.text ?? host.disk.get(uri) ?? "");
    note(JSON.stringify(asked));
    await server.ask(...asked, dice.chance(0.1));
    const odd = [asked[0], Object.fromEntries(Object.entries(twisted(asked[1], dice) ?? {}))] as const;
    note(JSON.stringify(odd));
    await server.ask(...odd);
    const previousResultIds = dice.pick([[], [{ uri, value: "x" }], [{ uri: "", value: "" }]]);
    if (dice.chance(0.1)) await server.ask("workspace/diagnostic", { previousResultIds }, true);
  }
  // What was held back of a line that is being written is shown once its file is saved.
  for (const uri of host.open.keys())
    await server.client.sendNotification("textDocument/didSave", { textDocument: { uri } });
  const fresh = await Conversation.begin({ ...host, disk: new Map(disk), open: new Map(host.open) });
  for (const uri of dice.chance(0.3) ? host.open.keys() : [...host.open.keys()].slice(0, 2)) {
    const questions = dice.times(6, () => question(dice, uri, host.open.get(uri)?.text ?? ""));
    assert.deepEqual(await shownOf(server, uri, questions), await shownOf(fresh, uri, questions), uri);
  }
  // Settings that were not answered stay as they were, which one that has just been started cannot know.
  if (done.every((what) => !what.startsWith("configuration")))
    assert.deepEqual(await server.foundUnopened(), await fresh.foundUnopened());
  assert.deepEqual([...server.faults, ...fresh.faults], []);
  await Promise.all([server.end(), fresh.end()]);
  return 2 * steps;
}
