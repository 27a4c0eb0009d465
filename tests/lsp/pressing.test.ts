/** What is to be known of a folder waits for what a person looks at. */

import { expect, it } from "vitest";
import type { Connection } from "vscode-languageserver";
import { Checking } from "../../server/lsp/checking.ts";
import type { Runtime } from "../../server/lsp/runtime.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { generate } from "../helpers/generate.ts";

const path = "file:///a.ways";

function opened() {
  const reads: string[] = [];
  const workspace = new Workspace({
    read: async (one) => {
      reads.push(one);
      return { text: "wayfile 1\n" };
    },
    resolve: (_, use) => use,
  });
  let ticks = 0;
  const runtime = { soon: (run: () => void) => void setImmediate(run), now: () => (ticks += 5) } as Runtime;
  workspace.open(path, 1, generate({ ways: 96 }));
  return { workspace, reads, checking: new Checking({} as Connection, workspace, runtime) };
}

it("until there is something of it to show, and no longer", async () => {
  const { workspace, reads, checking } = opened();
  const first = checking.check(path, () => true, "ways");
  const indexed = workspace.index(Promise.resolve(["file:///b.ways"]), () => checking.firstShown());
  expect(await first).toBe("partly");
  expect(reads).toEqual([]);
  const rest = checking.check(path, () => true);
  await indexed;
  expect(reads).toEqual(["file:///b.ways"]);
  expect(workspace.snapshot(path)?.projects.every(({ known }) => known)).toBe(false);
  expect(await rest).toBe("ready");
});

it("and not at all where no file is open, or one was called off", async () => {
  const { workspace, reads, checking } = opened();
  await checking.firstShown();
  await checking.check(path, () => false);
  await workspace.index(Promise.resolve(["file:///b.ways"]), () => checking.firstShown());
  expect(reads).toEqual(["file:///b.ways"]);
});
