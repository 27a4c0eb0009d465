/** What is kept belongs to what it is about: nothing is left of a workspace that is dropped, and two share nothing. */
import { queryObjects } from "node:v8";
import { expect, test } from "vitest";
import { WayStudy } from "../../server/circuit/way.ts";
import { Engine } from "../../server/model/engine.ts";
import { SharedParts } from "../../server/model/shared-parts.ts";
import { Facts } from "../../server/model/values.ts";
import type { Edit } from "../../server/syntax/document.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { generate } from "../helpers/generate.ts";

const name = "file:///a.ways";

const opened = (text: string): Workspace => {
  const workspace = new Workspace({ read: async () => ({ failure: "there is none." }), resolve: (_, use) => use });
  workspace.open(name, 1, text);
  return workspace;
};

/** Some loops are far too high, by a figure that stands in no table. */
const faulty = (seed: number): string => generate({ ways: 30, seed }).replaceAll(/(?<=\bZs +)0(?=\.\d+ Ω)/g, "91");

const found = (workspace: Workspace): string[] =>
  workspace.snapshot(name)?.findings.map(({ check, message }) => `${check} ${message}`) ?? [];

const kinds = { Workspace, Engine, SharedParts, Facts, WayStudy };

/** How many of each kind live, after all rubbish is gone. */
const living = (): Record<string, number> =>
  Object.fromEntries(Object.entries(kinds).map(([kind, of]) => [kind, queryObjects(of, { format: "count" }) ?? 0]));

/** Checked, edited and checked again, and then let go of. */
function useOnce(text: string): number {
  const workspace = opened(text);
  const count = found(workspace).length;
  expect(queryObjects(WayStudy, { format: "count" })).toBeGreaterThan(0);
  workspace.edit(name, 2, [changedZe(text)]);
  return count + found(workspace).length;
}

function changedZe(text: string): Edit {
  const lines = text.split("\n");
  const line = lines.findIndex((one) => /^ +Ze /.test(one));
  const character = (lines[line] ?? "").search(/\d(?=\D*$)/);
  return { range: { start: { line, character }, end: { line, character: character + 1 } }, text: "9" };
}

test("nothing is left of a workspace that is dropped", () => {
  const before = living();
  for (let seed = 1; seed <= 3; seed++) expect(useOnce(faulty(seed))).toBeGreaterThan(0);
  expect(living()).toEqual(before);
});

test("however often schedules are checked, the published tables keep no more for it", () => {
  const odd = (round: number): string => faulty(4).replaceAll(/(?<=\bZs +)91/g, `9${round}`);
  useOnce(odd(0));
  const maps = queryObjects(Map, { format: "count" });
  for (let round = 1; round <= 3; round++) useOnce(odd(round));
  expect(queryObjects(Map, { format: "count" })).toBe(maps);
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
