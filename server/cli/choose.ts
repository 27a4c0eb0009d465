/** Which findings a person wants to see, and which of them fail the run. */
import { nearest } from "../model/suggestions.ts";
import type { FileResult } from "../results/result.ts";
import type { Totals } from "../results/totals.ts";
import { nearestPages, pageOf, pages } from "../rules/frame/catalogue.ts";
import type { Severity } from "../rules/frame/rule.ts";

export interface ChoiceOptions {
  /** Checks by id or family, divided by commas. */
  readonly only?: string;
  readonly skip?: string;
  readonly failLevel: Severity;
  readonly maxWarnings?: number;
}

export interface Choice {
  /** A file with the findings that are wanted. */
  readonly of: (file: FileResult) => FileResult;
  readonly has: (check: string) => boolean;
  /** Whether what was found fails the run. */
  readonly fails: (totals: Pick<Totals, "counts">) => boolean;
}

/** What cannot be read, and a check that failed, are never left out: a report without them would pass for a clean one. */
const always: ReadonlySet<string> = new Set(["language", "check"]);

export function choiceOf({ only, skip, failLevel, maxWarnings }: ChoiceOptions): Choice | { readonly failure: string } {
  const wanted = only === undefined ? undefined : namesIn(only);
  const unwanted = namesIn(skip ?? "");
  const unknown = [...(wanted ?? []), ...unwanted].find((name) => !isKnown(name));
  if (unknown !== undefined)
    return { failure: `There is no check and no family of checks “${unknown}”.${hint(unknown)}` };
  const kept = unwanted.find((name) => always.has(familyOf(name)));
  if (kept !== undefined) {
    return { failure: `“${kept}” cannot be skipped: what cannot be read, or failed to run, would pass for sound.` };
  }
  const has = (check: string): boolean => {
    if (always.has(familyOf(check))) return true;
    return (wanted === undefined || covers(wanted, check)) && !covers(unwanted, check);
  };
  return {
    has,
    of: (file) =>
      wanted === undefined && unwanted.length === 0
        ? file
        : {
            ...file,
            findings: file.findings.filter(({ check }) => has(check)),
            more: file.more.filter(({ check }) => has(check)),
          },
    fails: ({ counts }) =>
      levels.slice(0, levels.indexOf(failLevel) + 1).some((level) => counts[level] > 0) ||
      (maxWarnings !== undefined && counts.warning > maxWarnings),
  };
}

/** From the gravest. */
export const levels: readonly Severity[] = ["error", "warning", "information"];

const namesIn = (list: string): string[] =>
  list
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "")
    .map((name) => pageOf(name)?.id ?? name);

const familyOf = (check: string): string => check.replace(/\/.*/, "");

export const families: readonly string[] = [...new Set(pages.map(({ id }) => familyOf(id)))];

const isKnown = (name: string): boolean => families.includes(name) || pageOf(name) !== undefined;

const covers = (names: readonly string[], check: string): boolean =>
  names.some((name) => name === check || name === familyOf(check));

function hint(name: string): string {
  const near = nearest(name, families) ?? nearestPages(name)[0]?.id;
  return near === undefined ? " “wayfile explain” lists them all." : ` Did you mean ${near}?`;
}
