/**
 * The editor and the terminal judge alike: whatever happens to the files of a folder, after every step the findings of
 * each file by the workspace, which keeps what it knows, are those of a program that has just been started.
 */
import { describe, expect, it } from "vitest";
import { random } from "../helpers/random.ts";
import { Files } from "./files.ts";
import { type Change, changesOf, startingFolder } from "./folder-changes.ts";
import { byTerminal, byWorkspace } from "./judgements.ts";

describe("findings by the workspace are those by the terminal", () => {
  it.each([11, 12, 13, 14, 15, 16])("after every step of the changes from seed %i", async (seed) => {
    const next = random(seed);
    const files = new Files(startingFolder);
    const done: Change["kind"][] = [];
    for (let step = 0; step < 24; step++) {
      const change = changesOf(files, next);
      done.push(change.kind);
      await change.make();
      const expected = byTerminal(files);
      for (const name of files.names) {
        const found = await byWorkspace(files, name);
        expect(found, `${name} after ${done.join(", ")}`).toEqual(expected.get(files.path(name)));
      }
    }
  });
});
