/** The working of a circuit, asked for through the wire. */
import { afterEach, expect, it } from "vitest";
import { type WorkingAnswer, workingRequest } from "../../server/lsp/protocol.ts";
import { loft } from "../helpers/cursor.ts";
import { type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/loft.ways";
const running: Server[] = [];

async function opened(): Promise<Server> {
  const server = await startServer();
  running.push(server);
  await server.open(uri, loft);
  return server;
}

afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

const lineOf = (text: string): number => loft.split("\n").findIndex((line) => line.includes(text));

it("is of the way, the board or the installation, as the cursor stands", async () => {
  const { connection } = await opened();
  const at = (position?: object) => connection.sendRequest<WorkingAnswer>(workingRequest, { uri, position });
  const way = await at({ line: lineOf("Sign lighting"), character: 6 });
  expect(way.title).toBe("Working: Way A/5 “Sign lighting”, radial");
  expect(way.markdown).toContain("**Greatest Zs by the overcurrent device, hot: 7.28 Ω**");
  expect((await at({ line: lineOf("main-switch"), character: 6 })).title).toBe("Working: Board A “Loft board”");
  expect((await at()).title).toBe("Working: Wren Pier Sail Loft");
});

it("follows the text as it is typed", async () => {
  const { connection, change } = await opened();
  await change(uri, 2, [{ text: loft.replace("B6 6 kA 30 mA", "B10 6 kA 30 mA") }]);
  const position = { line: lineOf("Sign lighting"), character: 6 };
  const { markdown } = await connection.sendRequest<WorkingAnswer>(workingRequest, { uri, position });
  expect(markdown).toContain("hot: 4.37 Ω**");
});

it("is refused in a sentence where there is none", async () => {
  const { connection, open } = await opened();
  await open("file:///nowhere/empty.ways", "wayfile 1\n");
  const ask = (question: object) => connection.sendRequest(workingRequest, question);
  await expect(ask({ uri: "file:///nowhere/empty.ways" })).rejects.toThrow(/no installation/);
  await expect(ask({ uri: "file:///nowhere/none.ways" })).rejects.toThrow(/no installation/);
  await expect(ask({})).rejects.toThrow(/address/);
});
