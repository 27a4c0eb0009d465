/**
 * Whether the tests would notice: a sample of mutants of the calculations, tables, checks and readings, each run against
 * the tests that could see it. `npm run mutants -- [--sample 25] [--seed 1] [--room calc] [--rounds 2]`. It works on a
 * copy of this folder. Fewer rounds are quick, and give what the nearest tests see alone. A survivor is killed by a
 * test, or explained in `kept.ts`.
 */
import { cpSync, globSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { createVitest, type TestSpecification, type Vitest } from "vitest/node";
import { random } from "../helpers/random.ts";
import { reasonFor } from "./kept.ts";
import { type Mutation, mutationsOf } from "./mutations.ts";
import { type Room, rooms, suitesFor } from "./suites.ts";

interface Mutant extends Mutation {
  readonly room: Room;
  /** From the top of the repository. */
  readonly file: string;
  readonly source: string;
}

const root = join(import.meta.dirname, "../..");
const copy = join(root, ".build/mutants");

const { values } = parseArgs({
  options: {
    sample: { type: "string", default: "25" },
    seed: { type: "string", default: "1" },
    room: { type: "string", multiple: true, default: [...rooms] },
    skip: { type: "string", default: "0" },
    rounds: { type: "string", default: "9" },
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

/** The files of tests that fail with a mutant in place: those of the first round in which any does. */
async function failing(
  mutant: Mutant,
  vitest: Vitest,
  suite: readonly TestSpecification[],
): Promise<readonly string[]> {
  const path = join(copy, mutant.file);
  const done = new Set<TestSpecification>();
  try {
    writeFileSync(path, mutant.source.slice(0, mutant.start) + mutant.by + mutant.source.slice(mutant.end));
    vitest.invalidateFile(path);
    for (const { parts, named } of suitesFor(mutant.room, mutant.file).slice(0, Number(values.rounds))) {
      const chosen = suite.filter(
        (one) => !done.has(one) && parts.some((part) => relative(copy, one.moduleId).startsWith(part)),
      );
      if (chosen.length === 0) continue;
      if (named === undefined) {
        for (const one of chosen) done.add(one);
        vitest.resetGlobalTestNamePattern();
      } else vitest.setGlobalTestNamePattern(named);
      const { testModules, unhandledErrors } = await vitest.runTestSpecifications(chosen);
      // What ran before is remembered there, too.
      const ids = new Set(chosen.map(({ moduleId }) => moduleId));
      const failed = testModules.filter((one) => ids.has(one.moduleId) && !one.ok()).map((one) => one.moduleId);
      if (unhandledErrors.length > 0 || failed.length > 0) return failed.length > 0 ? failed : ["none by name"];
    }
    return [];
  } finally {
    writeFileSync(path, mutant.source);
    vitest.invalidateFile(path);
  }
}

/** Nothing is shown by tests that fail anyway. */
async function soundSuite(room: Room, vitest: Vitest, all: readonly TestSpecification[]) {
  const [first] = sampleOf(room, 1);
  let suite = all;
  for (;;) {
    const failed = first ? await failing({ ...first, start: 0, end: 0, by: "" }, vitest, suite) : [];
    if (failed.length === 0) return suite;
    console.log(`left out, since it fails without any mutant: ${failed.map((one) => relative(copy, one)).join(", ")}`);
    suite = suite.filter(({ moduleId }) => !failed.includes(moduleId));
  }
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
for (const room of rooms.filter((one) => values.room.includes(one))) {
  const suite = await soundSuite(room, vitest, specifications);
  for (const mutant of sampleOf(room, Number(values.sample))) {
    const reason = reasonFor(mutant.file, lineOf(mutant), mutant.by);
    if (reason !== undefined) {
      explained++;
      continue;
    }
    const { user, system } = process.cpuUsage();
    if ((await failing(mutant, vitest, suite)).length > 0) killed++;
    else survivors.push(mutant);
    const spent = process.cpuUsage({ user, system });
    const fate = survivors.at(-1) === mutant ? "SURVIVED" : "killed";
    console.log(
      `${fate.padEnd(9)} ${((spent.user + spent.system) / 1e6).toFixed(1).padStart(5)} s  ${described(mutant)}`,
    );
  }
}
await vitest.close();
const tried = killed + survivors.length;
console.log(
  `\n${killed} of ${tried} killed (${((100 * killed) / Math.max(1, tried)).toFixed(1)} %), ${explained} explained`,
);
for (const one of survivors) console.log(`  survived: ${described(one)}`);
process.exitCode = survivors.length > tried * 0.05 ? 1 : 0;
process.exit();
