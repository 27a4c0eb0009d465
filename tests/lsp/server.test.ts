import { describe, expect, it } from "vitest";
import { pulling, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/a.ways";
const faulty = 'wayfile 1\ninstallation "A" {\n  stage nonsense\n}\n';

describe("a server over stdio", () => {
  it("pushes findings to an editor that does not pull, and takes them away with the file", async () => {
    const server = await startServer();
    await server.open(uri, faulty);
    const { diagnostics } = await server.push(uri, (list) => list.length > 0);
    expect(diagnostics[0]).toMatchObject({ source: "wayfile", code: "language/wrong-argument", severity: 1 });
    await server.connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
    await server.push(uri, (list) => list.length === 0);
    expect(await server.stop()).toBe(0);
  });

  it("answers an editor that pulls, and says when nothing has changed", async () => {
    const server = await startServer({ capabilities: pulling });
    await server.open(uri, faulty);
    const first = await server.pull(uri);
    expect(first.items?.map(({ code }) => code)).toEqual(["language/wrong-argument"]);
    expect(await server.pull(uri, first.resultId)).toEqual({ kind: "unchanged", resultId: first.resultId });
    await server.change(uri, 2, [
      { range: { start: { line: 2, character: 8 }, end: { line: 2, character: 16 } }, text: "design" },
    ]);
    expect(await server.pull(uri, first.resultId)).toMatchObject({ kind: "full", items: [] });
    expect(server.published).toEqual([]);
    expect(await server.stop()).toBe(0);
  });
});
