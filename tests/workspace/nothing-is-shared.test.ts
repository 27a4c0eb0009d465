/** What is kept belongs to what it is about: nothing is left of a workspace that is dropped, and two share nothing. */
import { once } from "node:events";
import { Worker } from "node:worker_threads";
import { expect, test } from "vitest";
import type { Workspace } from "../../server/workspace/workspace.ts";
import { changedZe, faulty, found, name, opened } from "./opened.ts";
import type { Left } from "./what-is-left.ts";

test("nothing is left of workspaces that are dropped, and the published tables keep no more for what was checked", async () => {
  const worker = new Worker(new URL("what-is-left.ts", import.meta.url));
  // What the thread throws ends this with its reason.
  const [left]: Left[] = await once(worker, "message");
  if (!left) throw new Error("The thread counted nothing.");
  for (const [kind, count] of Object.entries(left.during)) expect(count, kind).toBeGreaterThan(left.before[kind] ?? 0);
  expect(left.after).toEqual(left.before);
  expect(left.maps[1]).toBe(left.maps[0]);
});

test("an edit in one workspace is nothing to another of the same text", () => {
  const text = faulty(5);
  const [one, other] = [opened(text), opened(text)];
  const before = found(other);
  expect(before.length).toBeGreaterThan(0);
  expect(found(one)).toEqual(before);
  one.edit(name, 2, [changedZe(text)]);
  const edited = found(one);
  expect(found(other)).toEqual(before);
  other.edit(name, 2, [changedZe(text)]);
  expect(found(other)).toEqual(edited);
  const partsOf = (workspace: Workspace) =>
    workspace.snapshot(name)?.installations.flatMap(({ boards }) => boards.map(({ context: { parts } }) => parts)) ??
    [];
  const [mine, theirs] = [partsOf(one), partsOf(other)];
  expect(mine.length).toBeGreaterThan(0);
  for (const { questions, alike } of mine) {
    expect(theirs.every((parts) => parts.questions !== questions && parts.alike !== alike)).toBe(true);
  }
});
