/**
 * Whether the tests would notice: a sample of mutants of the calculations, tables, checks and readings, each run against
 * the tests that could see it. `npm run mutants -- [--sample 25] [--seed 1] [--room calc] [--rounds 2] [--minutes 30]`.
 * It works on a copy of this folder. All are first tried against the nearest tests, then what is left against every test
 * that could see it; two rounds give the first alone. When its minutes are over it begins no other, and says what is left.
 * A survivor is killed by a test, or explained in `kept.ts`; `--only server/calc/ring.ts:40 --against tests/calc/ring` tries
 * the mutants of a line against the tests that were written for them.
 */
import { cpSync, globSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { createVitest, type TestSpecification, type Vitest } from "vitest/node";
import { random } from "../helpers/random.ts";
import { reasonFor } from "./kept.ts";
import { type Mutation, mutationsOf } from "./mutations.ts";
import { nearRounds, type Room, type Round, rooms, suitesFor } from "./suites.ts";

interface Mutant extends Mutation {
  readonly room: Room;
  /** From the top of the repository. */
  readonly file: string;
  readonly source: string;
}

const root = join(import.meta.dirname, "../..");
const copy = join(root, `.build/mutants${process.pid}`);

const { values } = parseArgs({
  options: {
    sample: { type: "string", default: "25" },
    seed: { type: "string", default: "1" },
    room: { type: "string", multiple: true, default: [...rooms] },
    skip: { type: "string", default: "0" },
    rounds: { type: "string", default: "9" },
    minutes: { type: "string", default: "600" },
    only: { type: "string", multiple: true },
    against: { type: "string", multiple: true },
  },
});

/** So many mutants of a room, the same for a seed. */
function sampleOf(room: Room, size: number): Mutant[] {
  const all = globSync(`server/${room}/**/*.ts`, { cwd: root })
    .sort()
    .flatMap((file) => {
      const source = readFileSync(join(root, file), "utf8");
      return mutationsOf(source).map((mutation): Mutant => ({ ...mutation, room, file, source }));
    });
  const next = random(Number(values.seed));
  if (values.only) return all.filter((mutant) => values.only?.includes(placeOf(mutant)));
  const order = all.map((mutant) => ({ mutant, at: next() })).sort((a, b) => a.at - b.at);
  return order.slice(Number(values.skip), Number(values.skip) + size).map(({ mutant }) => mutant);
}

function makeCopy(): void {
  rmSync(copy, { recursive: true, force: true });
  mkdirSync(copy, { recursive: true });
  for (const part of ["server", "grammar", "tests", "examples", "client", "package.json", "tsconfig.json", "README.md"])
    cpSync(join(root, part), join(copy, part), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
}

const placeOf = ({ source, start, file }: Mutant): string => `${file}:${source.slice(0, start).split("\n").length}`;

const lineOf = ({ source, start }: Mutant): string =>
  source
    .slice(source.lastIndexOf("\n", start) + 1)
    .split("\n", 1)[0]
    ?.trim() ?? "";

const described = (mutant: Mutant): string =>
  `${placeOf(mutant)}  ${mutant.source.slice(mutant.start, mutant.end)} → ${mutant.by || "(nothing)"}   in   ${lineOf(mutant)}`;

/** Files of tests that pass without any mutant, as far as they were asked, and those that do not and show nothing. */
const sound = new Set<string>();
const unsound = new Set<string>();

/** Whether a test sees the mutant: the first round in which any fails that passes without it is enough. */
async function isSeen(
  mutant: Mutant,
  vitest: Vitest,
  all: readonly TestSpecification[],
  rounds: { readonly from: number; readonly to: number },
): Promise<boolean> {
  const path = join(copy, mutant.file);
  const suites = values.against ? [{ parts: values.against }] : suitesFor(mutant.room, mutant.file);
  const concerns = ({ moduleId }: TestSpecification, { parts }: Round) =>
    parts.some((part) => relative(copy, moduleId).startsWith(part));
  const before = suites.slice(0, rounds.from).filter(({ named }) => named === undefined);
  const done = new Set(all.filter((one) => before.some((round) => concerns(one, round))));
  const put = (text: string) => {
    writeFileSync(path, text);
    vitest.invalidateFile(path);
  };
  const mutated = mutant.source.slice(0, mutant.start) + mutant.by + mutant.source.slice(mutant.end);
  try {
    put(mutated);
    for (const round of suites.slice(rounds.from, rounds.to)) {
      const { named } = round;
      const chosen = all.filter((one) => !done.has(one) && !unsound.has(one.moduleId) && concerns(one, round));
      if (chosen.length === 0) continue;
      if (named === undefined) for (const one of chosen) done.add(one);
      const failed = await failing(vitest, chosen, named);
      const unknown = failed.filter(({ moduleId }) => !sound.has(moduleId));
      if (unknown.length > 0) {
        put(mutant.source);
        const anyway = await failing(vitest, unknown, undefined);
        for (const { moduleId } of unknown)
          (anyway.some((one) => one.moduleId === moduleId) ? unsound : sound).add(moduleId);
        put(mutated);
      }
      if (failed.some(({ moduleId }) => sound.has(moduleId))) return true;
    }
    return false;
  } finally {
    put(mutant.source);
  }
}

/** Those of the files of tests that fail as things stand. */
async function failing(
  vitest: Vitest,
  chosen: readonly TestSpecification[],
  named: string | undefined,
): Promise<readonly TestSpecification[]> {
  if (named === undefined) vitest.resetGlobalTestNamePattern();
  else vitest.setGlobalTestNamePattern(named);
  const { testModules, unhandledErrors } = await vitest.runTestSpecifications([...chosen]);
  // What ran before is remembered there, too.
  const failed = new Set(testModules.filter((one) => !one.ok()).map((one) => one.moduleId));
  return unhandledErrors.length > 0 ? chosen : chosen.filter(({ moduleId }) => failed.has(moduleId));
}

makeCopy();
const vitest = await createVitest("test", {
  config: join(copy, "tests/vitest.config.ts"),
  root: copy,
  watch: false,
  maxWorkers: 1,
  bail: 1,
  reporters: [{}],
  silent: true,
});
const specifications = await vitest.globTestSpecifications();
const survivors: Mutant[] = [];
let killed = 0;
let explained = 0;
let left = 0;
const started = performance.now();
const isOver = (): boolean => performance.now() - started > Number(values.minutes) * 60_000;
const chosen = rooms.filter((one) => values.room.includes(one)).map((room) => sampleOf(room, Number(values.sample)));
// A mutant of each room by turns, so that a run that is cut short is spread over all of them.
const byTurns = Array.from({ length: Math.max(...chosen.map((ones) => ones.length)) }, (_, at) =>
  chosen.flatMap((ones) => ones[at] ?? []),
).flat();

async function tried(mutant: Mutant, rounds: { readonly from: number; readonly to: number }, fate: string) {
  const from = performance.now();
  const seen = await isSeen(mutant, vitest, specifications, rounds);
  const took = `${((performance.now() - from) / 1000).toFixed(0)} s`.padStart(6);
  console.log(`${(seen ? "killed" : fate).padEnd(9)}${took}  ${described(mutant)}`);
  if (seen) killed++;
  return seen;
}

const rounds = Number(values.rounds);
const unseen: Mutant[] = [];
for (const mutant of byTurns) {
  if (reasonFor(mutant.file, lineOf(mutant), mutant.by) !== undefined) explained++;
  else if (isOver()) left++;
  else if (!(await tried(mutant, { from: 0, to: Math.min(nearRounds, rounds) }, "unseen"))) unseen.push(mutant);
}
// What the nearest tests do not see is tried against all that could before it counts.
const open: Mutant[] = [];
for (const mutant of unseen) {
  if (isOver() || rounds <= nearRounds) open.push(mutant);
  else if (!(await tried(mutant, { from: nearRounds, to: rounds }, "SURVIVED"))) survivors.push(mutant);
}
for (const one of unsound) console.log(`shows nothing, since it fails without any mutant: ${relative(copy, one)}`);
await vitest.close();
const judged = killed + survivors.length;
console.log(
  `\n${killed} of ${judged} killed (${((100 * killed) / Math.max(1, judged)).toFixed(1)} %), ${explained} explained, ${open.length} not yet tried against all tests, ${left} not tried at all`,
);
for (const one of survivors) console.log(`  survived: ${described(one)}`);
for (const one of open) console.log(`  unseen by the nearest tests: ${described(one)}`);
process.exitCode = survivors.length > judged * 0.05 ? 1 : 0;
rmSync(copy, { recursive: true, force: true });
process.exit();
