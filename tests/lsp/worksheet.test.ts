/** Worksheets, hints and tests ready to fill, asked for through the wire. */
import { afterEach, describe, expect, it } from "vitest";
import type { CodeAction, InlayHint } from "vscode-languageserver/node";
import { blanksKind, type WorksheetAnswer, worksheetRequest } from "../../server/lsp/protocol.ts";
import { loft } from "../helpers/cursor.ts";
import { type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/loft.ways";
const running: Server[] = [];

async function opened(settings?: unknown): Promise<Server> {
  const server = await startServer({
    capabilities: {
      textDocument: { codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } } },
      workspace: { configuration: true },
    },
    ...(settings === undefined ? {} : { settings }),
  });
  running.push(server);
  await server.open(uri, loft);
  return server;
}

afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

const lineOf = (text: string): number => loft.split("\n").findIndex((line) => line.includes(text));
const whole = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };

describe("a worksheet", () => {
  it("is of the way, the board or the installation, as the cursor stands", async () => {
    const { connection } = await opened();
    const titleAt = async (position?: object): Promise<string> =>
      (await connection.sendRequest<WorksheetAnswer>(worksheetRequest, { uri, position })).title;
    expect(await titleAt({ line: lineOf("Sign lighting"), character: 6 })).toContain("way A/5");
    expect(await titleAt({ line: lineOf("main-switch"), character: 6 })).toMatch(/board A$/);
    expect(await titleAt()).toBe("Test worksheet: Wren Pier Sail Loft");
  });

  it("is refused in a sentence where there is none to make", async () => {
    const { connection, open } = await opened();
    await open("file:///nowhere/empty.ways", "wayfile 1\n");
    await expect(connection.sendRequest(worksheetRequest, { uri: "file:///nowhere/empty.ways" })).rejects.toThrow(
      /no installation/,
    );
    await expect(connection.sendRequest(worksheetRequest, {})).rejects.toThrow(/address/);
  });
});

describe("hints", () => {
  const ask = ({ connection }: Server) =>
    connection.sendRequest<InlayHint[]>("textDocument/inlayHint", { textDocument: { uri }, range: whole });

  it("stand at the end of their lines", async () => {
    const hints = await ask(await opened());
    const Zs = hints.find(({ position }) => position.line === lineOf("Zs           0.64 Ω"));
    expect(Zs?.label).toMatch(/left of .* cold/);
  });

  it("are of the kind the setting asks for", async () => {
    // Settings are asked of the editor once it is up: the first answer may be older than they are.
    const none = await opened({ inlay: "off" });
    await expect.poll(() => ask(none)).toEqual([]);
    const one = await opened({ inlay: "margins" });
    const labels = async () => (await ask(one)).map(({ label }) => String(label));
    await expect.poll(async () => (await labels()).filter((label) => label.includes("expected"))).toEqual([]);
    expect(await labels()).toEqual([expect.stringContaining("left of"), expect.stringContaining("left of")]);
  });
});

describe("tests ready to fill", () => {
  it("are a code action of their own kind", async () => {
    const { connection } = await opened();
    const at = { line: lineOf("Sign lighting"), character: 8 };
    const actions = await connection.sendRequest<CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri },
      range: { start: at, end: at },
      context: { diagnostics: [], only: [blanksKind] },
    });
    expect(actions.map(({ kind }) => kind)).toEqual([blanksKind]);
    const [edit] = actions[0]?.edit?.changes?.[uri] ?? [];
    expect(edit?.newText).toContain("# dead DATE {");
  });
});
