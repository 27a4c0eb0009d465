/** Runs tests with one mutant awake, or with all asleep to see what they come by. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { createVitest, type TestModule, type TestSpecification, type Vitest } from "vitest/node";
import { batchesOf, type Candidate } from "./batches.ts";
import { type Fate, hash, type Passing, type Results } from "./kept-results.ts";
import type { Numbered } from "./sample.ts";
import { type Killed, type Passed, type Reached, type Wish, wishPath } from "./wish.ts";

/** The code with which the process ends after a mutant that does not end. */
export const again = 75;
const filesAtOnce = 30;
/**
 * Tests that start programs see what is built, where no mutant is; others look at texts or sources alone. Those of the
 * workspace compare one run with another, and both have the mutant. Those of papers set what reports say, and those that
 * only look whether a feature falls over take as long as hundreds of others. For a mutant of their own room they count.
 */
const elsewhere =
  /^tests\/(?:build|bundles|cli|disk|editor|exports|features\/(?:fuzz|hostile|offers)|format|fuzz|git|grammar|library|lsp|merge|papers|readme|tidy|words|workspace)\b/;

async function startVitest(copy: string): Promise<Vitest> {
  return await createVitest("test", {
    config: join(copy, "tests/vitest.config.ts"),
    root: copy,
    watch: false,
    // In this process, so that they end with it.
    pool: "threads",
    maxWorkers: 1,
    bail: 0,
    // A test is run again for each mutant behind it.
    hookTimeout: 3_600_000,
    setupFiles: [join(copy, "tests/helpers/seed.ts"), join(copy, "tests/mutants/in-tests.ts")],
    reporters: [{}],
    silent: true,
  });
}

interface Limits {
  /** Of tests that a mutant is tried against. */
  readonly seconds: number;
  /** How the paths of the only files of tests begin. */
  readonly against: readonly string[] | undefined;
  /** The rooms the mutants are in. */
  readonly rooms: readonly string[];
}

export class Runner {
  readonly #copy: string;
  readonly #vitest: Vitest;
  readonly #limits: Limits;
  readonly #passes = new Map<string, boolean>();
  #known: ReadonlyMap<string, ReadonlySet<string>> = new Map();

  private constructor(copy: string, vitest: Vitest, limits: Limits) {
    this.#copy = copy;
    this.#vitest = vitest;
    this.#limits = limits;
  }

  static async start(copy: string, limits: Limits): Promise<Runner> {
    return new Runner(copy, await startVitest(copy), limits);
  }

  /** Which test comes by which mutant, of those that pass as things stand; a file that reads none of theirs is left out. */
  async passing(
    results: Results,
    sources: string,
    reads: (file: string) => boolean,
  ): Promise<ReadonlyMap<string, Passing>> {
    const all = (await this.#vitest.globTestSpecifications())
      .map((specification) => ({ specification, file: relative(this.#copy, specification.moduleId) }))
      .filter(
        ({ file }) =>
          (this.#limits.against?.some((one) => file.startsWith(one)) ?? this.#isOfUse(file)) &&
          reads(join(this.#copy, file)),
      );
    const of = (file: string) => hash(sources, readFileSync(join(this.#copy, file), "utf8"));
    const stale = all.filter(({ file }) => results.passing(file)?.of !== of(file));
    if (stale.length > 0) console.log(`${stale.length} files of tests are run to see what they come by`);
    // Some at a time, so that a run that is broken off has not run them for nothing.
    for (let at = 0; at < stale.length; at += filesAtOnce) {
      const some = stale.slice(at, at + filesAtOnce);
      const modules = await this.#noted(some.map(({ specification }) => specification));
      results.keepPassing(
        Object.fromEntries(some.map(({ file }) => [file, { of: of(file), ...this.#comesBy(file, modules.get(file)) }])),
      );
    }
    const passing = new Map(all.map(({ file }) => [file, results.passing(file) as Passing]));
    this.#known = new Map([...passing].map(([file, { tests }]) => [file, new Set(tests.map(({ name }) => name))]));
    return passing;
  }

  #isOfUse(file: string): boolean {
    return !elsewhere.test(file) || this.#limits.rooms.some((room) => file.startsWith(`tests/${room}/`));
  }

  async #noted(specifications: readonly TestSpecification[]): Promise<ReadonlyMap<string, TestModule>> {
    const folder = join(this.#copy, "noted");
    mkdirSync(folder, { recursive: true });
    this.#wish({ noteIn: folder });
    const { testModules } = await this.#vitest.runTestSpecifications([...specifications]);
    const errors = testModules.flatMap((one) => one.errors());
    if (errors.length === testModules.length) throw new Error(`No file of tests can be read: ${errors[0]?.message}`);
    return new Map(testModules.map((one) => [relative(this.#copy, one.moduleId), one]));
  }

  #comesBy(file: string, module: TestModule | undefined): Omit<Passing, "of"> {
    const folder = join(this.#copy, "noted");
    const name = `${join(this.#copy, file).replaceAll("/", "|")}.json`;
    const noted = readdirSync(folder).includes(name)
      ? (JSON.parse(readFileSync(join(folder, name), "utf8")) as Reached[])
      : [];
    const byTest = Map.groupBy(noted, ({ test }) => test);
    const mutantsOf = (test: string) => [...new Set((byTest.get(test) ?? []).flatMap(({ mutants }) => mutants))];
    const tests = [...(module?.children.allTests("passed") ?? [])].map((test) => {
      const name = test.fullName;
      const took = (byTest.get(name) ?? []).reduce((sum, one) => sum + one.took, 0);
      return { name, took, mutants: mutantsOf(name) };
    });
    return { tests, outside: mutantsOf("") };
  }

  #wish(wish: Wish): void {
    writeFileSync(wishPath(this.#copy), JSON.stringify(wish));
  }

  /**
   * Runs tests that come by mutants once more for each of them, so that nothing is read anew in between. Tells each that
   * is killed, and which tests passed over it. One that does not end ends the process, which begins again behind it.
   */
  async tryTogether(
    tries: readonly { readonly candidate: Candidate; readonly numbers: readonly number[] }[],
    tell: (of: Killed | Passed) => void,
  ): Promise<void> {
    const [at, triedIn] = [join(this.#copy, "at"), join(this.#copy, "tried")];
    writeFileSync(at, "");
    writeFileSync(triedIn, "");
    const byFile = Map.groupBy(tries, ({ candidate }) => candidate.file);
    const again = Object.fromEntries(
      [...byFile].map(([file, ones]) => [
        file,
        Object.fromEntries(
          ones.map(({ candidate, numbers }) => [candidate.test ?? "", { numbers, took: candidate.took }]),
        ),
      ]),
    );
    let told = 0;
    const tellNew = (): void => {
      const lines = readFileSync(triedIn, "utf8").split("\n").slice(0, -1);
      for (const line of lines.slice(told)) tell(JSON.parse(line) as Killed | Passed);
      told = lines.length;
    };
    const stop = endWhere(at, (number) => {
      tellNew();
      tell({ number, by: "it does not end" });
    });
    const look = setInterval(tellNew, 1_000);
    this.#wish({ again, at, triedIn });
    await this.#run(tries.map(({ candidate }) => candidate));
    clearInterval(look);
    stop();
    tellNew();
  }

  async fateOf(
    mutant: Numbered,
    candidates: readonly Candidate[],
    { isOver, tell }: { isOver(): boolean; tell(fate: Fate): void },
  ): Promise<Fate> {
    let left = 1000 * this.#limits.seconds;
    const within = candidates.filter(({ took }) => took <= left);
    for (const batch of batchesOf(within)) {
      if (left <= 0 || isOver()) return { fate: "open" };
      const took = batch.reduce((sum, one) => sum + one.took, 0);
      left -= took;
      const stop = endAfter(30 + (6 * took) / 1000, () => tell({ fate: "killed", by: "it does not end" }));
      const failed = await this.#failed(batch, mutant.number);
      let by: Candidate | undefined;
      for (const one of failed) if (!by && (await this.#kills(one, mutant.number))) by = one;
      stop();
      if (by) return { fate: "killed", by: `${by.file} ${by.test ?? ""}` };
    }
    return { fate: within.length === candidates.length ? "survived" : "open" };
  }

  /** Whether it fails by itself with the mutant awake, and passes by itself with all asleep. */
  async #kills(candidate: Candidate, awake: number): Promise<boolean> {
    const key = `${candidate.file} ${candidate.test}`;
    const passes = this.#passes.get(key) ?? (await this.#failed([candidate], undefined)).length === 0;
    this.#passes.set(key, passes);
    return passes && (await this.#failed([candidate], awake)).length > 0;
  }

  async #failed(batch: readonly Candidate[], awake: number | undefined): Promise<readonly Candidate[]> {
    this.#wish(awake === undefined ? {} : { awake });
    const files = new Set(batch.map(({ file }) => file));
    const testModules = await this.#run(batch);
    return testModules.flatMap((module): Candidate[] => {
      const file = relative(this.#copy, module.moduleId);
      if (!files.has(file)) return [];
      // One that fails anyway shows nothing.
      const failed = [...module.children.allTests("failed")]
        .map(({ fullName }) => fullName)
        .filter((one) => this.#known.get(file)?.has(one));
      if (module.errors().length > 0) return [{ file, test: undefined, took: 0 }];
      return failed.slice(0, 1).map((test) => ({ file, test, took: 0 }));
    });
  }

  async #run(batch: readonly Candidate[]): Promise<readonly TestModule[]> {
    const byFile = Map.groupBy(batch, ({ file }) => file);
    const all = await this.#vitest.globTestSpecifications();
    const chosen = all.flatMap(({ project, moduleId }) => {
      const own = byFile.get(relative(this.#copy, moduleId));
      if (!own) return [];
      const testNames = own.flatMap(({ test }) => test ?? []);
      const isWhole = own.some(({ test }) => test === undefined);
      return [project.createSpecification(moduleId, isWhole ? {} : { testNames: [...new Set(testNames)] })];
    });
    const { testModules } = await this.#vitest.runTestSpecifications(chosen);
    return testModules;
  }
}

/** Ends this process where it takes more seconds of the processor than that. */
function endAfter(seconds: number, before: () => void): () => void {
  const spent = process.cpuUsage();
  const look = setInterval(() => {
    const { user, system } = process.cpuUsage(spent);
    if ((user + system) / 1e6 < seconds) return;
    before();
    process.exit(again);
  }, 2_000);
  return () => clearInterval(look);
}

/** Ends this process where the same mutant has been awake for longer than it may, and a second besides. */
function endWhere(path: string, before: (number: number) => void): () => void {
  let now = "";
  let spent = process.cpuUsage();
  const look = setInterval(() => {
    const next = readFileSync(path, "utf8");
    const [number, most] = next.split(" ").map(Number);
    const { user, system } = process.cpuUsage(spent);
    if (next !== now || number === undefined || most === undefined) {
      now = next;
      spent = process.cpuUsage();
    } else if ((user + system) / 1000 > most + 1_000) {
      before(number);
      process.exit(again);
    }
  }, 1_000);
  return () => clearInterval(look);
}
