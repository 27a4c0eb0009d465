/** What is known of files that nobody has opened: findings, names, who uses whom and what feeds what. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type {
  CallHierarchyItem,
  WorkspaceDiagnosticReport,
  WorkspaceEdit,
  WorkspaceSymbol,
} from "vscode-languageserver";
import { pulling, type Server, startServer } from "../helpers/server.ts";

const meters = 'wayfile 1\ninstrument M1 "Multifunction tester" { due 2027-01-01 }\n';
const barn = `wayfile 1
use "meters.ways"

installation "Upper Barn" {
  standard  BS 7671:2018+A2:2022
  stage     design
  work      new

  supply {
    earthing  TN-S
    Ze        0.42 Ω
    Ipf       0.92 kA
  }

  board A "Main board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A

    way 1 feeder "To the loft" {
      device  BS 88-2 63 A gG
      cable   armoured 90 °C  line 16 mm²  cpc-by armour  cores 3
      route   tray  method E
      length  24 m
      feeds   B
    }
  }

  board B "Loft board" {
    fed-from     A
    main-switch  BS EN 60947-3 63 A

    way 1 radial "Hayloft lighting" {
      device  BS EN 60898 B6 6 kA
      lenght  12 m
    }
  }
}
`;

let folder = "";
let server: Server;
const uriOf = (name: string): string => pathToFileURL(join(folder, name)).href;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), "wayfile-workspace-"));
  writeFileSync(join(folder, "meters.ways"), meters);
  writeFileSync(join(folder, "barn.ways"), barn);
  server = await startServer({ capabilities: pulling, folder: pathToFileURL(folder).href });
});
afterEach(() => {
  server.kill();
  rmSync(folder, { recursive: true, force: true });
});

const pullAll = (previousResultIds: readonly object[] = []) =>
  server.connection.sendRequest<WorkspaceDiagnosticReport>("workspace/diagnostic", { previousResultIds });

describe("files that are not open", () => {
  test("have their findings, and the next answer waits for a change", async () => {
    const { items } = await pullAll();
    const found = items.find(({ uri }) => uri === uriOf("barn.ways"));
    expect(found?.kind === "full" && found.items.map(({ code }) => code)).toContain("language/unknown-word");
    const ids = items.flatMap(({ uri, resultId }) => (resultId === undefined ? [] : [{ uri, value: resultId }]));
    let isAnswered = false;
    const next = pullAll(ids).then((report) => {
      isAnswered = true;
      return report;
    });
    // Whatever is asked afterwards is answered before it.
    await server.connection.sendRequest("workspace/symbol", { query: "barn" });
    expect(isAnswered).toBe(false);
    writeFileSync(join(folder, "barn.ways"), barn.replace("lenght", "length"));
    await server.connection.sendNotification("workspace/didChangeWatchedFiles", {
      changes: [{ uri: uriOf("barn.ways"), type: 2 }],
    });
    const changed = (await next).items.find(({ uri }) => uri === uriOf("barn.ways"));
    expect(changed?.kind === "full" && changed.items.map(({ code }) => code)).not.toContain("language/unknown-word");
  });

  test("lose their findings once they are closed, where only open files are checked", async () => {
    const settings = { wayfile: { check: { unopened: false } } };
    await server.connection.sendNotification("workspace/didChangeConfiguration", { settings });
    await server.open(uriOf("barn.ways"), barn);
    const codes = async () => (await server.pull(uriOf("barn.ways"))).items?.map(({ code }) => code) ?? [];
    expect(await codes()).toContain("language/unknown-word");
    await server.connection.sendNotification("textDocument/didClose", { textDocument: { uri: uriOf("barn.ways") } });
    const held = pullAll();
    expect(await codes()).toEqual([]);
    // What an editor is answered of a file that is not to be seen, it does not show: it takes it from here.
    expect((await held).items.map(({ uri, kind }) => [uri, kind])).toEqual([[uriOf("barn.ways"), "full"]]);
  });

  test("are found by the names in them", async () => {
    const found = await server.connection.sendRequest<WorkspaceSymbol[]>("workspace/symbol", { query: "hayl" });
    expect(found.map(({ name, containerName }) => [name, containerName])).toEqual([
      ["1 Hayloft lighting", "Upper Barn, B"],
    ]);
  });

  test("follow a file that is given another name", async () => {
    const files = [{ oldUri: uriOf("meters.ways"), newUri: uriOf("shared/testers.ways") }];
    const { changes } = await server.connection.sendRequest<WorkspaceEdit>("workspace/willRenameFiles", { files });
    expect(changes?.[uriOf("barn.ways")]?.map(({ newText }) => newText)).toEqual(['"shared/testers.ways"']);
    const moved = [{ oldUri: uriOf("barn.ways"), newUri: uriOf("farm/barn.ways") }];
    const own = await server.connection.sendRequest<WorkspaceEdit>("workspace/willRenameFiles", { files: moved });
    expect(own.changes?.[uriOf("barn.ways")]?.map(({ newText }) => newText)).toEqual(['"../meters.ways"']);
  });
});

test("a board is called by what feeds it, and calls what it feeds", async () => {
  const { connection } = server;
  await server.open(uriOf("barn.ways"), barn);
  const line = barn.split("\n").findIndex((one) => one.includes("feeds   B"));
  const [item] = await connection.sendRequest<CallHierarchyItem[]>("textDocument/prepareCallHierarchy", {
    textDocument: { uri: uriOf("barn.ways") },
    position: { line, character: 14 },
  });
  expect(item).toMatchObject({ name: "B", detail: "Loft board" });
  const incoming = await connection.sendRequest<{ from: CallHierarchyItem; fromRanges: object[] }[]>(
    "callHierarchy/incomingCalls",
    { item },
  );
  expect(incoming.map(({ from, fromRanges }) => [from.name, fromRanges.length])).toEqual([["A", 1]]);
  const outgoing = await connection.sendRequest<{ to: CallHierarchyItem }[]>("callHierarchy/outgoingCalls", {
    item: incoming[0]?.from,
  });
  expect(outgoing.map(({ to }) => to.name)).toEqual(["B"]);
});

test("a line has help for its arguments, and a lens says how a way stands", async () => {
  const { connection } = server;
  await server.open(uriOf("barn.ways"), barn);
  const line = barn.split("\n").findIndex((one) => one.includes("device  BS EN 60898"));
  const help = await connection.sendRequest<{ signatures: { label: string }[]; activeParameter: number }>(
    "textDocument/signatureHelp",
    { textDocument: { uri: uriOf("barn.ways") }, position: { line, character: 26 } },
  );
  expect(help.signatures[0]?.label).toMatch(/^device <standard> \[<B32>\]/);
  expect(help.activeParameter).toBe(1);
});
