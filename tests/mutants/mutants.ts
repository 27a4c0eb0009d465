/**
 * Whether the tests would notice: a sample of mutants of the calculations, tables, circuits, readings, boards and checks,
 * each run against the tests that come by it. `npm run mutants -- [--sample 25] [--seed 1] [--room calc] [--minutes 30] [--seconds 240]`;
 * several seeds are several samples of one run, and a room is any folder of `server/`.
 * It works on a copy of this folder in which all mutants of the sample sleep. The tests are run once to see which of them
 * comes by which mutant; then each test is run again for each mutant that it comes by, the quickest first, with that one
 * awake. What lives, or is passed as modules are read, is tried by itself against what else comes by it, from a fresh start,
 * for at most so many seconds of tests. Seconds and minutes are those of the processor. What came out is kept in `.build/mutants.json`, and a later run goes on from there.
 * A survivor is killed by a test, or explained in `equivalents.ts`; `--only server/calc/ring.ts:40 --against
 * tests/calc/ring` tries the mutants of a line, and `--only server/calc/ring.ts` those of a file, against the tests that
 * were written for them.
 */
import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { candidatesFor, togetherRounds, triesOf } from "./batches.ts";
import { reasonFor } from "./equivalents.ts";
import { Imports } from "./imports.ts";
import { type Fate, hash, type Passing, Results } from "./kept-results.ts";
import { woven } from "./mutations.ts";
import { PassedBy } from "./passed-by.ts";
import { again, Runner } from "./runner.ts";
import { described, keyOf, lineOf, mutantsAt, type Numbered, roomsOf, sampleOf, usualRooms } from "./sample.ts";

const root = join(import.meta.dirname, "../..");

const { values } = parseArgs({
  options: {
    sample: { type: "string", default: "25" },
    seed: { type: "string", multiple: true, default: ["1"] },
    room: { type: "string", multiple: true, default: usualRooms },
    minutes: { type: "string", default: "600" },
    seconds: { type: "string", default: "240" },
    /** Of tests that are run again together: the last takes most of the time. */
    rounds: { type: "string", default: String(togetherRounds.length) },
    /** Only those that put this in the place of a token: one kind over all files, `--by every --by some --sample 999`. */
    by: { type: "string", multiple: true },
    only: { type: "string", multiple: true },
    against: { type: "string", multiple: true },
    /** Of the process that starts this one again: where the copy is. */
    copy: { type: "string" },
  },
});

/** Begins anew as often as a mutant does not end. */
async function watchOver(): Promise<void> {
  const copy = join(root, `.build/mutants${process.pid}`);
  try {
    for (let code = again; code === again; process.exitCode = code) {
      const words = [...process.execArgv, import.meta.filename, ...process.argv.slice(2), "--copy", copy];
      const child = spawn(process.execPath, words, { stdio: "inherit" });
      code = await new Promise<number>((done) => child.on("exit", (status) => done(status ?? 1)));
    }
  } finally {
    rmSync(copy, { recursive: true, force: true });
  }
}

/** Seconds of the processor since the first start: how busy the machine is besides makes no run shorter. */
function spentSince(copy: string): () => number {
  const path = join(copy, "spent");
  const before = existsSync(path) ? Number(readFileSync(path, "utf8")) : 0;
  const spent = (): number => {
    const { user, system } = process.cpuUsage();
    return before + (user + system) / 1e6;
  };
  process.on("exit", () => writeFileSync(path, String(spent())));
  return spent;
}

function chosenMutants(): readonly Numbered[] {
  const size = Number(values.sample);
  const all = values.only
    ? mutantsAt(values.only, root)
    : values.seed.flatMap((seed) => {
        const chosen = roomsOf(root).filter((one) => values.room.includes(one));
        const samples = chosen.map((room) => sampleOf(room, root, { size, seed: Number(seed), by: values.by }));
        // A mutant of each room by turns, so that a run that is cut short is spread over all of them.
        return Array.from({ length: size }, (_, at) => samples.flatMap((ones) => ones[at] ?? [])).flat();
      });
  const byKey = new Map(all.map((mutant) => [keyOf(mutant), mutant]));
  return [...byKey.values()]
    .filter((mutant) => reasonFor(mutant.file, lineOf(mutant), mutant.by) === undefined)
    .map((mutant, number) => ({ ...mutant, number }));
}

/** A copy of the folder with the mutants in it, which stays what it is however the folder is edited meanwhile. */
function copied(copy: string): readonly Numbered[] {
  const chosen = join(copy, "chosen.json");
  if (existsSync(chosen)) return JSON.parse(readFileSync(chosen, "utf8")) as readonly Numbered[];
  const mutants = chosenMutants();
  mkdirSync(copy, { recursive: true });
  for (const part of ["server", "grammar", "tests", "examples", "client", "package.json", "tsconfig.json", "README.md"])
    cpSync(join(root, part), join(copy, part), { recursive: true });
  cpSync(join(import.meta.dirname, "forgetful.ts"), join(copy, "server/memo/memo.ts"));
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
  const files = Map.groupBy(mutants, ({ file }) => file);
  for (const [file, ones] of files) writeFileSync(join(copy, file), woven((ones[0] as Numbered).source, ones));
  writeFileSync(chosen, JSON.stringify(mutants));
  return mutants;
}

async function run(copy: string): Promise<void> {
  const mutants = copied(copy);
  const spent = spentSince(copy);
  const results = new Results(join(root, ".build/mutants.json"));
  const runner = await Runner.start(copy, {
    seconds: Number(values.seconds),
    against: values.against,
    rooms: [...new Set(mutants.map(({ room }) => room))],
  });
  const context = { imports: new Imports(), root: copy };
  const mutated = [...new Set(mutants.map(({ file }) => join(copy, file)))];
  const reads = (file: string) => mutated.some((one) => context.imports.distance(file, one) !== undefined);
  const passing = await runner.passing(results, hash(...mutants.map(keyOf)), reads);
  const tell = (mutant: Numbered, fate: Fate): void => {
    results.keepFate(keyOf(mutant), fate);
    const at = `${spent().toFixed(0)} s`.padStart(6);
    console.log(`${fate.fate.padEnd(9)}${at}  ${described(mutant)}${fate.by ? `   by   ${fate.by}` : ""}`);
  };
  const isOver = (): boolean => spent() > 60 * Number(values.minutes);
  const isKilled = (mutant: Numbered): boolean => results.fate(keyOf(mutant))?.fate === "killed";
  const passedBy = new PassedBy(join(copy, "passed"));
  for (const round of togetherRounds.slice(0, Number(values.rounds))) {
    const left = mutants.filter((mutant) => !isKilled(mutant));
    const tries = triesOf(left, passing, round, { ...context, passedBy });
    if (isOver() || tries.length === 0) continue;
    console.log(`${tries.length} tests are run again for ${left.length} mutants`);
    await runner.tryTogether(tries, (of) => {
      if ("by" in of) tell(mutants[of.number] as Numbered, { fate: "killed", by: of.by });
      else passedBy.add(of);
    });
  }
  for (const mutant of mutants.filter((one) => !isKilled(one))) {
    if (isOver()) break;
    const all = candidatesFor(mutant, passing, context);
    const candidates = all.filter((one) => !passedBy.has(mutant.number, one));
    const against = hash(...all.map(({ file }) => passing.get(file)?.of ?? ""), values.seconds);
    if (results.fate(keyOf(mutant))?.against === against) continue;
    const fate = await runner.fateOf(mutant, candidates, { isOver, tell: (one) => tell(mutant, one) });
    tell(mutant, { ...fate, against });
  }
  report(mutants, results, passing);
  process.exit();
}

function report(mutants: readonly Numbered[], results: Results, passing: ReadonlyMap<string, Passing>): void {
  const inTests = new Set([...passing.values()].flatMap(({ tests }) => tests.flatMap((test) => test.mutants)));
  const fates = mutants.map((mutant) => {
    const when = inTests.has(mutant.number) ? "inside tests" : "as modules are read";
    return { mutant, fate: results.fate(keyOf(mutant))?.fate, of: `${mutant.room}, ${when}` };
  });
  for (const wanted of ["survived", "open"] as const)
    for (const { mutant, fate } of fates) if (fate === wanted) console.log(`  ${wanted}: ${described(mutant)}`);
  console.log("");
  for (const [of, ones] of [...Map.groupBy(fates, ({ of }) => of)].toSorted())
    console.log(`  ${of.padEnd(30)} ${sharesOf(ones).words}`);
  const all = sharesOf(fates);
  console.log(`\n${all.words}`);
  process.exitCode = all.share < 95 ? 1 : 0;
}

function sharesOf(fates: readonly { readonly fate: Fate["fate"] | undefined }[]): { share: number; words: string } {
  const count = (wanted: Fate["fate"] | undefined): number => fates.filter(({ fate }) => fate === wanted).length;
  const [killed, survived, open] = [count("killed"), count("survived"), count("open")];
  // What no test saw so far counts as alive: a run that is cut short must not look better than a whole one.
  const tried = killed + survived + open;
  const share = (100 * killed) / Math.max(1, tried);
  const words = `${killed} of ${tried} killed (${share.toFixed(1)} %), ${open} of them not tried against all tests, ${count(undefined)} not tried at all`;
  return { share, words };
}

if (values.copy === undefined) await watchOver();
else await run(values.copy);
