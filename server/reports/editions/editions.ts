/** What another edition would change of what is found: findings that come, go or move, and limits that move. */

import { megohms, ohms, seconds } from "../../calc/result.ts";
import { studyWay } from "../../circuit/way.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { insulationLimit } from "../../readings/insulation.ts";
import { checkInstallation } from "../../rules/frame/check.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import { rules } from "../../rules/list.ts";
import type { Edition } from "../../tables/editions.ts";

export interface FindingChange {
  /** `A/3`, `board A` or `installation`. */
  readonly where: string;
  readonly kind: "appears" | "vanishes" | "differs";
  readonly before: Finding | undefined;
  readonly after: Finding | undefined;
}

export interface LimitChange {
  readonly where: string;
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

export interface EditionDifference {
  readonly edition: Edition;
  readonly findings: readonly FindingChange[];
  readonly limits: readonly LimitChange[];
}

/** The same installation, judged by another edition. */
const underEdition = (installation: Installation, edition: Edition): Installation => ({
  ...installation,
  edition,
  boards: installation.boards.map(({ board, context }) => ({ board, context: { ...context, edition } })),
});

/** These speak of the line that names the edition, not of the installation. */
const aboutTheName: ReadonlySet<string> = new Set([
  "record/tests-before-edition",
  "record/edition-superseded",
  "record/edition-unverified",
  "record/no-standard",
  "record/unknown-edition",
]);

export function editionDifference(installation: Installation, edition: Edition): EditionDifference {
  const other = underEdition(installation, edition);
  const numbers = new Map<Segment, number>();
  const before = keyed(found(installation), numbers);
  const after = keyed(found(other), numbers);
  const where = placesIn(installation);
  const findings = [...new Set([...before.keys(), ...after.keys()])].flatMap((key): FindingChange[] => {
    const [one, two] = [before.get(key), after.get(key)];
    const finding = one ?? two;
    if (!finding || (one && two && same(one, two))) return [];
    const kind = !one ? "appears" : !two ? "vanishes" : "differs";
    return [{ where: where.get(finding.spot.segment) ?? "installation", kind, before: one, after: two }];
  });
  return { edition, findings, limits: limitChanges(installation, other) };
}

/** Every rule by name: what is kept for the edition the schedule names stays as it is. */
const found = (installation: Installation): readonly Finding[] =>
  checkInstallation(installation, rules).findings.filter(({ check }) => !aboutTheName.has(check));

type Segment = Finding["spot"]["segment"];

/** A finding is the same question put to the same place; the second of a place is distinguished from the first. */
function keyed(findings: readonly Finding[], numbers: Map<Segment, number>): Map<string, Finding> {
  const map = new Map<string, Finding>();
  for (const finding of findings) {
    const { check, spot } = finding;
    const number = numbers.get(spot.segment) ?? numbers.size;
    numbers.set(spot.segment, number);
    let key = `${number} ${spot.start} ${spot.end} ${check}`;
    while (map.has(key)) key += "'";
    map.set(key, finding);
  }
  return map;
}

/** Another reference for the same figure is no change a person has to act on. */
const same = (one: Finding, other: Finding): boolean =>
  one.severity === other.severity &&
  one.message === other.message &&
  one.limit?.amount === other.limit?.amount &&
  one.value?.amount === other.value?.amount;

function placesIn({ boards }: Installation): ReadonlyMap<Segment, string> {
  const map = new Map<Segment, string>();
  for (const { board } of boards) {
    for (const segment of board.segments) map.set(segment, `board ${board.head.name}`);
    for (const way of board.ways) map.set(way.segment, `${board.head.name}/${way.id}`);
  }
  return map;
}

function limitChanges(installation: Installation, other: Installation): LimitChange[] {
  return installation.boards.flatMap((place, index) => {
    const there = other.boards[index];
    if (!there) return [];
    const now = limitsOf(place);
    return limitsOf(there).flatMap(({ where, name, value }, at) => {
      const before = now[at]?.value ?? none;
      return before === value ? [] : [{ where, name, before, after: value }];
    });
  });
}

const none = "none known";

function limitsOf({ board, context }: BoardInPlace): { where: string; name: string; value: string }[] {
  return board.ways.flatMap((way) => {
    const study = studyWay(way, context);
    if (study.isSpare) return [];
    const { disconnectionTime: time, disconnection } = study;
    const insulation = insulationLimit(study)?.minimum;
    const where = `${board.head.name}/${way.id}`;
    return [
      { where, name: "disconnection time", value: time ? seconds(time.value) : none },
      { where, name: "greatest Zs, hot", value: disconnection ? ohms(disconnection.limit.value) : none },
      { where, name: "least insulation", value: insulation ? megohms(insulation.value) : none },
    ];
  });
}
