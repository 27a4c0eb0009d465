/** The live view over the wire: what arrives is plain, of the board that was asked for, and of the newest text. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, expect, it } from "vitest";
import { type ViewAnswer, viewRequest } from "../../server/lsp/view-protocol.ts";
import { loft } from "../helpers/cursor.ts";
import { type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/loft.ways";
const running: Server[] = [];

async function opened(text = loft): Promise<Server> {
  const server = await startServer();
  running.push(server);
  await server.open(uri, text);
  return server;
}

afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

it("shows the board at the cursor, and follows an edit", async () => {
  const { connection, change } = await opened();
  const line = loft.split("\n").findIndex((one) => one.includes("way 3 ring"));
  const position = { line, character: 4 };
  const first = await connection.sendRequest<ViewAnswer>(viewRequest, { uri, view: "board", position });
  expect(first).toMatchObject({ version: 1, board: "A", way: "3", content: { kind: "board" } });
  const rows = first.content?.kind === "board" ? first.content.rows : [];
  expect(rows.find(({ id }) => id === "3")?.mark).toMatchObject({ line, character: 4 });
  await change(uri, 2, [{ text: loft.replace("Cutting-floor sockets", "Rigging sockets") }]);
  const second = await connection.sendRequest<ViewAnswer>(viewRequest, { uri, view: "board", board: "A" });
  expect(second.version).toBe(2);
  expect(JSON.stringify(second)).toContain("Rigging sockets");
  expect(JSON.stringify(second)).not.toContain("segment");
});

it("says why there is nothing to show, and refuses what is no view", async () => {
  const { connection } = await opened("wayfile 1\n");
  expect(await connection.sendRequest(viewRequest, { uri, view: "board" })).toMatchObject({
    nothing: "There is no installation in this file.",
  });
  await expect(connection.sendRequest(viewRequest, { uri, view: "oil painting" })).rejects.toThrow("is not a view");
  await expect(connection.sendRequest(viewRequest, { view: "board" })).rejects.toThrow("address");
});

it("a fault in another file of the schedule stands against its paper, wherever the cursor is", async () => {
  const { connection, open, change } = await opened();
  const wharf = path.join(import.meta.dirname, "../../examples/heron-wharf");
  const [root, part] = ["boatyard.ways", "workshop.ways"].map((name) => {
    const file = path.join(wharf, name);
    return { uri: pathToFileURL(file).href, text: readFileSync(file, "utf8") };
  }) as [{ uri: string; text: string }, { uri: string; text: string }];
  await open(root.uri, root.text);
  await open(part.uri, part.text);
  const paper = async () =>
    JSON.stringify(
      (await connection.sendRequest<ViewAnswer>(viewRequest, { uri: root.uri, view: "inspection" })).content,
    );
  const sound = await paper();
  expect(sound).toContain("Electrical installation certificate");
  // The schedule of the board that is shown, and of no other.
  expect(sound.match(/Circuit details and test results/g)).toHaveLength(1);
  const spoilt = part.text.replace(/(main-switch +BS EN 60947-3) 100 A/, "$1 16 A");
  expect(spoilt).not.toBe(part.text);
  await change(part.uri, 2, [{ text: spoilt }]);
  expect(await paper()).toMatch(/No installation certificate can be given.*16 A/);
});
