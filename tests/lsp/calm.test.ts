import { afterEach, describe, expect, test } from "vitest";
import type { CodeLens } from "vscode-languageserver";
import { loft } from "../helpers/cursor.ts";
import { pulling, type Server, startServer } from "../helpers/server.ts";

const uri = "file:///schedules/calm.ways";
const lines = loft.split("\n");
const lineOf = (text: string): number => lines.findIndex((line) => line.includes(text));

let server: Server | undefined;
afterEach(() => {
  server?.kill();
});

async function opened(cursor: boolean, text = loft) {
  server = await startServer({
    capabilities: { ...pulling, textDocument: { ...pulling.textDocument, codeLens: {} } },
    initializationOptions: { lens: "x", ...(cursor ? { cursor: true } : {}) },
  });
  const { connection, change, open, pull } = server;
  await open(uri, text);
  await pull(uri);
  let version = 1;
  const marked = async () =>
    (await pull(uri)).items?.map(({ code, range }) => `${range.start.line}: ${String(code)}`).sort() ?? [];
  return {
    marked,
    /** What stands above a way, as an editor shows it. */
    async lensOf(reference: string): Promise<string | undefined> {
      const lenses: CodeLens[] = await connection.sendRequest("textDocument/codeLens", { textDocument: { uri } });
      const lens = lenses.find(({ data }) => data.of === reference);
      if (!lens) return undefined;
      const shown: CodeLens = await connection.sendRequest("codeLens/resolve", lens);
      return shown.command?.title;
    },
    async type(line: number, character: number, text: string, until = character) {
      if (cursor) await connection.sendNotification("wayfile/cursor", { uri, line, rests: false });
      return this.change(line, character, text, until);
    },
    async change(line: number, character: number, text: string, until = character) {
      const range = { start: { line, character }, end: { line, character: until } };
      await change(uri, ++version, [{ range, text }]);
      return marked();
    },
    async moveTo(line: number, rests = false) {
      await connection.sendNotification("wayfile/cursor", { uri, line, rests });
      return marked();
    },
    async save() {
      await connection.sendNotification("textDocument/didSave", { textDocument: { uri } });
      return marked();
    },
  };
}

describe("the line being written", () => {
  const serves = lineOf("serves  lighting");
  const end = lines[serves]?.length ?? 0;

  test("is calm until it is left, and the rest of the file is not", async () => {
    const editor = await opened(true);
    const before = await editor.marked();
    expect(await editor.type(serves, end, "\n      diversity ")).toEqual(before);
    expect(await editor.moveTo(serves + 1, true)).toEqual(before);
    const after = await editor.moveTo(serves);
    expect(after.length).toBe(before.length + 1);
    expect(after.find((one) => !before.includes(one))).toMatch(new RegExp(`^${serves + 1}: language/`));
  });

  test("leaves what stands above its way as it was until the typing rests", async () => {
    const editor = await opened(true);
    const way = /way (\S+)/.exec(lines.slice(0, serves).findLast((line) => /^ *way /.test(line)) ?? "")?.[1] ?? "";
    const board =
      /board (\S+)/.exec(lines.slice(0, serves).findLast((line) => /^ *board /.test(line)) ?? "")?.[1] ?? "";
    const before = await editor.lensOf(`${board}/${way}`);
    expect(before).toMatch(/^4 errors · missing: /);
    const Ib = lineOf("Ib      2.1 A");
    const at = (lines[Ib] ?? "").indexOf("2.1");
    await editor.type(Ib, at, "1", at);
    expect(await editor.lensOf(`${board}/${way}`)).toBe(before);
    await editor.moveTo(Ib, true);
    const left = await editor.lensOf(`${board}/${way}`);
    expect(left).toMatch(/^\d errors?\b/);
    expect(left).not.toBe(before);
  });

  test("is judged where the cursor rests in it, unless it is half a line", async () => {
    const editor = await opened(true);
    const Ib = lineOf("Ib      2.1 A");
    const at = (lines[Ib] ?? "").indexOf("2.1");
    const typed = await editor.type(Ib, at, "1", at);
    expect(typed.filter((one) => one.startsWith(`${Ib}: design/`))).toEqual([]);
    expect(await editor.moveTo(Ib, true)).toContain(`${Ib}: design/load-over-device`);
  });

  test("what was shown on it stays, and goes at once when it is put right", async () => {
    const wrong = loft.replace("Ib      2.1 A", "Ib      12.1 A");
    const editor = await opened(true, wrong);
    const Ib = lineOf("Ib      2.1 A");
    const mark = `${Ib}: design/load-over-device`;
    expect(await editor.type(Ib, 20, " # why")).toContain(mark);
    expect(await editor.type(Ib, 14, "", 15)).not.toContain(mark);
    expect(await editor.type(Ib, 14, "1")).not.toContain(mark);
  });

  test("so are all lines of a block that is laid out with gaps, until it is left", async () => {
    const editor = await opened(true);
    const before = await editor.marked();
    const way = 'way 10 radial "Yard" {\n      length   m\n      serves  \n    }';
    const spare = lineOf("way 9 spare");
    await editor.type(spare, 15, "\n    w");
    const shifted = (found: readonly string[]) => found.map((one) => one.replace(/^\d+/, ""));
    expect(shifted(await editor.type(spare + 1, 4, way, 5))).toEqual(shifted(before));
    await editor.moveTo(spare + 2);
    expect(shifted(await editor.type(spare + 2, 14, "9"))).toEqual(shifted(before));
    const left = await editor.moveTo(spare - 3);
    expect(left.some((one) => one.startsWith(`${spare + 3}: language/`))).toBe(true);
  });

  test("what is changed elsewhere than at the cursor was not typed", async () => {
    const editor = await opened(true);
    const before = await editor.marked();
    await editor.moveTo(2);
    expect((await editor.change(serves, end, "\n      diversity ")).length).toBe(before.length + 1);
  });

  test("a saved file has all its findings", async () => {
    const editor = await opened(true);
    const before = await editor.marked();
    await editor.type(serves, end, "\n      diversity ");
    expect((await editor.save()).length).toBe(before.length + 1);
  });

  test("an editor that keeps its cursor to itself is told everything", async () => {
    const editor = await opened(false);
    const before = await editor.marked();
    expect((await editor.type(serves, end, "\n      diversity ")).length).toBe(before.length + 1);
  });

  test("what is missing in a block is told once the block is left", async () => {
    const editor = await opened(true);
    const before = await editor.marked();
    const spare = lineOf("way 9 spare");
    const typed = await editor.type(spare, 15, '\n    way 10 radial "Yard" {\n      \n    }');
    const shifted = (found: readonly string[]) => found.map((one) => one.replace(/^\d+/, ""));
    expect(shifted(typed)).toEqual(shifted(before));
    expect(shifted(await editor.moveTo(spare + 2))).toEqual(shifted(before));
    const left = await editor.moveTo(spare - 3);
    expect(left.some((one) => one.includes("record/no-device"))).toBe(true);
  });

  test("nor is it once the editor has laid out the line that was left by its end", async () => {
    const editor = await opened(true);
    const before = await editor.marked();
    const shifted = (found: readonly string[]) => found.map((one) => one.replace(/^\d+/, ""));
    const spare = lineOf("way 9 spare");
    await editor.type(spare, 15, '\n    way 10 radial "Yard" {\n      \n    }');
    await editor.moveTo(spare + 2);
    await editor.type(spare + 2, 6, "length 9 m");
    await editor.type(spare + 2, 16, "\n      ");
    expect(shifted(await editor.change(spare + 2, 12, "       ", 13))).toEqual(shifted(before));
    await editor.moveTo(spare + 3);
    expect(shifted(await editor.type(spare + 3, 6, "diversity "))).toEqual(shifted(before));
    const left = await editor.moveTo(spare - 3);
    expect(left.some((one) => one.includes("record/no-device"))).toBe(true);
    expect(left.some((one) => one.startsWith(`${spare + 3}: language/`))).toBe(true);
  });
});
