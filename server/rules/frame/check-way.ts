/** Checks ways, a board together. What is found is kept with the pair of way and context. */
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import { sameItems, type Way } from "../../model/file.ts";
import type { BoardInPlace, Context } from "../../model/installation.ts";
import { type Reads, recordedBy } from "../../model/reads.ts";
import { gradingOnWay } from "./graded-fixes.ts";
import { type KeptForWay, keepForWay, type PartlyKnown, type StillKnown } from "./kept-findings.ts";
import type { Finding, WayRule } from "./rule.ts";
import { type RuleSet, standardSet } from "./rule-set.ts";
import { noFindings, runRules, type Subject } from "./run-rules.ts";
import { atTheWay, onceForEach } from "./shared-line.ts";

/** Work that stops after each way that was checked, and after rules that looked at many ways. */
export type Slices<T> = Generator<undefined | "rules", T, undefined>;

/** So many ways are checked together: a board of usual size, with all that is worked out of it. */
const waysAtOnce = 24;

/** So often is a rule put to a way between two stops, which takes about as long as the check of one or two. */
const askedAtOnce = 288;

/** A way that is being checked. */
interface Begun extends Subject<WayStudy> {
  readonly reads: Reads;
  readonly way: Way;
}

/** Checks those of some ways of a board of which not all is known, and keeps what is found of each. */
export function* checkWays(ways: readonly Way[], { context }: BoardInPlace, known: StillKnown): Slices<void> {
  const unknown = ways.filter((way) => !known.ofWay(way));
  for (let at = 0; at < unknown.length; at += waysAtOnce) {
    const some = unknown.slice(at, at + waysAtOnce).map((way) => begun(studyWay(way, context), known.partOfWay(way)));
    yield* eachRuleOn(some, context);
    for (const one of some) {
      yield* workedOut(one);
      keepForWay(one.way, fresh(one));
      yield;
    }
  }
}

/** Where something is known of a way, what its rules asked is known too. */
function begun(subject: WayStudy, before: PartlyKnown | undefined): Begun {
  const { way, reads } = subject;
  if (before) reads.add(before.reads);
  return { subject, way, reads, header: way.header, before, found: [] };
}

/** What the rules find one by one. Nothing is kept yet: work that is left between them is done anew. */
function* eachRuleOn(some: readonly Begun[], { edition, parts }: Context): Slices<void> {
  const { askers } = parts.questions;
  const atOnce = Math.ceil(askedAtOnce / some.length);
  const { way } = standardSet;
  for (let from = 0; from < way.length; from += atOnce) {
    if (from > 0) yield "rules";
    runRules(way, some, { edition, askers, from, to: Math.min(from + atOnce, way.length) });
  }
}

/** What the verdict on a way takes long for is worked out before it, in steps. */
function* workedOut({ subject, before }: Begun): Slices<void> {
  const { askers } = subject.context.parts.questions;
  for (const rule of standardSet.lengthy)
    if (!before || before.asksAgain(askers.numberOf(rule.id))) yield* inSteps(rule, subject);
}

function* inSteps({ before }: WayRule, study: WayStudy): Slices<void> {
  try {
    for (const _ of before?.(study) ?? []) yield "rules";
  } catch {
    // It fails once more as the rule runs, and is reported then.
  }
}

/** All that is found on a way, with what was asked. */
function fresh({ subject, reads, before, found }: Begun): KeptForWay {
  const { parts } = subject.context;
  const findings = recordedBy(reads, () => {
    judge(subject, standardSet, found, before);
    return together(found, subject);
  });
  const kept = found.length === 0 ? noFindings : found;
  return { parts, reads: parts.questions.oneOf(reads.bits), found: kept, findings };
}

/** What is found on a way by rules of which nothing is to be kept. */
export function findingsOfWay(study: WayStudy, set: RuleSet): readonly Finding[] {
  const { context, way } = study;
  const found: Finding[] = [];
  const { askers } = context.parts.questions;
  runRules(set.way, [{ subject: study, header: way.header, found }], { edition: context.edition, askers });
  judge(study, set, found, undefined);
  return together(found, study);
}

/** The verdicts on all that rules found one by one. */
function judge(study: WayStudy, set: RuleSet, found: Finding[], before: PartlyKnown | undefined): void {
  const { context, way } = study;
  const { askers } = context.parts.questions;
  const compared = found.filter(({ check }) => set.compares.has(check));
  const same = before && isSameCase(before, compared, set) ? before : undefined;
  const one = { subject: study, header: way.header, before: same, found, compared };
  runRules(set.verdicts, [one], { edition: context.edition, askers });
}

/** Whether a verdict has the findings before it that it had last time. */
const isSameCase = (before: PartlyKnown, compared: readonly Finding[], { compares }: RuleSet): boolean =>
  before.isInPlace &&
  sameItems(
    compared,
    before.found.filter(({ check }) => compares.has(check)),
  );

/** What is reported of what the rules of a way found. */
function together(found: readonly Finding[], study: WayStudy): readonly Finding[] {
  const explained = new Set(found.flatMap(({ explains = [] }) => explains));
  const spoken = explained.size > 0 ? found.filter((finding) => !explained.has(finding)) : found;
  const placed = study.way.type ? spoken.map((finding) => atTheWay(finding, study.way)) : spoken;
  const graded = onceForEach(placed, study.way).map(gradingOnWay(study));
  return sameItems(graded, found) ? found : graded;
}
