/** Messages that make no sense, or come at the wrong time, over the wire. */

import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { ErrorCodes } from "vscode-languageserver/node";
import * as papers from "../../server/lsp/paper-protocol.ts";
import * as past from "../../server/lsp/past-protocol.ts";
import * as protocol from "../../server/lsp/protocol.ts";
import * as review from "../../server/lsp/review-protocol.ts";
import * as view from "../../server/lsp/view-protocol.ts";
import { everything } from "../helpers/capabilities.ts";
import { loft } from "../helpers/cursor.ts";
import { rawServer } from "../helpers/raw-server.ts";
import { pulling, type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/a.ways";
let server: Server | undefined;
afterEach(() => server?.kill());

async function start(): Promise<Server> {
  server = await startServer({ capabilities: pulling });
  return server;
}

const ofDocuments = [
  "hover",
  "completion",
  "signatureHelp",
  "definition",
  "references",
  "documentHighlight",
  "prepareRename",
  "rename",
  "prepareCallHierarchy",
  "selectionRange",
  "documentSymbol",
  "foldingRange",
  "documentLink",
  "formatting",
  "rangeFormatting",
  "onTypeFormatting",
  "codeAction",
  "codeLens",
  "inlayHint",
  "semanticTokens/full",
  "semanticTokens/full/delta",
  "semanticTokens/range",
  "diagnostic",
].map((name) => `textDocument/${name}`);

/** Requests of our own, but for those that the server asks of an editor. */
const ours = [papers, past, protocol, review, view].flatMap((of) =>
  Object.entries(of).flatMap(([name, method]) => (name.endsWith("Request") ? [method as string] : [])),
);

const others = [
  "codeLens/resolve",
  "callHierarchy/incomingCalls",
  "callHierarchy/outgoingCalls",
  "workspace/symbol",
  "workspace/diagnostic",
  "workspace/willRenameFiles",
  ...ours,
];

const notifications = [
  "textDocument/didOpen",
  "textDocument/didChange",
  "textDocument/didSave",
  "textDocument/didClose",
  "workspace/didChangeWatchedFiles",
  "workspace/didChangeConfiguration",
  "workspace/didChangeWorkspaceFolders",
  "wayfile/cursor",
  "$/setTrace",
  "$/cancelRequest",
  "nonsense",
];

const place = { line: 5, character: 3 };
const range = { start: place, end: place };
const textDocument = { uri };

/** Parameters that lack something, or hold something else in its place, or something beyond all bounds. */
const odd: readonly (object | null)[] = [
  null,
  [],
  {},
  { textDocument: null },
  { textDocument: "a" },
  { textDocument },
  { textDocument, position: place },
  { textDocument, position: { line: -1, character: -5 }, newName: "x", context: {} },
  { textDocument, position: { line: 0.5, character: 1e300 }, newName: "x" },
  { textDocument, position: { line: 1e9, character: 2 ** 53 }, positions: [{ line: 1e9, character: 1e9 }] },
  { textDocument, range: { start: { line: 1e9, character: 0 }, end: { line: -4, character: -1 } }, position: place },
  { textDocument, range, position: place, context: 7, options: 4, ch: 5, newName: 7, previousResultId: {} },
  { textDocument, range, position: place, context: { diagnostics: [{}], only: 7 } },
  ...["", "%", "file:", "file:///%zz.ways", "file://host/share/a.ways", "\u0000"].map((one) => ({
    textDocument: { uri: one },
    position: place,
    range,
    newName: "x",
    context: { diagnostics: [] },
  })),
  { query: 7 },
  { query: "x".repeat(3_000_000) },
  { textDocument, position: place, newName: "x".repeat(3_000_000) },
  { uri, revision: "\u0000" },
  { uri, revision: "--help", position: place },
  { uri, revision: 7, name: 7, base64: 7 },
  { uri, name: "r.csv", base64: "%%%", column: [7], on: 7 },
  { uri, name: "r.xlsx", base64: "eA==", column: "x" },
  { uri, paper: "schedule", format: "rtf", fill: "half" },
  { uri, paper: "oil painting", format: "csv", printed: 7 },
  { item: { uri, name: 7 } },
  { files: 7 },
  { files: [{ oldUri: uri, newUri: 7 }] },
  { previousResultIds: 7 },
  { previousResultIds: [{ uri: 7 }] },
  { uri },
  { uri: "%", view: "board", kind: "working", line: 3, text: "x" },
  { uri, view: "board", kind: "working", position: 7, of: 7, line: -3, text: "x" },
  { uri, view: "board", kind: "size", position: {}, of: "\u0000", line: 1e9, text: "x\ny" },
  { uri, board: "A", row: "3", column: "zs", text: "1e999", day: "never" },
  { changes: [{ uri: 7 }], settings: 7, event: 7, value: 7 },
  { changes: 7, settings: null, event: { added: [{}], removed: [] }, value: {}, id: {} },
  { textDocument: { uri, version: 2 }, contentChanges: [{}] },
];

it("all requests of our own are among those that are tried", () => {
  expect(ours.length).toBeGreaterThan(12);
});

describe("whatever its parameters are", () => {
  let busy: Server;
  beforeAll(async () => {
    busy = await startServer({
      capabilities: everything,
      initializationOptions: { pictures: true, cursor: true, lens: "x" },
    });
    await busy.open(uri, loft);
  });
  afterAll(() => busy.kill());

  it.each([...ofDocuments, ...others])("%s answers, or is refused for them", async (method) => {
    for (const params of odd) {
      const answer = await busy.connection.sendRequest(method, params).then(
        () => undefined,
        (error: unknown) => error,
      );
      if (answer !== undefined) {
        expect(answer).toMatchObject({
          code: ErrorCodes.InvalidParams,
          message: expect.stringMatching(/^(?!.*(?:not a function|Cannot read)).+\.$/),
        });
      }
    }
    expect(busy.errors).toEqual([]);
  });

  it.each(notifications)("%s changes nothing", async (method) => {
    for (const params of odd) await busy.connection.sendNotification(method, params ?? {});
    // What was closed on the way is open again.
    await busy.open(uri, loft);
    const answered = await busy.connection.sendRequest("textDocument/documentSymbol", { textDocument });
    expect(JSON.stringify(answered)).toContain("Loft");
    expect(busy.errors.filter((line) => !line.includes("received parameters by position"))).toEqual([]);
    busy.errors.length = 0;
  });

  it.each(["nonsense", "workspace/executeCommand", "wayfile/refuse"])("%s is not known", async (method) => {
    await expect(busy.connection.sendRequest(method, {})).rejects.toMatchObject({ code: ErrorCodes.MethodNotFound });
  });

  it.each(ofDocuments)("%s says which document it lacks", async (method) => {
    await expect(busy.connection.sendRequest(method, { textDocument: { uri: 7 } })).rejects.toMatchObject({
      code: ErrorCodes.InvalidParams,
      message: `${method} needs a textDocument with its uri.`,
    });
  });
});

it("actions are limited to kinds in a list", async () => {
  server = await startServer({ capabilities: everything });
  const { connection, open } = server;
  await open(uri, loft);
  const range = { start: place, end: place };
  const ask = (only: unknown) =>
    connection.sendRequest("textDocument/codeAction", { textDocument, range, context: { diagnostics: [], only } });
  for (const only of ["quickfix", 7, [7], {}]) {
    await expect(ask(only)).rejects.toMatchObject({
      code: ErrorCodes.InvalidParams,
      message: "textDocument/codeAction needs a list of the kinds it is limited to, or none.",
    });
  }
  for (const only of [undefined, null, [], ["quickfix"]]) expect(await ask(only)).toBeInstanceOf(Array);
});

describe("what a paper is printed with", () => {
  const asked = { uri, paper: "schedule", format: "text" };

  it.each([
    ["a way of filling it that there is none of", { fill: "full" }, "A paper is “filled”, “blank”, or “last”"],
    ["no day at all", { printed: { year: 2026 } }, "The day a paper is printed is written as"],
    ["a day that is none", { printed: "2026-02-30" }, "The day a paper is printed is written as"],
    ["a word for a day", { printed: "today", format: "pdf" }, "The day a paper is printed is written as"],
  ])("is refused for %s", async (_, wrong, sentence) => {
    const { connection, open } = await start();
    await open(uri, loft);
    await expect(connection.sendRequest("wayfile/paper", { ...asked, ...wrong })).rejects.toMatchObject({
      code: ErrorCodes.InvalidParams,
      message: expect.stringContaining(sentence),
    });
  });
});

it("references say whether the declaration is one of them", async () => {
  const { connection, open } = await start();
  await open(uri, loft);
  const line = loft.split("\n").findIndex((one) => /^ *board /.test(one));
  const position = { line, character: (loft.split("\n")[line] as string).indexOf("board ") + 6 };
  const ask = (context?: object) =>
    connection.sendRequest<unknown[]>("textDocument/references", {
      textDocument,
      position,
      ...(context && { context }),
    });
  await expect(ask()).rejects.toMatchObject({ code: ErrorCodes.InvalidParams });
  const [all, others] = [await ask({ includeDeclaration: true }), await ask({ includeDeclaration: false })];
  expect(all).toHaveLength(others.length + 1);
});

describe("a message at the wrong time", () => {
  it("is refused after the shutdown, and the process ends in good order", async () => {
    const { connection, exit } = await start();
    await connection.sendRequest("shutdown");
    for (const method of ["textDocument/hover", "wayfile/choices", "shutdown", "initialize"]) {
      await expect(connection.sendRequest(method, {})).rejects.toMatchObject({ code: ErrorCodes.InvalidRequest });
    }
    await connection.sendNotification("textDocument/didOpen", {
      textDocument: { uri, languageId: "wayfile", version: 1, text: loft },
    });
    await connection.sendNotification("exit");
    expect(await exit).toBe(0);
  });

  it("is refused where it would initialize a second time, and the first holds", async () => {
    const { connection, open, pull } = await start();
    await expect(connection.sendRequest("initialize", { capabilities: {} })).rejects.toMatchObject({
      code: ErrorCodes.InvalidRequest,
      message: "The server is initialized already.",
    });
    await open(uri, "wayfile 1\nnonsense\n");
    expect((await pull(uri)).items).toHaveLength(1);
  });

  it("is refused before the server is initialized, and what it would open is not open", async () => {
    const raw = await rawServer();
    const text = { textDocument: { uri, languageId: "wayfile", version: 1, text: "wayfile 1\nnonsense\n" } };
    raw.request(1, "textDocument/hover", { textDocument, position: place });
    raw.request(2, "shutdown");
    raw.notify("textDocument/didOpen", text);
    const bad = [undefined, null, {}, { capabilities: 7 }, { capabilities: {}, workspaceFolders: [{}] }];
    for (const [index, params] of bad.entries()) raw.request(10 + index, "initialize", params);
    raw.request(4, "initialize", { processId: null, rootUri: null, capabilities: {} });
    raw.request(5, "textDocument/documentSymbol", { textDocument });
    raw.request(6, "shutdown");
    await raw.answered(6);
    raw.notify("exit");
    expect(await raw.exit).toBe(0);
    const codes = raw.answers().map(({ id, error }) => [id, error?.code ?? "answered"]);
    const { ServerNotInitialized, InvalidParams } = ErrorCodes;
    expect(codes).toEqual([
      [1, ServerNotInitialized],
      [2, ServerNotInitialized],
      ...bad.map((_, index) => [10 + index, InvalidParams]),
      [4, "answered"],
      [5, "answered"],
      [6, "answered"],
    ]);
    expect(raw.answers().find(({ id }) => id === 5)?.result).toEqual([]);
    expect(raw.out()).not.toContain("nonsense");
  });
});

describe("a stream that is no conversation", () => {
  it.each([
    ["a frame without its length", "X-Other: 1\r\n\r\n{}"],
    ["a length that is a word", "Content-Length: many\r\n\r\n{}"],
    ["no frame at all", "hello\r\nthere\r\n\r\n"],
    ["a length below zero", "Content-Length: -5\r\n\r\n{}"],
    ["a length that is no whole number", "Content-Length: 2.5\r\n\r\n{}"],
    ["a length that no message has", "Content-Length: 99999999999999\r\n\r\n{}"],
    ["a header without an end", "x".repeat(10_000)],
  ])("of %s ends the process in a sentence", async (_, text) => {
    const raw = await rawServer();
    raw.request(1, "initialize", { processId: null, rootUri: null, capabilities: {} });
    raw.write(text);
    expect(await raw.exit).toBe(1);
    expect(raw.err()).toMatch(/^The server ends: a message cannot be told from the next\. .+\n$/);
  });

  it("but of frames that hold nothing of use goes on", async () => {
    const raw = await rawServer();
    raw.request(1, "initialize", { processId: null, rootUri: null, capabilities: {} });
    for (const body of ["{nonsense", "null", "[]", "7", '"x"', "{}", '[{"jsonrpc":"2.0","id":9,"method":"shutdown"}]'])
      raw.frame(body);
    raw.frame('{"jsonrpc":"2.0","id":77,"result":1}');
    raw.request(2, "wayfile/choices");
    raw.request(3, "shutdown");
    await raw.answered(3);
    raw.notify("exit");
    expect(await raw.exit).toBe(0);
    expect(raw.answers().map(({ id }) => id)).toEqual([1, 2, 3]);
  });

  it("that is closed ends the process", async () => {
    const raw = await rawServer();
    raw.request(1, "initialize", { processId: null, rootUri: null, capabilities: {} });
    raw.write('Content-Length: 400\r\n\r\n{"half');
    raw.end();
    expect(await raw.exit).toBe(1);
  });
});
