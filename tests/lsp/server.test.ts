/** Through the wire, with a server in a process of its own: what cannot be seen beneath it. */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, describe, expect, it } from "vitest";
import {
  CancellationTokenSource,
  type ClientCapabilities,
  type CompletionItem,
  type Hover,
  LSPErrorCodes,
} from "vscode-languageserver/node";
import { mostLines } from "../../server/lsp/colours.ts";
import { lineStarts, positionOf } from "../../server/text/lines.ts";
import { loft } from "../helpers/cursor.ts";
import { generate, random } from "../helpers/generate.ts";
import { pulling, type Server, type ServerOptions, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/a.ways";
const faulty = 'wayfile 1\ninstallation "A" {\n  standard BS 7671:2018+A2:2022\n  stage nonsense\n}\n';
const mended = [{ range: { start: { line: 3, character: 8 }, end: { line: 3, character: 16 } }, text: "design" }];

const running: Server[] = [];
const folders: string[] = [];

async function start(options?: ServerOptions): Promise<Server> {
  const server = await startServer(options);
  running.push(server);
  return server;
}

afterEach(async () => {
  for (const server of running.splice(0)) server.kill();
  for (const folder of folders.splice(0)) await rm(folder, { recursive: true });
});

async function folderOf(
  files: Readonly<Record<string, string>>,
): Promise<{ path: string; uri: (name: string) => string }> {
  const path = await mkdtemp(join(tmpdir(), "wayfile-"));
  folders.push(path);
  for (const [name, text] of Object.entries(files)) await writeFile(join(path, name), text);
  return { path, uri: (name) => pathToFileURL(join(path, name)).href };
}

/** What an editor may do besides, so that every feature is registered. */
const everything: ClientCapabilities = {
  textDocument: {
    semanticTokens: { requests: { full: { delta: true } }, tokenTypes: [], tokenModifiers: [], formats: ["relative"] },
    codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } },
    completion: { completionItem: { snippetSupport: true } },
    rename: { prepareSupport: true },
  },
};

const errorsOf = (list: readonly { severity?: number; code?: unknown }[]) =>
  list.filter(({ severity }) => severity === 1).map(({ code }) => code);

describe("findings", () => {
  it("are pushed to an editor that does not pull, and go with the file", async () => {
    const server = await start({ capabilities: everything });
    await server.open(uri, faulty);
    const { diagnostics, version } = await server.push(uri, (list) => list.length > 0);
    expect(version).toBe(1);
    const finding = diagnostics.find(({ severity }) => severity === 1);
    expect(finding).toMatchObject({ source: "wayfile", code: "language/wrong-argument", severity: 1 });
    expect(finding).not.toHaveProperty("codeDescription");
    await server.change(uri, 2, mended);
    await server.push(uri, (list) => errorsOf(list).length === 0, 2);
    await server.change(uri, 3, [{ text: faulty }]);
    await server.push(uri, (list) => errorsOf(list).length > 0, 3);
    await server.connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
    await server.push(uri, (list) => list.length === 0);
    expect(await server.stop()).toBe(0);
  });

  it("are given to an editor that pulls, which hears when nothing has changed", async () => {
    const server = await start({ capabilities: pulling });
    await server.open(uri, faulty);
    const first = await server.pull(uri);
    expect(errorsOf(first.items ?? [])).toEqual(["language/wrong-argument"]);
    expect(await server.pull(uri, first.resultId)).toEqual({ kind: "unchanged", resultId: first.resultId });
    await server.change(uri, 2, mended);
    const second = await server.pull(uri, first.resultId);
    expect(second.kind).toBe("full");
    expect(errorsOf(second.items ?? [])).toEqual([]);
    expect(server.published).toEqual([]);
    expect(await server.stop()).toBe(0);
  });

  it("carry the limit, the lines they speak of and their fixes, and the message stands alone", async () => {
    const server = await start();
    await server.open(uri, loft.replace("0.64 Ω", "1.64 Ω").replace("      behind  east\n", ""));
    const { diagnostics } = await server.push(uri, (list) => list.length > 0);
    const finding = diagnostics.find(({ code }) => code === "loop/zs-over-limit");
    // The source ends the message, and is no row of its own.
    expect(finding?.message).toMatch(/\. \[BS 7671:2018\+A2:2022, Table 41\.3\]$/);
    expect(finding?.relatedInformation?.map(({ message }) => message).join("\n")).not.toContain("Table 41.3");
    await server.change(uri, 2, [{ text: loft.replace("serves  lighting", "serves  lihgting") }]);
    const typo = await server.push(uri, (list) => list.some(({ code }) => code === "language/wrong-argument"), 2);
    const { data } = typo.diagnostics.find(({ code }) => code === "language/wrong-argument") ?? {};
    expect(data).toMatchObject({ fixes: [{ title: "Write lighting", edits: [{ newText: "lighting" }] }] });
  });

  it("have related entries of one line each, which a list of problems can show", async () => {
    const server = await start();
    await server.open(uri, loft.replace("0.64 Ω", "1.64 Ω").replace("      behind  east\n", ""));
    const { diagnostics } = await server.push(uri, (list) => list.length > 0);
    const messages = diagnostics.flatMap(({ relatedInformation = [] }) =>
      relatedInformation.map(({ message }) => message),
    );
    expect(messages.length).toBeGreaterThan(1);
    for (const message of messages) expect(message).not.toContain("\n");
  });

  it("wait for a save where the setting says so", async () => {
    const capabilities = { workspace: { configuration: true } };
    const server = await start({ capabilities, settings: { check: { onType: false } } });
    await server.open(uri, faulty);
    await server.push(uri, (list) => errorsOf(list).length > 0);
    const answered = () =>
      server.connection.sendRequest("textDocument/hover", {
        textDocument: { uri },
        position: { line: 0, character: 0 },
      });
    // The settings have come by the time a later question is answered.
    await answered();
    await server.change(uri, 2, mended);
    await answered();
    expect(server.published.at(-1)?.version).toBe(1);
    await server.connection.sendNotification("textDocument/didSave", { textDocument: { uri } });
    await server.push(uri, (list) => errorsOf(list).length === 0, 2);
  });
});

describe("files of a folder", () => {
  const meters = 'wayfile 1\ninstrument M1 "Multifunction tester" { due 2027-01-01 }\n';
  const main =
    'wayfile 1\nuse "meters.ways"\ninstallation "A" {\n  supply {\n    measured 2026-03-05 with M1\n  }\n}\n';
  const part = 'wayfile 1\nboard B "Annexe" {\n  fed-from  A\n}\n';

  it("are read when one uses them, and followed when they change on disk", async () => {
    const folder = await folderOf({ "meters.ways": meters });
    const server = await start({ folder: folder.uri("") });
    await server.open(folder.uri("main.ways"), main);
    const codes = (list: readonly { code?: unknown }[]) => list.map(({ code }) => code);
    await server.push(folder.uri("main.ways"), (list) => !codes(list).includes("language/unknown-name"));
    await writeFile(join(folder.path, "meters.ways"), meters.replace("M1", "M2"));
    const changes = [{ uri: folder.uri("meters.ways"), type: 2 }];
    await server.connection.sendNotification("workspace/didChangeWatchedFiles", { changes });
    await server.push(folder.uri("main.ways"), (list) => codes(list).includes("language/unknown-name"));
    await rm(join(folder.path, "meters.ways"));
    await server.connection.sendNotification("workspace/didChangeWatchedFiles", { changes });
    const missing = (list: readonly { code?: unknown }[]) => codes(list).includes("language/use-missing");
    const { diagnostics } = await server.push(folder.uri("main.ways"), missing);
    expect(codes(diagnostics)).toContain("language/use-missing");
  });

  it("change each other's findings while both are open, typed or closed", async () => {
    const folder = await folderOf({ "meters.ways": meters });
    const server = await start({ folder: folder.uri("") });
    const unknown = (list: readonly { code?: unknown }[]) => list.some(({ code }) => code === "language/unknown-name");
    await server.open(folder.uri("main.ways"), main);
    await server.open(folder.uri("meters.ways"), meters.replace("M1", "M3"));
    await server.push(folder.uri("main.ways"), unknown);
    await server.connection.sendNotification("textDocument/didClose", {
      textDocument: { uri: folder.uri("meters.ways") },
    });
    const { diagnostics } = await server.push(folder.uri("main.ways"), (list) => !unknown(list));
    expect(unknown(diagnostics)).toBe(false);
  });

  it("that several schedules use are renamed in all of them, also in those nobody opened", async () => {
    const folder = await folderOf({ "meters.ways": meters, "main.ways": main, "other.ways": main });
    const server = await start({ folder: folder.uri("") });
    await server.open(folder.uri("main.ways"), main);
    const position = { line: 4, character: main.split("\n")[4]?.indexOf("M1") ?? 0 };
    const about = { textDocument: { uri: folder.uri("main.ways") }, position };
    const files = ["main.ways", "meters.ways", "other.ways"].map(folder.uri);
    const { changes } = await server.connection.sendRequest<{ changes: Record<string, unknown[]> }>(
      "textDocument/rename",
      { ...about, newName: "M7" },
    );
    expect(Object.keys(changes).sort()).toEqual(files);
    expect(Object.values(changes).map((edits) => edits.length)).toEqual([1, 1, 1]);
    const uses = await server.connection.sendRequest<{ uri: string }[]>("textDocument/references", {
      ...about,
      context: { includeDeclaration: true },
    });
    expect(uses.map(({ uri: one }) => one).sort()).toEqual(files);
  });

  it("without an installation are judged in the schedule that uses them", async () => {
    const whole = 'wayfile 1\nuse "part.ways"\ninstallation "A" {\n  board A "Main" {\n    fed-from  supply\n  }\n}\n';
    const folder = await folderOf({ "whole.ways": whole, "part.ways": part });
    const server = await start({ capabilities: pulling, folder: folder.uri("") });
    await server.open(folder.uri("part.ways"), part.replace("A\n", "C\n"));
    const { items } = await server.pull(folder.uri("part.ways"));
    expect(items?.map(({ code }) => code)).toContain("language/unknown-name");
    await server.change(folder.uri("part.ways"), 2, [{ text: part }]);
    const sound = await server.pull(folder.uri("part.ways"));
    expect(sound.items?.map(({ code }) => code)).not.toContain("language/unknown-name");
  });
});

describe("text", () => {
  it("edited in pieces is the text sent whole", async () => {
    const server = await start({ capabilities: pulling });
    const other = "file:///nowhere/b.ways";
    const next = random(3);
    let text = loft;
    await server.open(uri, text);
    await server.open(other, text);
    for (let version = 2; version < 60; version++) {
      const [from = 0, to = 0] = [next(), next()].map((at) => Math.floor(at * text.length)).sort((a, b) => a - b);
      const end = next() < 0.8 ? Math.min(to, from + 6) : to;
      const at = Math.floor(next() * loft.length);
      const piece = next() < 0.5 ? "" : loft.slice(at, at + Math.floor(next() * 40));
      const starts = lineStarts(text);
      const range = { start: positionOf(starts, from), end: positionOf(starts, end) };
      text = text.slice(0, from) + piece + text.slice(end);
      await server.change(uri, version, [{ range, text: piece }]);
      await server.change(other, version, [{ text }]);
      const [pieces, whole] = await Promise.all([server.pull(uri), server.pull(other)]);
      const plain = (items: unknown): unknown => JSON.parse(JSON.stringify(items).replaceAll(other, uri));
      expect(plain(pieces.items)).toEqual(plain(whole.items));
    }
    expect(server.errors).toEqual([]);
  });

  it("of a version older than the one at hand is ignored", async () => {
    const server = await start({ capabilities: pulling });
    await server.open(uri, faulty);
    await server.change(uri, 5, mended);
    const sound = await server.pull(uri);
    expect(errorsOf(sound.items ?? [])).toEqual([]);
    await server.change(uri, 3, [{ text: "nonsense" }]);
    expect(await server.pull(uri, sound.resultId)).toEqual({ kind: "unchanged", resultId: sound.resultId });
  });

  it("of rubbish, or none, or a thousand ways pasted at once is survived", async () => {
    const server = await start();
    await server.open(uri, "");
    const pastes = ["\u0000{{{\ud800", '"'.repeat(5_000), "way {".repeat(2_000), generate({ ways: 1_000 }), ""];
    for (const [index, text] of pastes.entries()) {
      await server.change(uri, index + 2, [{ text }]);
      await server.push(uri, undefined, index + 2);
    }
    const position = { line: 400, character: 90 };
    for (const method of ["hover", "definition", "completion", "references", "documentHighlight"]) {
      await server.connection.sendRequest(`textDocument/${method}`, {
        textDocument: { uri },
        position,
        context: { includeDeclaration: true },
      });
    }
    expect(server.errors).toEqual([]);
  });
});

describe("requests", () => {
  it("about a file nobody opened are answered from the disk, or neutrally", async () => {
    const folder = await folderOf({ "loft.ways": loft });
    const server = await start({ folder: folder.uri("") });
    const ask = (of: string): Promise<Hover | null> =>
      server.connection.sendRequest("textDocument/hover", {
        textDocument: { uri: of },
        position: { line: 5, character: 3 },
      });
    expect(await ask(folder.uri("loft.ways"))).toMatchObject({ contents: { kind: "markdown" } });
    expect(await ask(folder.uri("other.ways"))).toBeNull();
    expect(await ask("git:/nowhere.ways?x")).toBeNull();
  });

  it("that are called off are answered as such", async () => {
    const server = await start();
    const source = new CancellationTokenSource();
    const params = { textDocument: { uri }, position: { line: 0, character: 0 } };
    await server.open(uri, generate({ ways: 1_000 }));
    // Reading so much takes a while, in which the next two messages arrive.
    const busy = server.connection.sendRequest("textDocument/hover", params);
    const asked = server.connection.sendRequest("textDocument/completion", params, source.token);
    source.cancel();
    await expect(asked).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    await busy;
    const items = (await server.connection.sendRequest("textDocument/completion", params)) as CompletionItem[];
    expect(items.map(({ label }) => label)).toContain("wayfile");
  });

  it("of our own start a schedule that holds no error", async () => {
    const server = await start();
    const choices: { earthing: { id: string }[]; standards: { id: string }[] } =
      await server.connection.sendRequest("wayfile/choices");
    expect(choices.earthing[0]?.id).toBe("TN-C-S");
    // How some clients send a request that has no parameters.
    expect(await server.connection.sendRequest("wayfile/choices", null)).toEqual(choices);
    const question = { name: "Loft", earthing: "TT", standard: choices.standards[0]?.id };
    const { text }: { text: string } = await server.connection.sendRequest("wayfile/newSchedule", question);
    await server.open(uri, text);
    expect(errorsOf((await server.push(uri)).diagnostics)).toEqual([]);
    await expect(server.connection.sendRequest("wayfile/newSchedule", { name: "" })).rejects.toThrow("needs a name");
  });
});

describe("an editor that can do everything", () => {
  it("gets colours whole, then only what changed", async () => {
    const server = await start({ capabilities: everything });
    await server.open(uri, loft);
    const ask = <T>(method: string, more: object = {}): Promise<T> =>
      server.connection.sendRequest(`textDocument/${method}`, { textDocument: { uri }, ...more });
    const whole: { data: number[]; resultId: string } = await ask("semanticTokens/full");
    const line = loft.split("\n").findIndex((text) => text.includes("way 9 spare"));
    const place = { line, character: 0 };
    await server.change(uri, 2, [{ range: { start: place, end: place }, text: "    way 8 spare\n" }]);
    const delta: { edits: { start: number; deleteCount: number; data?: number[] }[] } = await ask(
      "semanticTokens/full/delta",
      { previousResultId: whole.resultId },
    );
    const data = [...whole.data];
    for (const { start: at, deleteCount, data: fresh = [] } of delta.edits) data.splice(at, deleteCount, ...fresh);
    expect(data.length).toBe(whole.data.length + 15);
    expect(await ask("semanticTokens/full")).toMatchObject({ data });
  });

  it("gets the colours of a very long file up to a ceiling, and beyond it by range", async () => {
    const server = await start({ capabilities: everything });
    const text = generate({ ways: 1_500 });
    const lines = text.split("\n").length;
    expect(lines).toBeGreaterThan(mostLines);
    await server.open(uri, text);
    const ask = <T>(method: string, more: object = {}): Promise<T> =>
      server.connection.sendRequest(`textDocument/semanticTokens/${method}`, { textDocument: { uri }, ...more });
    const lastLine = ({ data }: { data: number[] }): number =>
      data.reduce((line, down, at) => (at % 5 === 0 ? line + down : line), 0);
    expect(lastLine(await ask("full"))).toBeLessThan(mostLines + 40);
    const range = { start: { line: lines - 30, character: 0 }, end: { line: lines, character: 0 } };
    expect(lastLine(await ask("range", { range }))).toBeGreaterThan(lines - 30);
    expect(server.errors.filter((message) => message.includes(`up to line ${mostLines}`))).toHaveLength(1);
  });

  it("gets every fix that cannot change the meaning at once, where it asks for them", async () => {
    const server = await start({ capabilities: everything });
    // Two facts on a line, and a word of which only its writer knows what it means.
    const text = loft
      .replace("    }\n\n    way 9 spare", "    } way 9 spare")
      .replace("stage     tested", "stage     nonsense");
    await server.open(uri, text);
    const whole = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
    const ask = (
      only: string[],
    ): Promise<{ kind: string; edit: { changes: Record<string, { newText: string }[]> } }[]> =>
      server.connection.sendRequest("textDocument/codeAction", {
        textDocument: { uri },
        range: whole,
        context: { diagnostics: [], only },
      });
    for (const kind of ["source.fixAll", "source.fixAll.wayfile"]) {
      const [action, ...others] = await ask([kind]);
      expect(others).toEqual([]);
      expect(action?.kind).toBe("source.fixAll.wayfile");
      expect(action?.edit.changes[uri]?.map(({ newText }) => newText)).toEqual(["\n"]);
    }
    expect(await ask(["source.organizeImports"])).toEqual([]);
  });

  it("gets fixes as edits, and a rename that is refused says why", async () => {
    const server = await start({ capabilities: everything });
    await server.open(uri, loft.replace("serves  lighting", "serves  lihgting"));
    const line = loft.split("\n").findIndex((text) => text.includes("serves  lighting"));
    const range = { start: { line, character: 16 }, end: { line, character: 16 } };
    const ask = <T>(method: string, more: object): Promise<T> =>
      server.connection.sendRequest(`textDocument/${method}`, { textDocument: { uri }, ...more });
    const actions: { title: string; edit: unknown }[] = await ask("codeAction", {
      range,
      context: { diagnostics: [] },
    });
    const newText = "lighting";
    const word = { start: { line, character: 14 }, end: { line, character: 22 } };
    expect(actions.find(({ title }) => title === "Write lighting")?.edit).toEqual({
      changes: { [uri]: [{ range: word, newText }] },
    });
    const east = loft.split("\n").findIndex((text) => text.includes("behind  east"));
    const position = { line: east, character: 16 };
    await expect(ask("rename", { position, newName: "two words" })).rejects.toThrow("cannot be a name");
    expect(await ask("rename", { position, newName: "west" })).toHaveProperty(["changes", uri, "length"], 2);
  });
});

describe("the process", () => {
  it("ends with 0 after a shutdown, and with 1 without", async () => {
    const orderly = await start();
    expect(await orderly.stop()).toBe(0);
    const abrupt = await start();
    await abrupt.connection.sendNotification("exit");
    expect(await abrupt.exit).toBe(1);
  });
});
