/**
 * Where schedules may be read from. A schedule can come from a stranger, and what it uses is shown in reports: so it
 * reaches only what a person opened or asked for, and the repository round it.
 */
import { existsSync, realpathSync } from "node:fs";
import { dirname, isAbsolute, join, relative, sep } from "node:path";

export class Grounds {
  /** As they were named, and as they are: a path is compared before the disk is touched, and after. */
  readonly #folders: Set<string>;
  /** Folders that were asked about and lie in them. */
  readonly #inside = new Set<string>();

  /** `folders`: those of other grounds, as they are. */
  constructor(folders: Iterable<string> = []) {
    this.#folders = new Set(folders);
  }

  get folders(): readonly string[] {
    return [...this.#folders];
  }

  /** All below a folder may be read, and all below the top of the repository it is in. */
  admit(folder: string): void {
    // Below a folder that is admitted nothing is added: of thousands of files, each names its folder.
    if (this.#folders.has(folder) || this.#inside.has(folder)) return;
    if (this.holds(folder) && this.holds(realPathOf(folder))) {
      this.#inside.add(folder);
      return;
    }
    for (const one of [folder, topOfRepository(folder)]) {
      this.#folders.add(one);
      this.#folders.add(realPathOf(one));
    }
  }

  holds(path: string): boolean {
    for (const folder of this.#folders) if (isWithin(folder, path)) return true;
    return false;
  }
}

function isWithin(folder: string, path: string): boolean {
  // Nearly every path lies below its folder as it is written, and leads nowhere else.
  if (path.startsWith(folder) && path[folder.length] === sep && !path.includes(".."))
    return path.length > folder.length + 1;
  const inside = relative(folder, path);
  return inside !== "" && inside !== ".." && !inside.startsWith(`..${sep}`) && !isAbsolute(inside);
}

/** The nearest folder above that holds `.git`; the folder itself where there is none. */
export function topOfRepository(folder: string): string {
  for (let at = folder; ; at = dirname(at)) {
    if (existsSync(join(at, ".git"))) return at;
    if (dirname(at) === at) return folder;
  }
}

/** The path without links; as it stands where nothing is there. */
export function realPathOf(path: string): string {
  try {
    return realpathSync.native(path);
  } catch {
    return path;
  }
}
