/** A short run of the fuzzer with fixed seeds: `npm run fuzz` goes on from there. */
import { expect, it } from "vitest";
import { runCase } from "./case.ts";
import { kinds } from "./trials.ts";

/** Kinds of which one case is many steps. */
const slow: ReadonlySet<string> = new Set(["folder", "commands", "wire"]);

it.each(Object.keys(kinds))("%s of the first seeds", async (kind) => {
  const outcomes = [];
  for (let seed = 1; seed <= (slow.has(kind) ? 1 : 3); seed++) outcomes.push(await runCase(seed, kind));
  expect(outcomes.flatMap(({ seed, failure }) => (failure ? [{ seed, ...failure }] : []))).toEqual([]);
  expect(outcomes.every(({ tried }) => tried > 0)).toBe(true);
});
