/** Checks one way. What is found is kept with the pair of way and context. */
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import { sameItems, type Way } from "../../model/file.ts";
import type { BoardInPlace } from "../../model/installation.ts";
import { recordedBy } from "../../model/reads.ts";
import { gradingOnWay } from "./graded-fixes.ts";
import { type KeptFindings, keepForWay, type PartlyKnown, type StillKnown } from "./kept-findings.ts";
import type { Finding, WayRule } from "./rule.ts";
import { type RuleSet, standardSet } from "./rule-set.ts";
import { noFindings, runAll } from "./run-rules.ts";
import { atTheWay, onceForEach } from "./shared-line.ts";

/** Work that stops after each way that was checked, and after rules that looked at many ways. */
export type Slices<T> = Generator<undefined | "rules", T, undefined>;

/** What is found on a way, as it is known or else worked out now. */
export const knownOrChecked = (way: Way, { context }: BoardInPlace, known: StillKnown, set: RuleSet): KeptFindings =>
  known.ofWay(way) ?? checkWay(studyWay(way, context), set, known.partOfWay(way));

/** What takes the rules of a way long is worked out before they run, in steps. */
export function* workedOut(way: Way, { context }: BoardInPlace, known: StillKnown): Slices<void> {
  if (known.ofWay(way)) return;
  const before = known.partOfWay(way);
  const { askers } = context.parts.questions;
  for (const rule of standardSet.lengthy)
    if (!before || before.asksAgain(askers.numberOf(rule.id))) yield* inSteps(rule, studyWay(way, context));
}

function* inSteps({ before }: WayRule, study: WayStudy): Slices<void> {
  try {
    for (const _ of before?.(study) ?? []) yield "rules";
  } catch {
    // It fails once more as the rule runs, and is reported then.
  }
}

/** Checks a way and keeps what is found with what was asked: where something is known of it, by rules that asked it. */
function checkWay(
  study: WayStudy,
  set: RuleSet,
  before: PartlyKnown | undefined,
): KeptFindings & { readonly isNew: true } {
  const { way, context, reads } = study;
  if (before) reads.add(before.reads);
  const [found, findings] = recordedBy(reads, () => {
    const each = foundOnWay(study, set, before);
    return [each, together(each, study)];
  });
  const fresh = {
    parts: context.parts,
    reads: context.parts.questions.oneOf(reads.bits),
    found: found.length === 0 ? noFindings : found,
    findings,
  };
  keepForWay(way, fresh);
  return { ...fresh, isNew: true };
}

/** What is found on a way by rules of which nothing is to be kept. */
export const findingsOfWay = (study: WayStudy, set: RuleSet): readonly Finding[] =>
  together(foundOnWay(study, set, undefined), study);

/** What the rules of a way find, one by one; then the verdicts on all of it. */
function foundOnWay(study: WayStudy, set: RuleSet, before: PartlyKnown | undefined): readonly Finding[] {
  const { context, way } = study;
  const found: Finding[] = [];
  const checked = { header: way.header, edition: context.edition, askers: context.parts.questions.askers };
  runAll(set.way, study, { ...checked, before }, found);
  const compared = found.filter(({ check }) => set.compares.has(check));
  const same = before && isSameCase(before, compared, set) ? before : undefined;
  runAll(set.verdicts, study, { ...checked, before: same }, found, compared);
  return found;
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
