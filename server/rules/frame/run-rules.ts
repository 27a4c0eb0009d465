/** Puts rules to one subject, one after another, whatever they do. */
import { type Askers, nobody } from "../../model/questions.ts";
import type { Fact } from "../../model/values.ts";
import { asFound, citedIn } from "../../tables/cited.ts";
import type { Edition } from "../../tables/editions.ts";
import { checkFailed, type PartlyKnown } from "./kept-findings.ts";
import { type Finding, findingOf, type Reporter, type Rule } from "./rule.ts";
import type { Asked } from "./rule-set.ts";

/**
 * A check that fails must not take the others with it, and must not be taken for a check that found nothing: the
 * failure is itself a finding. Tests set `failures.thrown`.
 */
export const failures = { thrown: false };

interface Checked {
  /** Where a failure is reported. */
  readonly header: Fact;
  /** By which sources are cited. */
  readonly edition: Edition | undefined;
  /** Who learns what each rule asks. */
  readonly askers?: Askers;
  /** What is known already: rules that ask nothing new found what they found. */
  readonly before?: PartlyKnown | undefined;
}

function citedFinding(finding: Finding, cite: (text: string) => string): Finding {
  if (cite === asFound) return finding;
  const { message, working, source } = finding;
  return {
    ...finding,
    message: cite(message),
    ...(working === undefined ? {} : { working: cite(working) }),
    ...(source ? { source: { ...source, ref: cite(source.ref) } } : {}),
  };
}

/** Runs rules one after another over one subject. One reporter serves them all: there are many rules and many ways. */
export function runAll<S>(
  rules: readonly Asked<S>[],
  subject: S,
  { header, edition, askers, before }: Checked,
  findings: Finding[],
  compared: readonly Finding[] = noFindings,
): void {
  let current: Rule | undefined;
  const cite = citedIn(edition);
  const report: Reporter = (spot, reported) => {
    if (current) findings.push(citedFinding(findingOf(current, spot, reported), cite));
  };
  const numbers = askers?.numbersOf(rules);
  const outer = askers?.enter(nobody) ?? nobody;
  try {
    for (let at = 0; at < rules.length; at++) {
      const one = rules[at] as Asked<S>;
      const asker = numbers?.[at] ?? nobody;
      if (before && !before.asksAgain(asker)) {
        for (const finding of before.found) if (finding.check === one.id) findings.push(finding);
        continue;
      }
      current = one.rule;
      askers?.enter(asker);
      try {
        one.check(subject, report, compared);
      } catch (error) {
        if (failures.thrown) throw error;
        findings.push(failed(one.rule, error, header));
      }
    }
  } finally {
    askers?.leave(outer);
  }
}

export const noFindings: readonly Finding[] = [];

function failed(rule: Rule, error: unknown, { segment, start, wordEnd }: Fact): Finding {
  const reason = error instanceof Error ? error.message : String(error);
  return {
    check: checkFailed,
    severity: "warning",
    message: `The check ${rule.id} failed here and says nothing of this circuit (${reason}). Please report it.`,
    spot: { segment, start, end: wordEnd },
    related: [],
    fixes: [],
  };
}
