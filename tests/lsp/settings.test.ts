/** Settings of the window and of folders, as an editor answers for them. */
import { afterEach, expect, test } from "vitest";
import type { Connection, InlayHint } from "vscode-languageserver/node";
import { Settings } from "../../server/lsp/settings.ts";
import { loft } from "../helpers/cursor.ts";
import { type Server, startServer } from "../helpers/server.ts";

const running: Server[] = [];
afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

/** A client that answers with the settings of each scope. */
const answering = (answers: unknown): Connection =>
  ({ workspace: { getConfiguration: () => Promise.resolve(answers) } }) as unknown as Connection;

test("the innermost folder decides how a schedule is shown, and the window where none does", async () => {
  const settings = new Settings();
  await settings.read(
    answering([{ inlay: "margins", check: { onType: false } }, { inlay: "off" }, { lens: "boards" }]),
    ["file:///yard", "file:///yard/old"],
  );
  expect(settings.shown("file:///elsewhere/a.ways")).toEqual({ inlay: "margins", lens: "ways" });
  expect(settings.shown("file:///yard/a.ways")).toEqual({ inlay: "off", lens: "ways" });
  expect(settings.shown("file:///yard/old/a.ways")).toEqual({ inlay: "margins", lens: "boards" });
  expect(settings.shown("file:///yardarm/a.ways").inlay).toBe("margins");
  expect(settings.checked).toEqual({ onType: false, unopened: true });
});

test("what is no setting changes nothing", async () => {
  const settings = new Settings();
  const before = settings.showing;
  for (const answers of [undefined, null, 7, [], [null, 7], [{ inlay: 3, lens: [], check: "x" }, { inlay: "loud" }]])
    await settings.read(answering(answers), ["file:///yard"]);
  settings.take({ check: null });
  expect(settings.showing).toBe(before);
  expect(settings.checked).toEqual({ onType: true, unopened: true });
});

test("hints follow the setting of their folder", async () => {
  const uri = "file:///nowhere/loft.ways";
  const whole = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };
  const hintsOf = async (own: unknown): Promise<InlayHint[]> => {
    const server = await startServer({
      capabilities: { workspace: { configuration: true } },
      folder: "file:///nowhere",
      settings: { inlay: "both" },
      settingsOf: (folder) => (folder === "file:///nowhere" ? own : undefined),
    });
    running.push(server);
    await server.open(uri, loft);
    await server.push(uri);
    return server.connection.sendRequest("textDocument/inlayHint", { textDocument: { uri }, range: whole });
  };
  expect(await hintsOf({ inlay: "off" })).toEqual([]);
  const labels = (await hintsOf(undefined)).map(({ label }) => String(label));
  expect(labels).toEqual(
    expect.arrayContaining([expect.stringContaining("left of"), expect.stringContaining("expected")]),
  );
});
