/** Messages that make no sense, or come at the wrong time, over the wire. */
import { afterEach, describe, expect, it } from "vitest";
import { ErrorCodes } from "vscode-languageserver/node";
import { loft } from "../helpers/cursor.ts";
import { pulling, type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/a.ways";
let server: Server | undefined;
afterEach(() => server?.kill());

async function start(): Promise<Server> {
  server = await startServer({ capabilities: pulling });
  return server;
}

const about = [
  "hover",
  "completion",
  "definition",
  "references",
  "documentHighlight",
  "prepareRename",
  "rename",
  "selectionRange",
  "documentSymbol",
  "foldingRange",
  "documentLink",
  "formatting",
  "inlayHint",
  "diagnostic",
];

describe("a request that does not say what it is about", () => {
  it.each(about)("textDocument/%s is refused in a sentence, and leaves no trace of a stumble", async (method) => {
    const { connection, errors, open } = await start();
    await open(uri, loft);
    for (const params of [{}, { textDocument: null }, { textDocument: { uri: 7 } }, { textDocument: "a" }, null, []]) {
      await expect(connection.sendRequest(`textDocument/${method}`, params)).rejects.toMatchObject({
        code: ErrorCodes.InvalidParams,
        message: `textDocument/${method} needs a textDocument with its uri.`,
      });
    }
    expect(errors).toEqual([]);
  });

  it("is refused where it names no place", async () => {
    const { connection, errors } = await start();
    const textDocument = { uri };
    const places = [undefined, null, { line: 1 }, { line: "1", character: 2 }];
    for (const position of places) {
      await expect(connection.sendRequest("textDocument/hover", { textDocument, position })).rejects.toMatchObject({
        code: ErrorCodes.InvalidParams,
      });
      const range = { start: { line: 0, character: 0 }, end: position };
      await expect(connection.sendRequest("textDocument/inlayHint", { textDocument, range })).rejects.toMatchObject({
        code: ErrorCodes.InvalidParams,
      });
    }
    expect(errors).toEqual([]);
  });

  it("as a notification is passed over", async () => {
    const { connection, errors, open, pull } = await start();
    await open(uri, "wayfile 1\nnonsense\n");
    for (const method of ["didOpen", "didChange", "didSave", "didClose"]) {
      for (const params of [{}, { textDocument: {} }, { textDocument: { uri, version: 2 }, contentChanges: [{}] }]) {
        if (method === "didSave" || method === "didClose")
          await connection.sendNotification(`textDocument/${method}`, {});
        else await connection.sendNotification(`textDocument/${method}`, params);
      }
    }
    expect((await pull(uri)).items).toHaveLength(1);
    expect(errors).toEqual([]);
  });
});

describe("a request at the wrong time", () => {
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
});
