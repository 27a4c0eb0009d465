/** A `use` over the wire: the server refuses, answers all else meanwhile, and ends when it is told to. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, afterEach, expect, it } from "vitest";
import { pulling, type Server, startServer } from "../helpers/server.ts";
import { refusals, strangeFolder, using, welcome } from "../helpers/strange-files.ts";

const folder = strangeFolder();
afterAll(() => folder.remove());
let server: Server | undefined;
afterEach(() => server?.kill());

const uriOf = (name: string): string => pathToFileURL(join(folder.path, name)).href;

it("is answered whatever it names, and the process ends in good order", async () => {
  server = await startServer({ capabilities: pulling, folder: pathToFileURL(folder.path).href });
  for (const [index, [use, reason]] of refusals.entries()) {
    const uri = uriOf(`main-${index}.ways`);
    await server.open(uri, using(use));
    const { items = [] } = await server.pull(uri);
    expect(items.map(({ message }) => message)).toEqual([
      `“${use}” cannot be used: ${reason} What it defines is not known here.`,
    ]);
    expect(items[0]?.range.start.line).toBe(1);
  }
  for (const [index, use] of welcome.entries()) {
    const uri = uriOf(`good-${index}.ways`);
    await server.open(uri, using(use));
    expect((await server.pull(uri)).items).toEqual([]);
  }
  expect(await server.stop()).toBe(0);
});

it("reaches the folder of a document that was opened without one", async () => {
  server = await startServer({ capabilities: pulling });
  await server.open(uriOf("main.ways"), using("meters.ways"));
  expect((await server.pull(uriOf("main.ways"))).items).toEqual([]);
  await server.open(uriOf("other.ways"), using("../secret/other.ways"));
  expect((await server.pull(uriOf("other.ways"))).items).toHaveLength(1);
});

it("reads a file that was made of other bytes since as it is now", async () => {
  writeFileSync(join(folder.path, "used.ways"), Buffer.from("# caf\xe9\n", "latin1"));
  server = await startServer({ capabilities: pulling, folder: pathToFileURL(folder.path).href });
  await server.open(uriOf("main.ways"), using("used.ways"));
  expect((await server.pull(uriOf("main.ways"))).items).toHaveLength(1);
  writeFileSync(join(folder.path, "used.ways"), "wayfile 1\n# café\n");
  await server.connection.sendNotification("workspace/didChangeWatchedFiles", {
    changes: [{ uri: uriOf("used.ways"), type: 2 }],
  });
  expect((await server.pull(uriOf("main.ways"))).items).toEqual([]);
});
