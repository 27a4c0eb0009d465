/** The proposal of a device and a cable, asked for through the wire. */
import { afterEach, expect, it } from "vitest";
import type { CodeAction } from "vscode-languageserver/node";
import { inSetting } from "../helpers/sample.ts";
import { type Server, startServer } from "../helpers/server.ts";

const uri = "file:///nowhere/kiln.ways";
const text = inSetting(`way 1 radial "Kiln" {
  route   clipped method C
  length  12 m
  Ib      26 A
  serves  heating
}
way 2 spare`).text;
const running: Server[] = [];

afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

it("is an action of its own kind, offered where the cursor is in a way that lacks them", async () => {
  const codeAction = { codeActionLiteralSupport: { codeActionKind: { valueSet: [] } } };
  const server = await startServer({ capabilities: { textDocument: { codeAction } } });
  running.push(server);
  await server.open(uri, text);
  const actionsAt = (word: string): Promise<CodeAction[]> => {
    const place = { line: text.split("\n").findIndex((line) => line.includes(word)), character: 2 };
    return server.connection.sendRequest("textDocument/codeAction", {
      textDocument: { uri },
      range: { start: place, end: place },
      context: { diagnostics: [], only: ["refactor.rewrite.proposal"] },
    });
  };
  const [action, ...others] = await actionsAt("length");
  expect(others).toEqual([]);
  expect(action?.title).toBe("Propose device and cable for this way");
  const written = action?.edit?.changes?.[uri]?.map(({ newText }) => newText).join("");
  expect(written).toMatch(/device +BS EN 60898 B32 6 kA\n *cable +flat-twin +line 4 mm² +cpc 1\.5 mm²\n/);
  expect(await actionsAt("way 2")).toEqual([]);
});
