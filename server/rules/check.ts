/**
 * Runs the checks over an installation. Findings of a way are kept with the pair of way and context, and those of a
 * board with the board, so that a change costs what it touches.
 */
import { studyWay, type WayStudy } from "../analysis/way.ts";
import type { Board, Way } from "../model/file.ts";
import type { BoardInPlace, Context, Installation } from "../model/installation.ts";
import type { Fact } from "../model/values.ts";
import { applyDepartures, departuresIn, type PlacedDeparture } from "./departures.ts";
import { rules as allRules } from "./list.ts";
import { type Finding, findingOf, type InstallationRule, type Rule, type WayRule } from "./rule.ts";

/** A finding that a departure quietens, with the departure. */
export interface Quietened {
  readonly finding: Finding;
  readonly departure: PlacedDeparture;
}

export interface CheckResult {
  readonly findings: readonly Finding[];
  readonly quietened: readonly Quietened[];
}

interface RuleSet {
  readonly way: readonly WayRule[];
  readonly onBoards: readonly OnBoard[];
  readonly installation: readonly InstallationRule[];
}

/** A rule that is put to each board: a board rule, or the part of an installation rule that asks boards. */
type OnBoard = Rule & { readonly checkBoard: NonNullable<InstallationRule["checkBoard"]> };

const sortRules = (rules: readonly Rule[]): RuleSet => ({
  way: rules.filter((rule) => rule.scope === "way"),
  onBoards: rules.flatMap((rule): OnBoard[] => {
    if (rule.scope === "board") return [{ ...rule, checkBoard: rule.check }];
    return rule.scope === "installation" && rule.checkBoard ? [{ ...rule, checkBoard: rule.checkBoard }] : [];
  }),
  installation: rules.filter((rule) => rule.scope === "installation"),
});

const standardSet = sortRules(allRules);

/** All findings of an installation, after departures. `rules` is for tests that look at one rule alone. */
export function checkInstallation(installation: Installation, rules?: readonly Rule[]): CheckResult {
  const set = rules ? sortRules(rules) : standardSet;
  const found: Finding[] = [];
  const departures = [installation.head.facts, ...(installation.supply ? [installation.supply] : [])].flatMap((facts) =>
    departuresIn(facts, undefined, undefined),
  );
  for (const place of installation.boards) {
    const board = checkBoard(place, set, rules !== undefined);
    // Not spread: there can be more of them than a call takes arguments.
    for (const finding of board.findings) found.push(finding);
    for (const departure of board.departures) departures.push(departure);
  }
  for (const rule of set.installation) {
    guard(
      rule,
      () => rule.check(installation, (spot, report) => found.push(findingOf(rule, spot, report))),
      found,
      installation.head.header,
    );
  }
  return applyDepartures(found, departures, installation);
}

interface BoardFindings {
  readonly findings: readonly Finding[];
  readonly departures: readonly PlacedDeparture[];
}

interface BoardKept extends BoardFindings {
  readonly context: Context;
}

const boardsKept = new WeakMap<Board, BoardKept>();

function checkBoard(place: BoardInPlace, set: RuleSet, apart: boolean): BoardFindings {
  const { board, context } = place;
  const before = apart ? undefined : boardsKept.get(board);
  if (before?.context === context) return before;
  const findings: Finding[] = [];
  const departures: PlacedDeparture[] = [...departuresIn(board.head.facts, board, undefined)];
  const studies = board.ways.map((way) => studyWay(way, context));
  for (const study of studies) {
    findings.push(...checkWay(study, set, apart));
    departures.push(...departuresIn(study.facts, board, study.way));
  }
  for (const rule of set.onBoards) {
    guard(
      rule,
      () =>
        rule.checkBoard({ board, context, studies }, (spot, report) => findings.push(findingOf(rule, spot, report))),
      findings,
      board.head.header,
    );
  }
  const kept: BoardKept = { context, findings, departures };
  if (!apart) boardsKept.set(board, kept);
  return kept;
}

const waysKept = new WeakMap<Way, { readonly context: Context; readonly findings: readonly Finding[] }>();

function checkWay(study: WayStudy, set: RuleSet, apart: boolean): readonly Finding[] {
  const { way, context } = study;
  const before = apart ? undefined : waysKept.get(way);
  if (before?.context === context) return before.findings;
  const findings: Finding[] = [];
  for (const rule of set.way) {
    guard(
      rule,
      () => rule.check(study, (spot, report) => findings.push(findingOf(rule, spot, report))),
      findings,
      way.header,
    );
  }
  if (!apart) waysKept.set(way, { context, findings });
  return findings;
}

/**
 * A check that fails must not take the others with it, and must not be taken for a check that found nothing: the
 * failure is itself a finding. Tests set `failures.thrown`.
 */
export const failures = { thrown: false };

function guard(rule: Rule, run: () => void, findings: Finding[], header: Fact): void {
  try {
    run();
  } catch (error) {
    if (failures.thrown) throw error;
    const { segment, start, wordEnd } = header;
    findings.push({
      check: "engine/check-failed",
      severity: "warning",
      message: `The check ${rule.id} failed here and says nothing of this circuit (${error instanceof Error ? error.message : String(error)}). Please report it.`,
      spot: { segment, start, end: wordEnd },
      related: [],
      fixes: [],
    });
  }
}
