/** Which tests a mutant is run against, and in which order: the nearest and quickest first, since one that fails is enough. */
import { basename, dirname, join } from "node:path";
import type { Imports } from "./imports.ts";
import type { Passing } from "./kept-results.ts";
import type { Numbered } from "./sample.ts";

export interface Candidate {
  readonly file: string;
  /** Without one, all tests of the file. */
  readonly test: string | undefined;
  /** Milliseconds of the processor. */
  readonly took: number;
}

/** Seconds of tests that are run before it is looked whether any failed. */
const batchSeconds = [2, 8, 30, 60];

interface Context {
  readonly imports: Imports;
  /** Of the folder the tests are run in. */
  readonly root: string;
}

/** Every test that comes by a mutant; for one that is passed as modules are read, every file that reads it. */
export function candidatesFor(
  mutant: Numbered,
  passing: ReadonlyMap<string, Passing>,
  context: Context,
): readonly Candidate[] {
  const { imports, root } = context;
  const whole = (file: string, { tests }: Passing): Candidate => ({
    file,
    test: undefined,
    took: tests.reduce((sum, { took }) => sum + took, 0),
  });
  const byTest = [...passing].flatMap(([file, { tests }]): readonly Candidate[] =>
    tests
      .filter(({ mutants }) => mutants.includes(mutant.number))
      .map(({ name, took }) => ({ file, test: name, took })),
  );
  // Passed as modules are read: the first file that reads one is not the only one to see it.
  const reads = (file: string) => imports.distance(join(root, file), join(root, mutant.file)) !== undefined;
  const outside = [...passing]
    .filter(([file, of]) => of.outside.includes(mutant.number) || (byTest.length === 0 && reads(file)))
    .map(([file, of]) => whole(file, of));
  const byName = [...passing].flatMap(([file, { tests }]) =>
    tests.filter(({ name }) => isNamed(mutant, name)).map(({ name, took }) => ({ file, test: name, took })),
  );
  const cost = costFor(mutant, context);
  const ranked = (some: readonly Candidate[]) => some.toSorted((a, b) => cost(a) - cost(b));
  return [...byName, ...ranked(byTest), ...ranked(outside)];
}

/** A test that names the check the mutant is in. */
const isNamed = ({ room, file }: Numbered, name: string): boolean =>
  room === "rules" && name.includes(`${basename(dirname(file))}/${basename(file, ".ts")}`);

/** Tests of whole schedules and all that is found in them: they see what no test nearer by looks at. */
const wholeSchedules = /^tests\/(?:conformance\/|dangers|false-alarms|examples)/;

/** What a try costs against what it promises: time, more so the further the test is from the mutant. */
function costFor(mutant: Numbered, { imports, root }: Context): (candidate: Candidate) => number {
  const own = basename(mutant.file, ".ts");
  return ({ file, test, took }) =>
    (took + 1) *
    (file.startsWith(`tests/${mutant.room}/`) || wholeSchedules.test(file) ? 1 : 2) *
    (basename(file) === `${own}.test.ts` || (test !== undefined && isNamed(mutant, test)) ? 0.05 : 1) *
    (1 + (imports.distance(join(root, file), join(root, mutant.file)) ?? 20));
}

/** What is run at once: single tests by their names, whole files by themselves. */
export function batchesOf(candidates: readonly Candidate[]): readonly (readonly Candidate[])[] {
  const batches: Candidate[][] = [];
  let spent = Number.POSITIVE_INFINITY;
  for (const candidate of candidates) {
    const limit = 1000 * (batchSeconds[Math.min(batches.length, batchSeconds.length) - 1] ?? 0);
    const last = batches.at(-1);
    if (!last || spent + candidate.took > limit || (last[0]?.test === undefined) !== (candidate.test === undefined)) {
      batches.push([candidate]);
      spent = candidate.took;
    } else {
      last.push(candidate);
      spent += candidate.took;
    }
  }
  return batches;
}

/**
 * Of the tests that come by a mutant: so many of those that promise most for what they cost, each of at most so many
 * milliseconds, and so many in all, without those that have passed it before. The best of each file come before the second best of any: tests of one file are alike.
 * The last is for the few that are left, against all that come by them: each test is then run once besides for all of them,
 * and no module is read anew for any.
 */
export const togetherRounds = [
  { tests: 10, each: 1_000, all: 2_000 },
  { tests: 30, each: 1_000, all: 5_000 },
  { tests: 1_000, each: 5_000, all: 20_000 },
  { tests: 100_000, each: 60_000, all: 300_000 },
] as const;

export function triesOf(
  mutants: readonly Numbered[],
  passing: ReadonlyMap<string, Passing>,
  { tests: most, each, all }: (typeof togetherRounds)[number],
  { passedBy, ...context }: Context & { readonly passedBy: { has(number: number, of: Candidate): boolean } },
): readonly { readonly candidate: Candidate; readonly numbers: readonly number[] }[] {
  const reaching = new Map<number, Candidate[]>();
  const byTest = new Map<Candidate, number[]>();
  for (const [file, { tests }] of passing)
    for (const { name, took, mutants: reached } of tests) {
      if (took > each) continue;
      const candidate: Candidate = { file, test: name, took };
      for (const number of reached) if (!passedBy.has(number, candidate)) push(reaching, number, candidate);
    }
  for (const mutant of mutants) {
    let spent = 0;
    const { imports, root } = context;
    const isNearest = (file: string) => imports.distance(join(root, file), join(root, mutant.file)) === 1;
    const order = spread(reaching.get(mutant.number) ?? [], { cost: costFor(mutant, context), isNearest });
    for (const candidate of order.slice(0, most)) {
      if (spent + candidate.took > all) break;
      spent += candidate.took;
      push(byTest, candidate, mutant.number);
    }
  }
  return [...byTest].map(([candidate, numbers]) => ({ candidate, numbers }));
}

/** So many tests of a file that imports the mutant's own come before the second of any other. */
const ofTheNearest = 10;

/** By cost, but the cheapest of each file first, then the second of each; of the nearest files more at a time. */
function spread(
  candidates: readonly Candidate[],
  { cost, isNearest }: { cost(candidate: Candidate): number; isNearest(file: string): boolean },
): readonly Candidate[] {
  const costs = candidates
    .map((candidate) => ({ candidate, cost: cost(candidate) }))
    .toSorted((a, b) => a.cost - b.cost);
  const before = new Map<string, number>();
  return costs
    .map(({ candidate }) => {
      const count = before.get(candidate.file) ?? 0;
      before.set(candidate.file, count + 1);
      return { candidate, turn: isNearest(candidate.file) ? Math.floor(count / ofTheNearest) : count };
    })
    .toSorted((a, b) => a.turn - b.turn)
    .map(({ candidate }) => candidate);
}

function push<K, V>(of: Map<K, V[]>, key: K, value: V): void {
  const known = of.get(key);
  if (known) known.push(value);
  else of.set(key, [value]);
}
