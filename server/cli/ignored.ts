import { existsSync } from "node:fs";
import { basename, dirname, join, relative, sep } from "node:path";
import ignore, { type Ignore } from "ignore";
import { readBeside } from "../disk/read-now.ts";

/** The rules of one .gitignore, and the folder they count from. */
interface Layer {
  readonly folder: string;
  readonly rules: Ignore;
}

/** Never looked into, whatever a .gitignore says. */
const always: ReadonlySet<string> = new Set(["node_modules", ".git"]);

/** What git would leave out: every .gitignore from the top of the repository down, the nearest one having the last word. */
export class Ignored {
  readonly #layers = new Map<string, readonly Layer[]>();
  readonly #start: string;

  /** `start`: where the search begins. It was asked for, so what lies above cannot rule it out. */
  constructor(start: string) {
    this.#start = start;
    const above = this.#layersOf(dirname(start));
    if (decide(above, start, true)) this.#layers.set(dirname(start), []);
  }

  has(path: string, isFolder: boolean): boolean {
    return always.has(basename(path)) || decide(this.#layersOf(dirname(path)), path, isFolder);
  }

  /** The same for a file that was not reached folder by folder. */
  hasDeep(path: string): boolean {
    const parts = relative(this.#start, path).split(sep);
    if (parts[0] === "..") return false;
    return parts.some((_, index) =>
      this.has(join(this.#start, ...parts.slice(0, index + 1)), index < parts.length - 1),
    );
  }

  /** Whether there is any rule for what lies in a folder. */
  hasRules(folder: string): boolean {
    return this.#layersOf(folder).length > 0;
  }

  #layersOf(folder: string): readonly Layer[] {
    const before = this.#layers.get(folder);
    if (before) return before;
    const above = dirname(folder);
    const isTop = above === folder || existsSync(join(folder, ".git"));
    const layers = [...(isTop ? [] : this.#layersOf(above)), ...ownLayer(folder)];
    this.#layers.set(folder, layers);
    return layers;
  }
}

function ownLayer(folder: string): Layer[] {
  const read = readBeside(join(folder, ".gitignore"));
  return "failure" in read ? [] : [{ folder, rules: ignore().add(read.text) }];
}

function decide(layers: readonly Layer[], path: string, isFolder: boolean): boolean {
  for (const { folder, rules } of layers.toReversed()) {
    const inside = relative(folder, path).replaceAll(sep, "/");
    if (inside === "" || inside.startsWith("..")) continue;
    const { ignored, unignored } = rules.test(isFolder ? `${inside}/` : inside);
    if (ignored || unignored) return ignored;
  }
  return false;
}
