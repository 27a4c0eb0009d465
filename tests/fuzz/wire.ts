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
}

function runtimeOf({ disk }: Host): Runtime {
  return {
    read: async (uri) => {
      const text = disk.get(uri);
      return text === undefined ? { failure: "there is no such file." } : { text };
    },
    list: async (below) => [...disk.keys()].filter((uri) => below.some((folder) => uri.startsWith(folder))),
    openedFolder: () => {},
    openedFile: () => {},
    today: () => "2026-05-04",
    soon: (run) => void setImmediate(run),
    now: () => performance.now(),
    past: {
      commits: async () => ({ failure: "there is no history." }),
      text: async (uri) => ({ text: disk.get(uri) ?? "" }),
    },
    office: officeWith(() => undefined),
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
      items.map(() => null),
    );
    this.client.onRequest("client/registerCapability", () => null);
    this.client.onRequest("workspace/diagnostic/refresh", () => null);
    this.client.listen();
  }

  static async begin(host: Host): Promise<Conversation> {
    const made = new Conversation(host);
    const workspaceFolders = folders.map((uri) => ({ uri, name: uri }));
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

  async onDisk(uri: string, text: string | undefined): Promise<void> {
    const type = text === undefined ? 3 : this.host.disk.has(uri) ? 2 : 1;
    if (text === undefined) this.host.disk.delete(uri);
    else this.host.disk.set(uri, text);
    await this.client.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri, type }] });
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

/** Something that happens next, in words. */
async function something(now: Conversation, dice: Dice): Promise<string> {
  const roll = dice.next();
  const { open, disk } = now.host;
  const opened = [...open.keys()];
  const closed = [...disk.keys()].filter((uri) => !open.has(uri));
  if (roll < 0.6 && opened.length > 0) {
    const uri = dice.pick(opened);
    const { text } = open.get(uri) ?? { text: "" };
    if (dice.chance(0.5)) {
      const { at, end, text: by } = mutated(`${text}\n\n`, dice.next);
      await now.change(uri, { start: Math.min(at, text.length), end: Math.min(end, text.length), text: by });
      return `edit of ${uri}`;
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
  if (closed.length === 0) return "nothing";
  const uri = dice.pick(closed);
  await now.onDisk(uri, roll < 0.9 ? disk.get(dice.pick([...disk.keys()])) : undefined);
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
    ["textDocument/codeAction", { textDocument, range, context: { diagnostics: [] } }],
    ["textDocument/inlayHint", { textDocument, range }],
    ["textDocument/semanticTokens/range", { textDocument, range }],
    ["workspace/symbol", { query: dice.pick(["", "A", "way", "\u0000"]) }],
    ["workspace/willRenameFiles", { files: [{ oldUri: uri, newUri: `${folders[1]}new.ways` }] }],
    ["wayfile/view", { uri, view: dice.pick(viewKinds), position }],
    [
      "wayfile/enter",
      {
        uri,
        board: "A",
        row: dice.pick(["1", "3", "x"]),
        column: dice.pick(["Zs", "r1", "polarity", "x"]),
        text: dice.pick([...figures, "ok", "LIM"]),
        day: dice.pick(["2026-04-01", "x"]),
      },
    ],
    [
      "wayfile/report",
      { uri, kind: dice.pick([...reportKinds.filter((kind) => kind !== "editions"), "size"]), position },
    ],
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
        format: dice.pick(["csv", "html", "markdown", "text"]),
      },
    ],
    ["wayfile/enterReadings", { uri, name: "r.csv", base64, ...(dice.chance(0.5) ? { on: "2026-04-01" } : {}) }],
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
  const host: Host = { disk, open: new Map() };
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
  }
  const fresh = await Conversation.begin({ disk: new Map(disk), open: new Map(host.open) });
  for (const uri of dice.chance(0.3) ? host.open.keys() : [...host.open.keys()].slice(0, 2)) {
    const questions = dice.times(6, () => question(dice, uri, host.open.get(uri)?.text ?? ""));
    assert.deepEqual(await shownOf(server, uri, questions), await shownOf(fresh, uri, questions), uri);
  }
  assert.deepEqual([...server.faults, ...fresh.faults], []);
  await Promise.all([server.end(), fresh.end()]);
  return 2 * steps;
}
