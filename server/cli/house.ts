/** The settings of the repository that a file lies in: the nearest `.wayfile.json`, from its folder upwards. */
import { existsSync } from "node:fs";
import { dirname, relative, resolve, sep } from "node:path";
import { lookAt } from "../disk/read-now.ts";
import { type FoundSettings, nearestAbove } from "../disk/settings-file.ts";
import { type FatesOf, fatesIn, leavesOut } from "../settings/apply.ts";
import { readSettings } from "../settings/read.ts";
import { noSettings, type Settings, settingsFile } from "../settings/settings.ts";
import { exit } from "./exit.ts";
import { shownPath } from "./files.ts";
import type { Names } from "./names.ts";
import { sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export interface House {
  /** Of the settings. */
  readonly path: string;
  readonly folder: string;
  readonly text: string;
  readonly settings: Settings;
}

/** Where the settings for a file are found, and which hold for the run as a whole. */
export interface HouseRules {
  /** `name`: of the settings, as results name a file. */
  readonly of: (name: string) => { readonly name: string; readonly fates: FatesOf } | undefined;
  readonly run: Settings;
}

export class Houses {
  readonly #cwd: string;
  readonly #today: string;
  readonly #byFolder = new Map<string, House | undefined>();
  readonly #files = new Map<string, House>();
  readonly #failures: string[] = [];

  /** `today`: ISO 8601. */
  constructor(cwd: string, today: string) {
    this.#cwd = cwd;
    this.#today = today;
  }

  /** A sentence for each fault in settings that were met, with its place. */
  get failures(): readonly string[] {
    return this.#failures;
  }

  /** The settings for what lies in a folder. */
  in(folder: string): House | undefined {
    if (!this.#byFolder.has(folder)) this.#byFolder.set(folder, this.#found(folder));
    return this.#byFolder.get(folder);
  }

  /** What becomes of the findings of a file; nothing where there are no settings for it. */
  fatesOf(path: string): { readonly house: House; readonly fates: FatesOf } | undefined {
    const house = this.in(dirname(path));
    return house && { house, fates: fatesIn(house.settings, insideOf(house, path), this.#today) };
  }

  /** Whether a search passes a file or folder over. */
  leavesOut(path: string, isFolder: boolean): boolean {
    const house = this.in(dirname(path));
    return house !== undefined && leavesOut(house.settings)(`${insideOf(house, path)}${isFolder ? "/" : ""}`);
  }

  /** Whether there is any rule for what lies in a folder. */
  hasRules(folder: string): boolean {
    return this.in(folder) !== undefined;
  }

  #found(folder: string): House | undefined {
    const found = nearestAbove(folder, settingsFile, folder.startsWith(this.#cwd) ? this.#cwd : undefined);
    return found && this.#read(found);
  }

  #read({ path, read }: FoundSettings): House | undefined {
    const known = this.#files.get(path);
    if (known) return known;
    const shown = shownPath(this.#cwd, path);
    if ("failure" in read) {
      this.#failures.push(`“${shown}” cannot be read: ${read.failure}`);
      return undefined;
    }
    const { settings, problems } = readSettings(read.text);
    for (const { start, message } of problems) {
      this.#failures.push(`${shown}:${start.line + 1}:${start.character + 1}  ${message}`);
    }
    const house = { path, folder: dirname(path), text: read.text, settings };
    this.#files.set(path, house);
    return house;
  }
}

/** Which settings hold for each file of a run, and for the run itself: those of the folder it was asked for. */
export const rulesOf = (houses: Houses, { nameOf, pathOf }: Names, folder: string): HouseRules => ({
  of: (name) => {
    const rules = houses.fatesOf(pathOf(name));
    return rules && { fates: rules.fates, name: nameOf(rules.house.path) };
  },
  run: houses.in(folder)?.settings ?? noSettings,
});

/** The folder of the first path that was asked for. */
export function folderOf([first]: readonly string[], stdinPath: string | undefined, cwd: string): string {
  const named = first === "-" || first === undefined ? stdinPath : first;
  if (named === undefined) return cwd;
  const path = resolve(cwd, named);
  if (lookAt(path)?.isDirectory()) return path;
  return existsSync(dirname(path)) ? dirname(path) : cwd;
}

/** Settings that say something else than was meant would suppress something else: nothing is done by them. */
export function refuseSettings({ failures }: Houses, terminal: Terminal, done = "checked"): number {
  terminal.err(sentences([...failures, `The settings are to be put right first; nothing was ${done}.`]));
  return exit.failed;
}

const insideOf = ({ folder }: House, path: string): string => relative(folder, path).replaceAll(sep, "/");
