/** Reports of a schedule, asked for through the wire. */
import { afterEach, expect, it } from "vitest";
import { type ReportAnswer, reportRequest } from "../../server/lsp/protocol.ts";
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
  const at = (position?: object) =>
    connection.sendRequest<ReportAnswer>(reportRequest, { kind: "working", uri, position });
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
  const { markdown } = await connection.sendRequest<ReportAnswer>(reportRequest, { kind: "working", uri, position });
  expect(markdown).toContain("hot: 4.37 Ω**");
});

it("is refused in a sentence where there is none", async () => {
  const { connection, open } = await opened();
  await open("file:///nowhere/empty.ways", "wayfile 1\n");
  const ask = (question: object) => connection.sendRequest(reportRequest, question);
  await expect(ask({ kind: "working", uri: "file:///nowhere/empty.ways" })).rejects.toThrow(/no installation/);
  await expect(ask({ kind: "working", uri: "file:///nowhere/none.ways" })).rejects.toThrow(/no such schedule/);
  await expect(ask({})).rejects.toThrow(/address/);
  await expect(ask({ kind: "poem", uri })).rejects.toThrow(/not a report/);
  await expect(ask({ kind: "size", uri })).rejects.toThrow(/cursor in the way/);
  await expect(ask({ kind: "working", uri, of: "A/77" })).rejects.toThrow(/no way 77/);
});

it("can be asked for again by name, after the lines have moved", async () => {
  const { connection, change } = await opened();
  const position = { line: lineOf("Sign lighting"), character: 6 };
  const { of } = await connection.sendRequest<ReportAnswer>(reportRequest, { kind: "working", uri, position });
  expect(of).toBe("A/5");
  await change(uri, 2, [{ text: `# moved\n\n${loft}` }]);
  const again = await connection.sendRequest<ReportAnswer>(reportRequest, { kind: "working", uri, of });
  expect(again.title).toBe("Working: Way A/5 “Sign lighting”, radial");
});

it("is a summary, a size with its reasons, or what another edition would change", async () => {
  const { connection } = await opened();
  const position = { line: lineOf("Sign lighting"), character: 6 };
  const ask = (kind: string) => connection.sendRequest<ReportAnswer>(reportRequest, { kind, uri, position });
  expect((await ask("summary")).markdown).toContain("Before you sign");
  const size = await ask("size");
  expect(size.title).toBe("Size: Way A/5 “Sign lighting”");
  expect(size.markdown).toContain("Ruled out");
  expect((await ask("editions")).markdown).toContain("BS 7671:2018");
});
