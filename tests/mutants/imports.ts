/** How far a file of tests is from a source: by how many imports it comes to it. */
import { readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

export class Imports {
  readonly #direct = new Map<string, readonly string[]>();
  readonly #distances = new Map<string, ReadonlyMap<string, number>>();

  /** Steps from the one to the other; nothing where it does not lead there. */
  distance(from: string, to: string): number | undefined {
    let known = this.#distances.get(from);
    if (!known) {
      known = this.#all(from);
      this.#distances.set(from, known);
    }
    return known.get(to);
  }

  #all(from: string): ReadonlyMap<string, number> {
    const found = new Map([[from, 0]]);
    for (const [file, steps] of found)
      for (const next of this.#of(file)) if (!found.has(next)) found.set(next, steps + 1);
    return found;
  }

  #of(file: string): readonly string[] {
    let known = this.#direct.get(file);
    if (!known) {
      const text = file.endsWith(".ts") ? readFileSync(file, "utf8") : "";
      const paths = [...text.matchAll(/\b(?:from|import|import\()\s*"(\.[^"]+\.ts)"/g)];
      known = paths.map(([, path]) => resolve(join(dirname(file), path as string)));
      this.#direct.set(file, known);
    }
    return known;
  }
}
