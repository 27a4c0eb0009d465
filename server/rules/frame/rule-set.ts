/** The rules, by what each is put to. */
import type { BoardNode } from "../../boards/network.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Installation } from "../../model/installation.ts";
import { rules as allRules } from "../list.ts";
import type { BoardSubject, Finding, InstallationRule, Reporter, Rule, WayRule } from "./rule.ts";

/** A rule as it is put to one kind of subject. All have one shape, for there are many rules and many ways. */
export interface Asked<S> {
  readonly rule: Rule;
  readonly id: string;
  readonly check: (subject: S, report: Reporter, found: readonly Finding[]) => void;
}

/** An installation rule of which something is to be run once all boards are checked. */
interface WholeRule {
  readonly id: string;
  readonly own: readonly Asked<Installation>[];
}

export interface RuleSet {
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

export const sortRules = (rules: readonly Rule[]): RuleSet => ({
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

/** Those that every schedule is checked by. */
export const standardSet = sortRules(allRules);
