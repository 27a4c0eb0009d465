/** Which tests a mutant is run against, and in which order: the nearest and quickest first, since one that fails is enough. */
import { basename, dirname, join } from "node:path";
import type { Imports } from "./imports.ts";
import type { Passing } from "./kept-results.ts";
import type { Numbered } from "./sample.ts";

export interface Candidate {
  readonly file: string;
  /** Without one, all tests of the file. */
  readonly test: string | undefined;
  /** Milliseconds. */
  readonly took: number;
}

/** Seconds of tests that are run before it is looked whether any failed. */
const batchSeconds = [2, 8, 30, 60];

/** Every test that comes by a mutant; for one that is passed as modules are read, every file that reads it. */
export function candidatesFor(
  mutant: Numbered,
  passing: ReadonlyMap<string, Passing>,
  { imports, root }: { readonly imports: Imports; readonly root: string },
): readonly Candidate[] {
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
  const check = `${basename(dirname(mutant.file))}/${basename(mutant.file, ".ts")}`;
  const byName =
    mutant.room === "rules"
      ? [...passing].flatMap(([file, { tests }]) =>
          tests.filter(({ name }) => name.includes(check)).map(({ name, took }) => ({ file, test: name, took })),
        )
      : [];
  const rank = ({ file, took }: Candidate): number =>
    took *
    (file.startsWith(`tests/${mutant.room}/`) ? 1 : 2) *
    (1 + (imports.distance(join(root, file), join(root, mutant.file)) ?? 20));
  const ranked = (some: readonly Candidate[]) => some.toSorted((a, b) => rank(a) - rank(b));
  return [...byName, ...ranked(byTest), ...ranked(outside)];
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

/** Of the tests that come by a mutant: so many of the quickest, each of at most so many milliseconds, and so many in all. */
export const togetherRounds = [
  { tests: 3, each: 1_000, all: 2_000 },
  { tests: 30, each: 1_000, all: 5_000 },
  { tests: 1_000, each: 5_000, all: 20_000 },
] as const;

export function triesOf(
  mutants: readonly Numbered[],
  passing: ReadonlyMap<string, Passing>,
  { tests: most, each, all }: (typeof togetherRounds)[number],
): readonly { readonly candidate: Candidate; readonly numbers: readonly number[] }[] {
  const byTest = new Map<string, { readonly candidate: Candidate; readonly numbers: number[] }>();
  const quickest = [...passing]
    .flatMap(([file, { tests }]) =>
      tests.map(({ name, took, mutants: reached }) => ({ file, test: name, took, reached })),
    )
    .toSorted((a, b) => a.took - b.took);
  for (const { number } of mutants) {
    let count = 0;
    let spent = 0;
    for (const { reached, ...candidate } of quickest) {
      if (!reached.includes(number)) continue;
      if (count >= most || candidate.took > each || spent + candidate.took > all) break;
      count++;
      spent += candidate.took;
      const key = `${candidate.file} ${candidate.test}`;
      const found = byTest.get(key) ?? { candidate, numbers: [] };
      found.numbers.push(number);
      byTest.set(key, found);
    }
  }
  return [...byTest.values()];
}
