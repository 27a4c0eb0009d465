/** What earlier runs came to, so that a later one goes on from there. */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";

export interface Fate {
  /** `open`: no test saw it, and not all that come by it were run. */
  readonly fate: "killed" | "survived" | "open";
  /** The test that saw it, or what else ended it. */
  readonly by?: string;
  /** The tests it was tried against, where none saw it: others may. */
  readonly against?: string;
}

/** What a file of tests comes by, as far as it passes without any mutant. */
export interface Passing {
  /** The file of tests and the woven sources it was run with. */
  readonly of: string;
  /** Tests, each with its milliseconds and mutants. */
  readonly tests: readonly { readonly name: string; readonly took: number; readonly mutants: readonly number[] }[];
  /** What it comes by outside of its tests. */
  readonly outside: readonly number[];
}

interface Content {
  readonly fates: Record<string, Fate>;
  readonly passing: Record<string, Passing>;
}

export class Results {
  readonly #path: string;
  readonly #content: Content;

  constructor(path: string) {
    this.#path = path;
    this.#content = readOr(path, { fates: {}, passing: {} });
  }

  fate(key: string): Fate | undefined {
    return this.#content.fates[key];
  }

  passing(file: string): Passing | undefined {
    return this.#content.passing[file];
  }

  keepFate(key: string, fate: Fate): void {
    this.#content.fates[key] = fate;
    this.#write();
  }

  keepPassing(all: Readonly<Record<string, Passing>>): void {
    Object.assign(this.#content.passing, all);
    this.#write();
  }

  #write(): void {
    mkdirSync(dirname(this.#path), { recursive: true });
    writeFileSync(this.#path, JSON.stringify(this.#content));
  }
}

function readOr(path: string, empty: Content): Content {
  try {
    return JSON.parse(readFileSync(path, "utf8")) as Content;
  } catch {
    return empty;
  }
}

export const hash = (...texts: readonly string[]): string => {
  const sum = createHash("sha256");
  for (const text of texts) sum.update(text).update("\0");
  return sum.digest("hex").slice(0, 16);
};
