/** A server that has much to do, through the wire: the order of its answers, never their time. */
import { spawn } from "node:child_process";
import { afterEach, describe, expect, it } from "vitest";
import {
  CancellationTokenSource,
  type ClientCapabilities,
  type Diagnostic,
  type Hover,
  LSPErrorCodes,
  type PublishDiagnosticsParams,
} from "vscode-languageserver/node";
import { loft } from "../helpers/cursor.ts";
import { generate } from "../helpers/generate.ts";
import { type Pulled, pulling, type Server, type ServerOptions, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/a.ways";
const textDocument = { uri };
const position = { line: 0, character: 0 };

let server: Server | undefined;
afterEach(() => server?.kill());

async function start(options: ServerOptions): Promise<Server> {
  server = await startServer(options);
  return server;
}

/** An editor that cannot be told to ask again is given all at once, however long it takes. */
const patient: ClientCapabilities = { textDocument: { diagnostic: {} } };

const isWhole = ({ diagnostics }: PublishDiagnosticsParams): boolean =>
  diagnostics.every(({ code }) => code !== "check/under-way");

/** A pull of a large project that nobody has checked, and a question that is answered while it is under way. */
async function underWay({ connection, open }: Server) {
  await open(uri, generate({ ways: 600 }));
  const source = new CancellationTokenSource();
  const order: string[] = [];
  const pull = connection.sendRequest("textDocument/diagnostic", { textDocument }, source.token).finally(() => {
    order.push("pull");
  });
  // Looked at when the test comes to it; until then it is no unhandled rejection.
  pull.catch(() => undefined);
  await connection.sendRequest("textDocument/completion", { textDocument, position });
  order.push("typing");
  return { pull, order, cancel: () => source.cancel() };
}

describe("a first check of many ways", () => {
  it("lets what is typed be answered before it ends", async () => {
    const { pull, order } = await underWay(await start({ capabilities: patient }));
    await pull;
    expect(order).toEqual(["typing", "pull"]);
  });

  it("is left off when it is called off, and nothing is spoilt", async () => {
    const running = await start({ capabilities: patient });
    const { pull, order, cancel } = await underWay(running);
    expect(order).toEqual(["typing"]);
    cancel();
    await expect(pull).rejects.toMatchObject({ code: LSPErrorCodes.RequestCancelled });
    const fresh = await running.pull(uri);
    const whole = await startServer({ capabilities: patient });
    await whole.open(uri, generate({ ways: 600 }));
    expect(fresh.items).toEqual((await whole.pull(uri)).items);
    whole.kill();
  });

  it("that is overtaken by an edit is asked for again, and blanks nothing", async () => {
    const running = await start({ capabilities: patient });
    const { pull, order } = await underWay(running);
    expect(order).toEqual(["typing"]);
    await running.change(uri, 2, [{ range: { start: position, end: position }, text: "nonsense\n" }]);
    await expect(pull).rejects.toMatchObject({ code: LSPErrorCodes.ServerCancelled, data: { retriggerRequest: true } });
    const { items = [] } = await running.pull(uri);
    expect(items.map(({ message }) => message).join()).toContain("nonsense");
  });

  it("is pushed once, for the last version, to an editor that does not pull", async () => {
    const running = await start({ capabilities: {} });
    await running.open(uri, generate({ ways: 600 }));
    for (let version = 2; version < 6; version++) {
      await running.connection.sendRequest("textDocument/completion", { textDocument, position });
      await running.change(uri, version, [{ range: { start: position, end: position }, text: "nonsense\n" }]);
    }
    const { diagnostics } = await running.push(uri, undefined, 5);
    expect(diagnostics.filter(({ message }) => String(message).includes("nonsense"))).toHaveLength(4);
    const versions = running.published.filter(isWhole).map(({ version }) => version);
    expect(versions).toEqual([...new Set(versions)].sort());
  });
});

describe("a first check that takes long", () => {
  const entry = "tests/helpers/impatient-server.ts";
  const inlay = { capabilities: pulling, entry };
  /** Each loop is too high; the last board is what the editor shows. */
  const faulty = generate({ ways: 480 }).replaceAll(/^(\s+Zs\s+)[\d.]+ Ω/gm, "$19.99 Ω");
  const last = faulty.split("\n").length - 40;
  const seen = { start: { line: last, character: 0 }, end: { line: last + 30, character: 0 } };
  const linesOf = (items: readonly Diagnostic[] = []) => items.map(({ range }) => range.start.line);

  it("shows what is looked at first, and then has the whole asked for", async () => {
    const running = await start(inlay);
    let asked: () => void = () => {};
    running.connection.onRequest("workspace/diagnostic/refresh", () => {
      asked();
      return null;
    });
    const askedAgain = () => new Promise<void>((resolve) => (asked = resolve));
    await running.open(uri, faulty);
    await running.connection.sendRequest("textDocument/inlayHint", { textDocument, range: seen });
    const again = askedAgain();
    const ways = await running.pullOnce(uri);
    await again;
    const more = askedAgain();
    const part = await running.pullOnce(uri, ways.resultId);
    await more;
    const whole = await running.pullOnce(uri, part.resultId);
    expect(whole.kind).toBe("full");
    const normal = await startServer({ capabilities: pulling });
    await normal.open(uri, faulty);
    expect(whole.items).toEqual((await normal.pull(uri)).items);
    normal.kill();
    for (const { items = [] } of [ways, part]) {
      const [note, ...others] = items.filter(({ code }) => code === "check/under-way");
      expect([note?.message, others.length]).toEqual(["This file is still being checked: more may be found in it.", 0]);
    }
    const found = ({ items = [] }: Pulled) => linesOf(items.filter(({ code }) => code !== "check/under-way"));
    const onScreen = found(ways);
    const inPart = found(part);
    expect(onScreen.some((line) => line >= seen.start.line)).toBe(true);
    expect(onScreen.filter((line) => !inPart.includes(line))).toEqual([]);
    expect(inPart.length).toBeLessThan(whole.items?.length ?? 0);
    expect(inPart.some((line) => line >= seen.start.line)).toBe(true);
    // All of the board that is shown: what of the nineteen before it was found meanwhile is a matter of time.
    const board = faulty.split("\n").findLastIndex((line) => /^ {2}board /.test(line));
    const shown = linesOf(whole.items).filter((line) => line >= board);
    expect(shown.length).toBeGreaterThan(20);
    expect(inPart.filter((line) => line >= board)).toEqual(shown);
  });

  it("keeps no hover waiting for the rest", async () => {
    const running = await start(inlay);
    await running.open(uri, faulty);
    const line = faulty.split("\n").findLastIndex((text) => text.includes("9.99 Ω"));
    const about = { textDocument, position: { line, character: faulty.split("\n")[line]?.indexOf("9.99") ?? 0 } };
    await running.connection.sendRequest("textDocument/inlayHint", { textDocument, range: seen });
    const hover: Hover = await running.connection.sendRequest("textDocument/hover", about);
    expect(JSON.stringify(hover.contents)).toContain("loop/");
    expect((await running.pullOnce(uri)).items?.at(-1)?.code).toBe("check/under-way");
  });

  it("is pushed in part and then whole to an editor that does not pull", async () => {
    const running = await start({ capabilities: {}, entry });
    await running.open(uri, faulty);
    const whole = await running.push(uri);
    const parts = running.published.slice(0, -1);
    expect(running.published.at(-1)).toEqual(whole);
    expect(whole.diagnostics.map(({ code }) => code)).not.toContain("check/under-way");
    // The ways on the screen and then their board, or both in one where the machine has other work meanwhile.
    expect([1, 2]).toContain(parts.length);
    for (const { diagnostics } of parts) {
      expect(diagnostics.at(-1)?.code).toBe("check/under-way");
      for (const item of diagnostics.slice(0, -1)) expect(whole.diagnostics).toContainEqual(item);
    }
    const found = parts.map(({ diagnostics }) => diagnostics.length);
    expect(found).toEqual(found.toSorted((one, other) => one - other));
  });
});

describe("a check that throws", () => {
  const entry = "tests/helpers/failing-server.ts";
  const faulty = loft.replace("stage     tested", "stage     nonsense");
  const at = { start: position, end: position };
  const codes = (items: readonly Diagnostic[] = []) => items.map(({ code }) => code);

  it("keeps what was found and says so, to an editor that pulls", async () => {
    const running = await start({ capabilities: pulling, entry });
    await running.open(uri, faulty);
    const before = await running.pull(uri);
    expect(codes(before.items)).toContain("language/wrong-argument");
    await running.change(uri, 2, [{ range: at, text: "# fall over\n" }]);
    const fallen = await running.pull(uri, before.resultId);
    expect(codes(fallen.items)).toEqual(["check/failed", ...codes(before.items)]);
    expect(fallen.items?.[0]).toMatchObject({
      severity: 1,
      message: expect.stringMatching(/^Checking this file failed, .* \(on purpose\)\. Please report it\.$/),
    });
    await running.change(uri, 3, [{ range: { start: position, end: { line: 1, character: 0 } }, text: "" }]);
    expect(codes((await running.pull(uri, fallen.resultId)).items)).toEqual(codes(before.items));
    expect(running.errors.join()).toContain("textDocument/diagnostic failed on file:///nowhere/a.ways, version 2");
  });

  it("never looks like a clean file, not at the first check either", async () => {
    const running = await start({ capabilities: pulling, entry });
    await running.open(uri, `${loft}# fall over\n`);
    expect(codes((await running.pull(uri)).items)).toEqual(["check/failed"]);
  });

  it("is pushed to an editor that does not pull", async () => {
    const running = await start({ capabilities: {}, entry });
    await running.open(uri, faulty);
    const before = await running.push(uri, (list) => list.length > 0, 1);
    await running.change(uri, 2, [{ range: at, text: "# fall over\n" }]);
    const { diagnostics } = await running.push(uri, undefined, 2);
    expect(codes(diagnostics)).toEqual(["check/failed", ...codes(before.diagnostics)]);
  });
});

describe("a fault of one thing", () => {
  const entry = "tests/helpers/failing-server.ts";
  const codes = (items: readonly Diagnostic[] = []) => items.map(({ code }) => code);
  const overLimit = loft.replace("0.64 Ω", "1.64 Ω").replace("      behind  east\n", "");

  it("in one check is one finding of that way, and every other check speaks", async () => {
    const running = await start({ capabilities: pulling, entry });
    await running.open(uri, overLimit);
    const sound = codes((await running.pull(uri)).items);
    expect(sound).toContain("loop/zs-over-limit");
    await running.change(uri, 2, [{ text: overLimit.replace(/way 3 (\w+) "/, 'way 3 $1 "stumble ') }]);
    const { items = [] } = await running.pull(uri);
    const failed = items.filter(({ code }) => code === "check/failed");
    expect(failed).toHaveLength(1);
    expect(failed[0]?.message).toMatch(
      /^The check loop\/zs-over-limit failed here .* \(on purpose\)\. Please report it\.$/,
    );
    expect(overLimit.split("\n")[failed[0]?.range.start.line ?? -1]).toContain("way 3");
    const others = (list: readonly unknown[]) => list.filter((code) => !String(code).match(/failed|zs-over-limit/));
    expect(others(codes(items))).toEqual(others(sound));
    expect(running.errors).toEqual([]);
  });

  it("that nobody waits for is logged, and what is open stays open", async () => {
    const running = await start({ capabilities: pulling, entry });
    await running.open(uri, `${overLimit}# fall astray\n`);
    expect(codes((await running.pull(uri)).items)).toContain("loop/zs-over-limit");
    const logged = (): boolean => running.errors.some((line) => /^The server stumbled: Error: on purpose/.test(line));
    while (!logged()) await running.connection.sendRequest("wayfile/choices");
    await running.change(uri, 2, [{ text: overLimit }]);
    expect(codes((await running.pull(uri)).items)).toContain("loop/zs-over-limit");
  });

  it("that ends the process is seen by its editor", async () => {
    const running = await start({ capabilities: {}, entry });
    await running.open(uri, `${overLimit}# fall dead\n`);
    expect(await running.exit).toBe(70);
  });
});

describe("a document that is closed while it is checked", () => {
  const findings = "wayfile 1\nnonsense\n";

  it("is answered for, shows nothing any more, and is checked anew once it is open again", async () => {
    const running = await start({ capabilities: patient });
    const { pull } = await underWay(running);
    await running.connection.sendNotification("textDocument/didClose", { textDocument });
    await pull.catch((error: unknown) => expect(error).toMatchObject({ code: expect.any(Number) }));
    const hover = running.connection.sendRequest("textDocument/hover", { textDocument, position });
    expect(await hover).toBeNull();
    await running.open(uri, findings);
    expect((await running.pull(uri)).items).toHaveLength(1);
    expect(running.errors).toEqual([]);
  });

  it("has no findings pushed after those that blank it", async () => {
    const running = await start({ capabilities: {} });
    await running.open(uri, generate({ ways: 600 }).replaceAll(/^(\s+Zs\s+)[\d.]+ Ω/gm, "$19.99 Ω"));
    await running.connection.sendRequest("textDocument/completion", { textDocument, position });
    await running.connection.sendNotification("textDocument/didClose", { textDocument });
    const other = "file:///nowhere/b.ways";
    await running.open(other, findings);
    await running.push(other, (list) => list.length > 0);
    expect(running.published.findLast((one) => one.uri === uri)?.diagnostics ?? []).toEqual([]);
    expect(running.errors).toEqual([]);
  });
});

const lines = (line: number, character: number, endLine: number, endCharacter: number) => ({
  start: { line, character },
  end: { line: endLine, character: endCharacter },
});

describe("a document with returns and line feeds", () => {
  const text = "wayfile 1\r\nnonsense\r\n";
  const beyond = { line: 0, character: 99 };

  it("is edited before the signs that end a line where a place is beyond them", async () => {
    const running = await start({ capabilities: pulling });
    await running.open(uri, text);
    await running.change(uri, 2, [{ range: { start: beyond, end: beyond }, text: "2" }]);
    // One line too many would be the place of this.
    const { items = [] } = await running.pull(uri);
    expect(items.map(({ code, range }) => [code, range.start.line])).toEqual([["language/newer-version", 0]]);
    await running.change(uri, 3, [{ range: { start: { line: 0, character: 9 }, end: beyond }, text: "" }]);
    const after = (await running.pull(uri)).items ?? [];
    expect(after.map(({ code, range }) => [code, range.start.line])).toEqual([["language/unknown-word", 1]]);
    const about = { textDocument, position: beyond, positions: [beyond, { line: 99, character: 0 }] };
    const ask = (method: string) => running.connection.sendRequest(`textDocument/${method}`, about);
    // The last place of the line is behind its figure, and behind the last line is the end of the file.
    const [figure, first, whole] = [lines(0, 8, 0, 9), lines(0, 0, 0, 9), lines(0, 0, 2, 0)];
    expect(await ask("hover")).toMatchObject({
      contents: { value: expect.stringMatching(/^\*\*1\*\*/) },
      range: figure,
    });
    expect(await ask("completion")).toEqual([]);
    expect(await ask("selectionRange")).toEqual([
      { range: figure, parent: { range: first, parent: { range: whole } } },
      { range: whole },
    ]);
    expect(running.errors).toEqual([]);
  });
});

describe("a document that is too large", () => {
  const rubbish = "x y z {\n".repeat(1_250_000);

  it("is told of in one finding, and is a schedule again once it is shorter", async () => {
    const running = await start({ capabilities: pulling });
    await running.open(uri, rubbish);
    const { items = [] } = await running.pull(uri);
    expect(items.map(({ code, message }) => [code, message])).toEqual([
      [
        "check/too-large",
        "This file is not checked: it is larger than 8 MB (10.0 MB), the most that is read of one file. Divide it, and name its parts with “use”.",
      ],
    ]);
    const ask = (method: string) =>
      running.connection.sendRequest(`textDocument/${method}`, { textDocument, position });
    expect(await ask("hover")).toMatchObject({ contents: { value: expect.stringMatching(/check\/too-large/) } });
    const offered = (await ask("completion")) as readonly { readonly label: string }[];
    expect(offered.map(({ label }) => label)).toEqual(expect.arrayContaining(["wayfile", "use", "installation"]));
    for (const method of ["documentSymbol", "foldingRange", "formatting"]) expect(await ask(method)).toEqual([]);
    const end = { line: 1_250_000, character: 0 };
    await running.change(uri, 2, [{ range: { start: { line: 1, character: 0 }, end }, text: "" }]);
    await running.change(uri, 3, [{ range: { start: position, end: position }, text: "wayfile 1\n" }]);
    const shorter = (await running.pull(uri)).items ?? [];
    expect(shorter.map(({ code }) => code)).toEqual(["language/unknown-word", "language/unclosed"]);
    expect(running.errors).toEqual([]);
  });
});

describe("a thousand documents that are closed while they are checked", () => {
  it("show nothing any more, and the one that stays open is whole", async () => {
    const running = await start({ capabilities: {} });
    const uris = Array.from({ length: 1_000 }, (_, index) => `file:///nowhere/${index}.ways`);
    for (const one of uris) await running.open(one, "wayfile 1\nnonsense\n");
    for (const one of uris)
      await running.connection.sendNotification("textDocument/didClose", { textDocument: { uri: one } });
    await running.open(uri, "wayfile 1\nnonsense\n");
    expect((await running.push(uri, (list) => list.length > 0)).diagnostics).toHaveLength(1);
    const last = new Map(running.published.map((one) => [one.uri, one.diagnostics.length]));
    expect([...last].filter(([one, count]) => one !== uri && count > 0)).toEqual([]);
    expect(running.errors).toEqual([]);
  });
});

describe("the process", () => {
  it("answers for a thousand open files", async () => {
    const running = await start({ capabilities: pulling });
    const uris = Array.from({ length: 1_000 }, (_, index) => `file:///nowhere/${index}.ways`);
    for (const [index, one] of uris.entries()) await running.open(one, `wayfile 1\nnonsense${index}\n`);
    const answers = await Promise.all(uris.map((one) => running.pull(one)));
    for (const [index, { items = [] }] of answers.entries()) {
      expect(items.map(({ message }) => message).join()).toContain(`nonsense${index}`);
    }
  });

  it("ends in the middle of a check, once nobody reads what it answers", async () => {
    const running = await start({ capabilities: patient });
    await underWay(running);
    running.process.stdout.destroy();
    running.process.stdin.end();
    expect(await running.exit).toBe(1);
  });

  it("ends in the middle of a check, with the editor that started it", async () => {
    const editor = spawn(process.execPath, ["--eval", "setInterval(() => {}, 1000)"]);
    const running = await start({ capabilities: patient, processId: editor.pid ?? 0 });
    await underWay(running);
    editor.kill("SIGKILL");
    expect(await running.exit).toBe(1);
  });

  it("ends with the editor that started it", async () => {
    const editor = spawn(process.execPath, ["--eval", "setInterval(() => {}, 1000)"]);
    const running = await start({ capabilities: pulling, processId: editor.pid ?? 0 });
    editor.kill("SIGKILL");
    expect(await running.exit).toBe(1);
  });
});
