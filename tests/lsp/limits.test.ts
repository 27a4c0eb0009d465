/** Where the server stops, and that it says so. A document that is too large is in `busy.test.ts`. */
import { expect, it } from "vitest";
import { Diagnostics } from "../../server/lsp/diagnostics.ts";
import { mostFiles, Workspace } from "../../server/workspace/workspace.ts";
import { openSample } from "../helpers/cursor.ts";

it("looks into so many files of a folder and counts the rest", async () => {
  const read = new Set<string>();
  const workspace = new Workspace({
    read: async (path) => {
      read.add(path);
      return { text: "wayfile 1\n" };
    },
    resolve: (_, use) => use,
  });
  const paths = Array.from({ length: mostFiles + 3 }, (_, at) => `file:///many/${at}.ways`);
  expect(await workspace.index(Promise.resolve(paths))).toBe(3);
  expect(read.size).toBe(mostFiles);
  expect(workspace.knownPaths).toHaveLength(mostFiles);
});

it("sends so many findings of a kind and counts the rest, of each kind for itself", async () => {
  const { snapshot, workspace } = await openSample('wayfile 1\ninstallation "A" {\n  stage nonsense\n  nonsense\n}\n');
  const kinds = ["language/unknown-word", "language/wrong-argument"];
  const [word, choice] = kinds.map((kind) => snapshot.findings.find(({ check }) => check === kind));
  if (!word || !choice) throw new Error("The sample is not what it should be.");
  const most = 20_000;
  const many = [...Array.from({ length: most + 7 }, () => word), choice];
  const { items } = new Diagnostics(workspace, { fatesOf: () => undefined }).of(snapshot, many);
  expect(items).toHaveLength(most + 2);
  expect(items.filter(({ code }) => code === choice.check)).toHaveLength(1);
  expect(items.at(-1)).toMatchObject({ code: word.check, severity: 1, range: { start: { line: 0 } } });
  expect(items.at(-1)?.message).toMatch(/^7 more findings of this kind are not shown: put the first 20000 right/);
  const { items: few } = new Diagnostics(workspace, { fatesOf: () => undefined }).of(snapshot, many.slice(7));
  expect(few).toHaveLength(most + 1);
});
