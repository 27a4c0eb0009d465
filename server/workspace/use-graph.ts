/** Which files use which, and from which of them checking begins: the one look-up for the editor, the terminal and tests. */
import type { UseSummary } from "./uses.ts";

const noUses: UseSummary = { uses: [], hasInstallation: false };

export class UseGraph {
  readonly #files = new Map<string, UseSummary>();
  readonly #users = new Map<string, Set<string>>();

  get paths(): Iterable<string> {
    return this.#files.keys();
  }

  has(path: string): boolean {
    return this.#files.has(path);
  }

  get(path: string): UseSummary {
    return this.#files.get(path) ?? noUses;
  }

  set(path: string, summary: UseSummary): void {
    if (this.#files.has(path)) this.delete(path);
    this.#files.set(path, summary);
    for (const used of summary.uses) {
      const users = this.#users.get(used);
      if (users) users.add(path);
      else this.#users.set(used, new Set([path]));
    }
  }

  isUsed(path: string): boolean {
    return (this.#users.get(path)?.size ?? 0) > 0;
  }

  delete(path: string): void {
    for (const used of this.get(path).uses) this.#users.get(used)?.delete(path);
    this.#files.delete(path);
  }

  /**
   * The files a file is checked in: those that hold an installation, and those nobody else uses, of all from which it is
   * reached. A file that stands alone is checked in itself.
   */
  rootsOf(path: string): string[] {
    const among = new Set([path]);
    for (const one of among) for (const user of this.#users.get(one) ?? []) among.add(user);
    return this.#rootsAmong(among);
  }

  /** Where checking of all files begins. */
  get roots(): string[] {
    return this.#rootsAmong(new Set(this.#files.keys()));
  }

  /** Files that only use each other have no beginning among them: the first by name, which nothing reaches, becomes one. */
  #rootsAmong(among: ReadonlySet<string>): string[] {
    const reached = new Set<string>();
    const reach = (path: string): void => {
      if (reached.has(path)) return;
      reached.add(path);
      for (const used of this.get(path).uses) reach(used);
    };
    const sorted = [...among].sort();
    const roots = sorted.filter((path) => this.#isRoot(path));
    for (const root of roots) reach(root);
    for (const path of sorted) {
      if (reached.has(path)) continue;
      roots.push(path);
      reach(path);
    }
    return roots;
  }

  #isRoot(path: string): boolean {
    const users = this.#users.get(path);
    if (!users || users.size === 0 || (users.size === 1 && users.has(path))) return true;
    return this.get(path).hasInstallation;
  }
}
