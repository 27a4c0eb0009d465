/** What a repository has agreed on for itself, in one file at its top: `.wayfile.json`. */
import type { Severity } from "../rules/frame/rule.ts";

export const settingsFile = ".wayfile.json";

/** Findings that are known and left, with the reason. They are counted and listed, never dropped. */
export interface Suppression {
  /** A check by its id, or a family of checks. */
  readonly check: string;
  readonly reason: string;
  /** Patterns as in a `.gitignore`, from the folder of the settings; every file where it is missing. */
  readonly files: readonly string[] | undefined;
  /** The last day it holds, ISO 8601. */
  readonly until: string | undefined;
  /** Where it stands in the settings, as an offset and as a line from zero. */
  readonly at: number;
  readonly line: number;
}

export interface Settings {
  readonly failLevel: Severity | undefined;
  readonly maxWarnings: number | undefined;
  /** Checks or families; all where it is missing. */
  readonly only: readonly string[] | undefined;
  readonly skip: readonly string[];
  /** What a search through folders passes over, as in a `.gitignore`. */
  readonly leaveOut: readonly string[];
  /** What the headings of tables from outside are of ours: `Loop L-E=Zs`. */
  readonly columns: readonly string[];
  readonly suppress: readonly Suppression[];
  /** Checks or families that weigh more here than by themselves. */
  readonly raise: ReadonlyMap<string, Severity>;
  /** The line of each that is stated, from zero. */
  readonly lines: ReadonlyMap<string, number>;
}

export const noSettings: Settings = {
  failLevel: undefined,
  maxWarnings: undefined,
  only: undefined,
  skip: [],
  leaveOut: [],
  columns: [],
  suppress: [],
  raise: new Map(),
  lines: new Map(),
};

/** What cannot be read, and a check that failed, are never left out: a report without them would pass for a clean one. */
const always: ReadonlySet<string> = new Set(["language", "check"]);

export const familyOf = (check: string): string => check.replace(/\/.*/, "");
export const isAlwaysShown = (check: string): boolean => always.has(familyOf(check));

/** Whether a check is one of these, or of a family that is. */
export const covers = (names: readonly string[], check: string): boolean =>
  names.includes(check) || names.includes(familyOf(check));
