/**
 * Runs the checks over an installation. Findings of a way are kept with the pair of way and context, and those of a
 * board with the board, so that a change costs what it touches.
 */
import { type BoardNode, NetworkMemo, networkOf } from "../../boards/network.ts";
import { memoByObject, memoOfBoards } from "../../circuit/kept.ts";
import { lazy } from "../../circuit/lazy.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import { type Board, sameItems, type Way } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { type Askers, addBits, nobody, Reads, recordedBy } from "../../model/reads.ts";
import type { Fact } from "../../model/values.ts";
import { asFound, citedIn } from "../../tables/cited.ts";
import type { Edition } from "../../tables/editions.ts";
import { rules as allRules } from "../list.ts";
import { departureUnused } from "./departure-checks.ts";
import {
  applyDepartures,
  type CheckResult,
  departuresIn,
  departuresInFiles,
  type PlacedDeparture,
} from "./departures.ts";
import { grading, gradingOnBoard, gradingOnWay } from "./graded-fixes.ts";
import {
  checkFailed,
  type KeptFindings,
  type KeptForBoard,
  keepForBoard,
  keepForWay,
  keptForBoard,
  type PartlyKnown,
  StillKnown,
} from "./kept-findings.ts";
import { ofObservations } from "./observations.ts";
import { keptOnBoard, keptOnBoards } from "./outside-work.ts";
import {
  type BoardSubject,
  type Finding,
  findingOf,
  type InstallationRule,
  type Reporter,
  type Rule,
  type WayRule,
} from "./rule.ts";
import { atItsWay, atTheWay, onceForEach } from "./shared-line.ts";

/** A rule as it is put to one kind of subject. All have one shape, for there are many rules and many ways. */
interface Asked<S> {
  readonly rule: Rule;
  readonly id: string;
  readonly check: (subject: S, report: Reporter, found: readonly Finding[]) => void;
}

/** An installation rule of which something is to be run once all boards are checked. */
interface WholeRule {
  readonly id: string;
  readonly own: readonly Asked<Installation>[];
}

interface RuleSet {
  readonly way: readonly Asked<WayStudy>[];
  /** Rules that say what all the readings of a way come to, once the others have spoken. */
  readonly verdicts: readonly Asked<WayStudy>[];
  /** Those of all of them that have something to work out beforehand. */
  readonly lengthy: readonly WayRule[];
  /** Rules whose findings such a verdict may speak for. */
  readonly compares: ReadonlySet<string>;
  /** Board rules, and the part of installation rules that asks boards: in groups, between which work may stop. */
  readonly onBoards: readonly (readonly Asked<BoardSubject>[])[];
  /** The part of installation rules that asks boards in their network, all of it together; and the rest of each. */
  readonly onNodes: readonly Asked<BoardNode>[];
  readonly installation: readonly WholeRule[];
}

const onWays = (rules: readonly Rule[]): WayRule[] => rules.filter((rule) => rule.scope === "way");

const onInstallations = (rules: readonly Rule[]): InstallationRule[] =>
  rules.filter((rule) => rule.scope === "installation");

/** So many rules of a board, over all its ways, take about as long as a few of the ways. */
const boardRulesAtOnce = 12;

const inGroups = <T>(all: readonly T[]): T[][] =>
  all.flatMap((_, at) => (at % boardRulesAtOnce === 0 ? [all.slice(at, at + boardRulesAtOnce)] : []));

const asked = <S>(rule: Rule, check: Asked<S>["check"]): Asked<S> => ({ rule, id: rule.id, check });

function onBoard(rule: Rule): Asked<BoardSubject>[] {
  if (rule.scope === "board") return [asked(rule, rule.check)];
  return rule.scope === "installation" && rule.checkBoard ? [asked(rule, rule.checkBoard)] : [];
}

const sortRules = (rules: readonly Rule[]): RuleSet => ({
  way: onWays(rules).flatMap((rule) => (rule.verdict ? [] : [asked(rule, rule.check)])),
  verdicts: onWays(rules).flatMap((rule) => (rule.verdict ? [asked(rule, rule.check)] : [])),
  lengthy: onWays(rules).filter(({ before }) => before),
  compares: new Set(onWays(rules).flatMap(({ id, compares }) => (compares ? [id] : []))),
  onBoards: inGroups(rules.flatMap(onBoard)),
  onNodes: onInstallations(rules).flatMap((rule) => (rule.checkNode ? [asked(rule, rule.checkNode)] : [])),
  installation: onInstallations(rules).flatMap((rule) =>
    rule.check || rule.checkNode ? [{ id: rule.id, own: rule.check ? [asked(rule, rule.check)] : [] }] : [],
  ),
});

const standardSet = sortRules(allRules);

/** All findings of an installation, after departures. `rules` is for tests that look at one rule alone. */
export function checkInstallation(installation: Installation, rules?: readonly Rule[]): CheckResult {
  const slices = checkInSlices(installation, rules);
  for (;;) {
    const { done, value } = slices.next();
    if (done) return value;
  }
}

/** The same, a way at a time: it stops after each way that had to be checked, and may be left for good there. */
export function* checkInSlices(installation: Installation, rules?: readonly Rule[]): Slices<CheckResult> {
  const set = rules ? sortRules(rules) : standardSet;
  const apart = rules !== undefined;
  const found: Finding[] = [];
  const departures = departuresAbove(installation);
  for (const place of installation.boards) {
    const board = yield* apart ? checkBoardApart(place, set) : checkBoard(place, set);
    // Not spread: there can be more of them than a call takes arguments.
    for (const finding of board.findings) found.push(finding);
    for (const departure of board.departures) departures.push(departure);
  }
  const reported = keptOnBoards(installation);
  const placed = placing(installation);
  const isLarge = installation.boards.reduce((sum, { board }) => sum + board.ways.length, 0) > manyWays;
  const ofNodes = yield* foundInNetwork(installation, set, placed, apart);
  for (const finding of ofNodes.get(checkFailed) ?? []) found.push(finding);
  for (const { id, own } of set.installation) {
    const ofRule: Finding[] = [];
    const { header } = installation.head;
    runAll(own, installation, { header, edition: installation.edition }, ofRule);
    for (const finding of ofNodes.get(id) ?? []) if (reported(finding)) found.push(finding);
    for (const finding of ofRule) if (reported(finding)) found.push(placed(finding));
    if (isLarge) yield "rules";
  }
  const result = applyDepartures(found, departures, installation);
  const observed = apart ? [] : ofObservations(installation, result.findings);
  return observed.length > 0 ? applyDepartures([...found, ...observed], departures, installation) : result;
}

/** What rules find on the boards in their network, rule by rule. */
function* foundInNetwork(
  installation: Installation,
  { onNodes }: RuleSet,
  placed: (finding: Finding) => Finding,
  apart: boolean,
): Slices<ReadonlyMap<string, readonly Finding[]>> {
  const all: Finding[] = [];
  for (const node of networkOf(installation).nodes) {
    const known = apart ? undefined : nodesKept.get(node);
    const found = known ?? foundOnNode(node, onNodes).map(placed);
    for (const finding of found) all.push(finding);
    if (known) continue;
    if (!apart) nodesKept.set(node, found);
    yield "rules";
  }
  return Map.groupBy(all, ({ check }) => check);
}

const nodesKept = new NetworkMemo<readonly Finding[]>();

function foundOnNode(node: BoardNode, rules: readonly Asked<BoardNode>[]): readonly Finding[] {
  const found: Finding[] = [];
  runAll(rules, node, { header: node.board.head.header, edition: node.context.edition }, found);
  return found;
}

/** Each at the way it concerns, with the fixes that its place allows. */
function placing(installation: Installation): (finding: Finding) => Finding {
  const graded = grading(installation);
  const typed = lazy(() => typedOnBoards(installation).flat());
  return (finding) => (finding.fixes.length > 0 ? graded(atItsWay(finding, typed())) : finding);
}

/** The ways that a circuit type describes. */
const typedOnBoards = memoOfBoards((board) => board.ways.filter(({ type }) => type));

/**
 * What is found on the boards that are checked already, before the rules of their installation have spoken, and on the
 * ways that are checked of boards that are begun.
 */
export function foundSoFar(installation: Installation, begun: ReadonlySet<BoardInPlace>): readonly Finding[] {
  const known = installation.boards.flatMap((place) => keptOf(place) ?? (begun.has(place) ? foundOnWays(place) : []));
  const departures = [...departuresAbove(installation), ...known.flatMap((board) => [...board.departures])];
  const found = known.flatMap((board) => [...board.findings]);
  // Whether a departure is of use shows once all is checked.
  return applyDepartures(found, departures, installation).findings.filter(({ check }) => check !== departureUnused);
}

export const isChecked = (place: BoardInPlace): boolean => keptOf(place) !== undefined;

function keptOf({ board, context }: BoardInPlace): KeptForBoard | undefined {
  const kept = keptForBoard(context.parts);
  return kept?.board === board ? kept : undefined;
}

/** Those that are written outside the boards. */
function departuresAbove({ head, supply, files }: Installation): PlacedDeparture[] {
  const blocks = [head.facts, ...(supply ? [supply] : [])];
  return [...blocks.flatMap((facts) => departuresIn(facts, undefined, undefined)), ...departuresInFiles(files)];
}

/** A rule that looks at more ways than these takes a time worth stopping for. */
const manyWays = 200;

/** Work that stops after each way that was checked, and after rules that looked at many ways. */
export type Slices<T> = Generator<undefined | "rules", T, undefined>;

interface BoardFindings {
  readonly findings: readonly Finding[];
  readonly departures: readonly PlacedDeparture[];
}

function foundOnWays(place: BoardInPlace): BoardFindings {
  const { board, context } = place;
  const known = new StillKnown(context.parts);
  const findings = board.ways.flatMap((way) => known.ofWay(way)?.findings ?? []);
  return { findings: findings.filter(keptOnBoard(place)), departures: departuresOn(board) };
}

/** Checks some ways of a board before the rest of it: what is found is kept until the board is checked. */
export function* checkWaysInSlices(place: BoardInPlace, wanted: (way: Way) => boolean): Slices<void> {
  if (isChecked(place)) return;
  const { board, context } = place;
  const known = new StillKnown(context.parts);
  for (const way of board.ways) {
    if (!wanted(way)) continue;
    yield* workedOut(way, place, known);
    if (knownOrChecked(way, place, known, standardSet).isNew) yield;
  }
}

/** Whether some ways of a board are checked. */
export function hasCheckedWays(place: BoardInPlace, wanted: (way: Way) => boolean): boolean {
  const known = new StillKnown(place.context.parts);
  return isChecked(place) || place.board.ways.every((way) => !wanted(way) || known.ofWay(way) !== undefined);
}

const knownOrChecked = (way: Way, { context }: BoardInPlace, known: StillKnown, set: RuleSet): KeptFindings =>
  known.ofWay(way) ?? checkWay(studyWay(way, context), set, known.partOfWay(way));

/** What takes the rules of a way long is worked out before they run, in steps. */
function* workedOut(way: Way, { context }: BoardInPlace, known: StillKnown): Slices<void> {
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

/** Checks one board before the others: what is found is kept until all of its installation is checked. */
export function* checkBoardInSlices(place: BoardInPlace): Slices<void> {
  yield* checkBoard(place, standardSet);
}

function* checkBoard(place: BoardInPlace, set: RuleSet): Slices<BoardFindings> {
  const { board, context } = place;
  const before = keptOf(place);
  if (before) return before;
  const known = new StillKnown(context.parts);
  const departures = departuresOn(board);
  const same = known.ofBoard(board);
  if (same) {
    const kept = { ...same, board, departures };
    keepForBoard(kept);
    return kept;
  }
  const partly = known.partOfBoard(board);
  const findings: Finding[] = [];
  const reads: number[] = [];
  for (const way of board.ways) {
    yield* workedOut(way, place, known);
    const ofWay = knownOrChecked(way, place, known, set);
    for (const finding of ofWay.findings) findings.push(finding);
    addBits(reads, ofWay.reads);
    if (ofWay.isNew) yield;
  }
  const ofBoard = new Reads(context.parts);
  if (partly) ofBoard.add(partly.reads);
  const own: Finding[] = [];
  for (const rules of set.onBoards) {
    for (const finding of recordedBy(ofBoard, () => foundOnBoard(place, rules, partly))) own.push(finding);
    yield "rules";
  }
  const reported = recordedBy(ofBoard, () => {
    for (const finding of placedOnBoard(own, place)) findings.push(finding);
    return findings.filter(keptOnBoard(place));
  });
  addBits(reads, ofBoard.bits);
  for (const way of board.ways) addBits(reads, studyWay(way, context).reads.bits);
  const kept = {
    board,
    parts: context.parts,
    reads,
    findings: reported,
    departures,
    own,
    ownReads: ofBoard.bits,
  };
  keepForBoard(kept);
  return kept;
}

const departuresOn = memoByObject((board: Board): readonly PlacedDeparture[] => [
  ...departuresIn(board.head.facts, board, undefined),
  ...board.ways.flatMap((way) => departuresIn(way.facts, board, way)),
]);

/** A board by rules of which nothing is to be kept. */
function* checkBoardApart(place: BoardInPlace, set: RuleSet): Slices<BoardFindings> {
  const { board, context } = place;
  const findings: Finding[] = [];
  for (const way of board.ways) {
    findings.push(...findingsOfWay(studyWay(way, context), set));
    yield;
  }
  const own = set.onBoards.flatMap((rules) => foundOnBoard(place, rules, undefined));
  for (const finding of placedOnBoard(own, place)) findings.push(finding);
  return { findings: findings.filter(keptOnBoard(place)), departures: departuresOn(board) };
}

/** What the rules of a board find, one by one: those that ask nothing that has another answer now are not run again. */
function foundOnBoard(
  { board, context }: BoardInPlace,
  rules: readonly Asked<BoardSubject>[],
  before: PartlyKnown | undefined,
): readonly Finding[] {
  const subject = { board, context, studies: board.ways.map((way) => studyWay(way, context)) };
  const found: Finding[] = [];
  const { askers } = context.parts.questions;
  const checked = { header: board.head.header, edition: context.edition, askers, before };
  runAll(rules, subject, checked, found);
  return found;
}

/** Each at the way it concerns, with the fixes that its place allows. */
function placedOnBoard(found: readonly Finding[], { board, context }: BoardInPlace): readonly Finding[] {
  const typed = board.ways.filter(({ type }) => type);
  const graded = gradingOnBoard({ board, context });
  return found.map((finding) => graded(typed.length > 0 ? atItsWay(finding, typed) : finding));
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

const findingsOfWay = (study: WayStudy, set: RuleSet): readonly Finding[] =>
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
function runAll<S>(
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

const noFindings: readonly Finding[] = [];

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
