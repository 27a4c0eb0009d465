/** The live view over the wire: what arrives is plain, of the board that was asked for, and of the newest text. */
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
