/** Which tests came by which mutants and did not see them: none is run for the same one twice, after a new start either. */
import { appendFileSync, existsSync, readFileSync } from "node:fs";
import type { Candidate } from "./batches.ts";
import type { Passed } from "./wish.ts";

export class PassedBy {
  readonly #path: string;
  readonly #known = new Set<string>();

  constructor(path: string) {
    this.#path = path;
    const lines = existsSync(path) ? readFileSync(path, "utf8").split("\n").slice(0, -1) : [];
    for (const line of lines) this.#note(JSON.parse(line) as Passed);
  }

  has(number: number, { file, test }: Pick<Candidate, "file" | "test">): boolean {
    return this.#known.has(keyFor(number, file, test));
  }

  add(passed: Passed): void {
    this.#note(passed);
    appendFileSync(this.#path, `${JSON.stringify(passed)}\n`);
  }

  #note({ file, test, numbers }: Passed): void {
    for (const number of numbers) this.#known.add(keyFor(number, file, test));
  }
}

const keyFor = (number: number, file: string, test: string | undefined): string => `${number} ${file} ${test ?? ""}`;
