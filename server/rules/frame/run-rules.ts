/** Puts rules to what is checked, one after another, whatever they do. */
import { type Askers, nobody } from "../../model/questions.ts";
import { noteFor, type Recorder } from "../../model/reads.ts";
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

/** One of those that rules are put to. */
export interface Subject<S> {
  readonly subject: S;
  /** Who notes what is asked of it, where that is another for each. */
  readonly reads?: Recorder;
  /** Where a failure is reported. */
  readonly header: Fact;
  /** What is known already: rules that ask nothing new found what they found. */
  readonly before?: PartlyKnown | undefined;
  /** What is found. */
  readonly found: Finding[];
  /** What rules before these found. */
  readonly compared?: readonly Finding[];
}

interface Run {
  /** By which sources are cited. */
  readonly edition: Edition | undefined;
  /** Who learns what each rule asks. */
  readonly askers?: Askers;
  /** Of a part of the rules: the first of them, and the first that is not. */
  readonly from?: number;
  readonly to?: number;
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

/**
 * Runs rules one after another, each over all subjects: there are many rules, and a processor that goes from one to the
 * next for every way has forgotten each when it comes back, which cost a third of a check. One reporter serves them all.
 */
export function runRules<S>(rules: readonly Asked<S>[], subjects: readonly Subject<S>[], run: Run): void {
  const { edition, askers, from = 0, to = rules.length } = run;
  let rule: Rule | undefined;
  let found: Finding[] = [];
  const cite = citedIn(edition);
  const report: Reporter = (spot, reported) => {
    if (rule) found.push(citedFinding(findingOf(rule, spot, reported), cite));
  };
  const numbers = askers?.numbersOf(rules);
  const asker = askers?.enter(nobody) ?? nobody;
  const outer = noteFor(undefined);
  try {
    for (let at = from; at < to; at++) {
      const one = rules[at] as Asked<S>;
      rule = one.rule;
      const number = numbers?.[at] ?? nobody;
      askers?.enter(number);
      for (const { subject, reads = outer, header, before, found: own, compared = noFindings } of subjects) {
        found = own;
        if (before && !before.asksAgain(number)) {
          for (const finding of before.found) if (finding.check === one.id) own.push(finding);
          continue;
        }
        noteFor(reads);
        try {
          one.check(subject, report, compared);
        } catch (error) {
          if (failures.thrown) throw error;
          own.push(failed(one.rule, error, header));
        }
      }
    }
  } finally {
    noteFor(outer);
    askers?.leave(asker);
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
