/** Which findings a person wants to see, and which of them fail the run. */
import { nearest } from "../model/suggestions.ts";
import type { FileResult, ResultFinding, Suppressed } from "../results/result.ts";
import type { Totals } from "../results/totals.ts";
import { nearestPages, pageOf, pages } from "../rules/frame/catalogue.ts";
import { type Severity, severities } from "../rules/frame/rule.ts";
import type { Fate } from "../settings/apply.ts";
import { covers, familyOf, isAlwaysShown, noSettings, type Suppression } from "../settings/settings.ts";
import type { HouseRules } from "./house.ts";

export interface ChoiceOptions {
  /** Checks by id or family, divided by commas. */
  readonly only?: string;
  readonly skip?: string;
  /** These go before the settings of the repository. */
  readonly failLevel?: Severity;
  readonly maxWarnings?: number;
}

/** What is left of a file: what is shown of it, what its settings suppress, and how much was not wanted. */
interface Chosen {
  readonly file: FileResult;
  readonly suppressed: readonly Suppressed[];
  readonly leftOut: number;
}

export interface Choice {
  readonly of: (file: FileResult) => Chosen;
  readonly has: (check: string) => boolean;
  /** Whether what was found fails the run. */
  readonly fails: (totals: Pick<Totals, "counts">) => boolean;
}

const noRules: HouseRules = { of: () => undefined, run: noSettings };

export function choiceOf(options: ChoiceOptions, rules = noRules): Choice | { readonly failure: string } {
  const { only, skip } = options;
  const wanted = only === undefined ? undefined : namesIn(only);
  const unwanted = namesIn(skip ?? "");
  const unknown = [...(wanted ?? []), ...unwanted].find((name) => !isKnown(name));
  if (unknown !== undefined)
    return { failure: `There is no check and no family of checks “${unknown}”.${hint(unknown)}` };
  const kept = unwanted.find(isAlwaysShown);
  if (kept !== undefined) {
    return { failure: `“${kept}” cannot be skipped: what cannot be read, or failed to run, would pass for sound.` };
  }
  const has = (check: string): boolean => {
    if (isAlwaysShown(check)) return true;
    return (wanted === undefined || covers(wanted, check)) && !covers(unwanted, check);
  };
  const failLevel = options.failLevel ?? rules.run.failLevel ?? "error";
  const maxWarnings = options.maxWarnings ?? rules.run.maxWarnings;
  const all = wanted === undefined && unwanted.length === 0;
  return {
    has,
    of: (file) => {
      const settings = rules.of(file.path);
      return all && !settings ? { file, suppressed: [], leftOut: 0 } : chosen(file, has, settings);
    },
    fails: ({ counts }) =>
      severities.slice(0, severities.indexOf(failLevel) + 1).some((level) => counts[level] > 0) ||
      (maxWarnings !== undefined && counts.warning > maxWarnings),
  };
}

function chosen(file: FileResult, has: (check: string) => boolean, rules: ReturnType<HouseRules["of"]>): Chosen {
  const findings: ResultFinding[] = [];
  const suppressed: Suppressed[] = [];
  let leftOut = 0;
  const fateOf = (one: { readonly check: string; readonly severity: Severity }): Fate => {
    if (!has(one.check)) return { is: "left out" };
    return rules?.fates(one) ?? { is: "shown", severity: one.severity };
  };
  for (const finding of file.findings) {
    const fate = fateOf(finding);
    if (fate.is === "shown") {
      findings.push(fate.severity === finding.severity ? finding : { ...finding, severity: fate.severity });
    } else if (fate.is === "suppressed" && rules) suppressed.push(suppressedBy(finding, fate.by, rules.name));
    else leftOut++;
  }
  const more = file.more.flatMap((one) => {
    const fate = fateOf(one);
    if (fate.is === "shown") return [{ ...one, severity: fate.severity }];
    leftOut += one.count;
    return [];
  });
  return { file: { ...file, findings, more }, suppressed, leftOut };
}

const suppressedBy = (finding: ResultFinding, { check, reason, line }: Suppression, path: string): Suppressed => ({
  finding,
  rule: check,
  reason,
  settings: { path, line },
});

const namesIn = (list: string): string[] =>
  list
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "")
    .map((name) => pageOf(name)?.id ?? name);

const families: readonly string[] = [...new Set(pages.map(({ id }) => familyOf(id)))];

const isKnown = (name: string): boolean => families.includes(name) || pageOf(name) !== undefined;

function hint(name: string): string {
  const near = nearest(name, families) ?? nearestPages(name)[0]?.id;
  return near === undefined ? " “wayfile explain” lists them all." : ` Did you mean ${near}?`;
}
