/**
 * What is left in memory of schedules that were checked and dropped, counted on a thread of its own: what the tests before
 * left behind, and lose while this one counts, is in another heap.
 */
import assert from "node:assert/strict";
import { queryObjects } from "node:v8";
import { parentPort } from "node:worker_threads";
import { WayStudy } from "../../server/circuit/way.ts";
import { Engine } from "../../server/model/engine.ts";
import { SharedParts } from "../../server/model/shared-parts.ts";
import { Facts } from "../../server/model/values.ts";
import { Workspace } from "../../server/workspace/workspace.ts";
import { changedZe, faulty, found, name, opened } from "./opened.ts";

type Count = Readonly<Record<string, number>>;

export interface Left {
  /** Living objects of each kind: before anything is checked, while one is, and after all were dropped. */
  readonly before: Count;
  readonly during: Count;
  readonly after: Count;
  /** Maps after one schedule was checked and dropped, and after three more. */
  readonly maps: readonly [number, number];
}

const kinds = { Workspace, Engine, SharedParts, Facts, WayStudy };

/** How many of each kind live, after all rubbish is gone. */
const living = (): Count =>
  Object.fromEntries(Object.entries(kinds).map(([kind, of]) => [kind, queryObjects(of, { format: "count" }) ?? 0]));

const maps = (): number => queryObjects(Map, { format: "count" }) ?? 0;

/** Checked, edited, checked again and looked at, and then let go of. */
function useOnce<T>(text: string, look: () => T): T {
  const workspace = opened(text);
  assert(found(workspace).length > 0);
  workspace.edit(name, 2, [changedZe(text)]);
  assert(found(workspace).length > 0);
  return look();
}

const nothing = (): void => {};

function left(): Left {
  const before = living();
  const during = useOnce(faulty(1), living);
  for (const seed of [2, 3]) useOnce(faulty(seed), nothing);
  const after = living();
  const odd = (round: number): string => faulty(4).replaceAll(/(?<=\bZs +)91/g, `9${round}`);
  useOnce(odd(0), nothing);
  const once = maps();
  for (let round = 1; round <= 3; round++) useOnce(odd(round), nothing);
  return { before, during, after, maps: [once, maps()] };
}

parentPort?.postMessage(left());
