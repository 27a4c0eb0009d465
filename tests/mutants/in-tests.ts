/** What a file of tests is run with: mutants awake one at a time, or all asleep and a note of which of them each test comes by. */
import { appendFileSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { afterAll, afterEach, beforeEach, TestRunner } from "vitest";
import type { Killed, Passed, Reached, Wish } from "./wish.ts";
import { mostFor, wishPath } from "./wish.ts";

/** So many times a mutant is asked for before it is looked whether it has made a loop without an end. */
const callsBetween = 10_000;

const copy = join(import.meta.dirname, "../..");
const wish = JSON.parse(readFileSync(wishPath(copy), "utf8")) as Wish;
const reached = new Set<number>();
let awake = wish.awake;
let calls = 0;
let most = Number.POSITIVE_INFINITY;

Object.assign(globalThis, {
  isMutant: (number: number): boolean => {
    if (wish.noteIn !== undefined) reached.add(number);
    if (number !== awake) return false;
    if (++calls % callsBetween === 0 && spent() > most) throw new Error("a loop without an end");
    return true;
  },
});

const epoch = globalThis as { mutantsEpoch?: number };

/** What is kept from before is worked out anew. */
function forget(): void {
  epoch.mutantsEpoch = (epoch.mutantsEpoch ?? 0) + 1;
}

const noted: Reached[] = [];
let file = "";
let since = process.threadCpuUsage();

/** Milliseconds of the processor since it was last begun to count. */
function spent(): number {
  const { user, system } = process.threadCpuUsage(since);
  return (user + system) / 1000;
}

beforeEach(({ task }) => {
  calls = 0;
  forget();
  file = task.file.filepath;
  note("");
});

afterEach(async ({ task }) => {
  const names = [task.name];
  for (let suite = task.suite; suite; suite = suite.suite) names.unshift(suite.name);
  const name = names.join(" > ");
  note(name);
  const path = relative(copy, task.file.filepath);
  const again = wish.again?.[path]?.[name];
  if (task.result?.state === "fail" || !again) return;
  most = mostFor(again.took);
  const passed = await runAgain(TestRunner.getTestFn(task), again.numbers, `${path} ${name}`);
  most = Number.POSITIVE_INFINITY;
  if (passed.length > 0) tellOf({ file: path, test: name, numbers: passed });
});

afterAll(() => {
  if (wish.noteIn === undefined) return;
  note("");
  if (noted.length > 0) writeFileSync(`${wish.noteIn}/${file.replaceAll("/", "|")}.json`, JSON.stringify(noted));
});

/** Under the name of a test, or under none for what comes by outside of all. */
function note(test: string): void {
  if (reached.size > 0) noted.push({ test, mutants: [...reached], took: spent() });
  reached.clear();
  since = process.threadCpuUsage();
}

/** What earlier files of tests in this thread have killed. */
const known = globalThis as unknown as { killedMutants?: Set<number> };

/** Gives those that it came by again without seeing them. */
async function runAgain(run: () => unknown, numbers: readonly number[], by: string): Promise<readonly number[]> {
  known.killedMutants ??= new Set();
  const passed: number[] = [];
  for (const number of numbers) {
    if (known.killedMutants.has(number)) continue;
    if (await passes(run, number)) {
      // What is kept beside the test from its first time shows nothing of a mutant.
      if (calls > 0) passed.push(number);
      continue;
    }
    // What fails a second time with all asleep cannot be run twice, or keeps what a mutant has left.
    if (!(await passes(run, undefined))) return [];
    known.killedMutants.add(number);
    tellOf({ number, by });
  }
  return passed;
}

function tellOf(what: Killed | Passed): void {
  if (wish.triedIn) appendFileSync(wish.triedIn, `${JSON.stringify(what)}\n`);
}

async function passes(run: () => unknown, number: number | undefined): Promise<boolean> {
  if (wish.at) writeFileSync(wish.at, number === undefined ? "" : `${number} ${most}`);
  awake = number;
  calls = 0;
  forget();
  since = process.threadCpuUsage();
  try {
    await run();
    return true;
  } catch {
    return false;
  } finally {
    awake = undefined;
    if (wish.at) writeFileSync(wish.at, "");
  }
}
