/** What a file of tests is run with: one mutant awake, or all asleep and a note of which of them each test comes by. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach } from "vitest";
import type { Reached, Wish } from "./wish.ts";
import { wishPath } from "./wish.ts";

/** A mutant that is asked for as often as this in one test has made a loop without an end. */
const mostCalls = 100_000_000;

const wish = JSON.parse(readFileSync(wishPath(join(import.meta.dirname, "../..")), "utf8")) as Wish;
const reached = new Set<number>();
let calls = 0;

Object.assign(globalThis, {
  isMutant: (number: number): boolean => {
    if (wish.noteIn !== undefined) reached.add(number);
    if (number !== wish.awake) return false;
    if (++calls > mostCalls) throw new Error("a loop without an end");
    return true;
  },
});

const noted: Reached[] = [];
let file = "";

beforeEach(({ task }) => {
  calls = 0;
  file = task.file.filepath;
  note("");
});

afterEach(({ task }) => {
  const names = [task.name];
  for (let suite = task.suite; suite; suite = suite.suite) names.unshift(suite.name);
  note(names.join(" "));
});

afterAll(() => {
  if (wish.noteIn === undefined) return;
  note("");
  if (noted.length > 0) writeFileSync(`${wish.noteIn}/${file.replaceAll("/", "|")}.json`, JSON.stringify(noted));
});

/** Under the name of a test, or under none for what comes by outside of all. */
function note(test: string): void {
  if (reached.size > 0) noted.push({ test, mutants: [...reached] });
  reached.clear();
}
