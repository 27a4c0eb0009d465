/** What the runner of mutants and the tests that it runs have between them. */
import { join } from "node:path";

export interface Wish {
  /** The number of the one mutant that is not asleep. */
  readonly awake?: number;
  /** The folder into which each file of tests writes what it comes by. */
  readonly noteIn?: string;
  /** By file and test: the mutants with which a test that has passed is run again, each awake in its turn. */
  readonly again?: Readonly<Record<string, Readonly<Record<string, Again>>>>;
  /** Where the one that is awake is named with its most, and where it is added what each try came to. */
  readonly at?: string;
  readonly triedIn?: string;
}

/** Mutants that a test came by again, each awake in its turn, and passed nevertheless. */
export interface Passed {
  readonly file: string;
  readonly test: string;
  readonly numbers: readonly number[];
}

interface Again {
  readonly numbers: readonly number[];
  /** Milliseconds of the processor that it takes with all asleep. */
  readonly took: number;
}

/** Milliseconds of the processor after which a test that took so many before does not end. */
export const mostFor = (took: number): number => 3_000 + 20 * took;

export interface Killed {
  readonly number: number;
  readonly by: string;
}

/** Mutants that a test comes by; those outside of all tests, as modules are read, under an empty name. */
export interface Reached {
  readonly test: string;
  readonly mutants: readonly number[];
  /** Milliseconds of the processor, not of the clock: what else the machine does makes no test slow. */
  readonly took: number;
}

export const wishPath = (copy: string): string => join(copy, "wish.json");
