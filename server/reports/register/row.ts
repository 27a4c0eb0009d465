/** One installation as a lead sees it among many, as plain data: nothing in it depends on the day it is looked at. */

import { blocksWithin } from "../../circuit/blocks.ts";
import { studyWay } from "../../circuit/way.ts";
import { inspectionsOf, isOlder } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import { limitationsOf } from "../../readings/absences.ts";
import { boardTestDays, dueOf, factsOf, ownTestDays, type TestDay } from "../../readings/instruments.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import { planDead } from "../../readings/plan-dead.ts";
import { planLive } from "../../readings/plan-live.ts";
import { queriesIn } from "../../readings/queries.ts";
import { isMissingTest } from "../../rules/common/missing-tests.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import { leastMargin, type PlacedTest } from "../summary/tests.ts";

/** Days are written 2026-03-05; a figure that is not known is left out. */
export interface RegisterRow {
  readonly title: string;
  readonly stage?: string;
  readonly standard?: string;
  readonly boards: number;
  readonly ways: number;
  readonly errors: number;
  readonly warnings: number;
  /** Tests that the stage requires and that are not there. */
  readonly missing: number;
  readonly queries: number;
  readonly limitations: number;
  readonly departures: number;
  /** The last day of a test. */
  readonly tested?: string;
  readonly nextInspection?: string;
  /** The outcome of the last inspection. */
  readonly outcome?: string;
  /** The instrument of these tests whose calibration lapses first. */
  readonly calibration?: { readonly instrument: string; readonly due: string };
  /** Of all readings the one with least left to its limit, as a share of it; negative where it is beyond. */
  readonly margin?: { readonly share: number; readonly where: string; readonly name: string; readonly text: string };
}

/** What a register counts of what is found. */
export type FoundCounts = Pick<RegisterRow, "errors" | "warnings" | "missing" | "departures">;

export function countsOf({ findings, suppressed }: CheckResult): FoundCounts {
  const count = (severity: string): number => findings.filter((finding) => finding.severity === severity).length;
  return {
    errors: count("error"),
    warnings: count("warning"),
    missing: findings.filter(isMissingTest).length,
    departures: new Set(suppressed.map(({ departure }) => departure.fact)).size,
  };
}

export function registerRow(installation: Installation, counts: FoundCounts): RegisterRow {
  const { head, boards } = installation;
  const last = inspectionsOf(head).at(-1);
  const days = [...ownTestDays(installation), ...boards.flatMap(({ board }) => boardTestDays(board))];
  const tested = days
    .map(({ on }) => on.value)
    .sort()
    .at(-1);
  const known = {
    stage: head.facts.one("stage")?.args.stage.value,
    standard: installation.edition?.id,
    tested,
    nextInspection: last?.facts?.one("next-inspection")?.args.on?.value,
    outcome: last?.facts?.one("outcome")?.args.of?.value,
    calibration: firstToLapse(installation, days, tested ?? ""),
    margin: leastMargin(testsOf(installation)),
  };
  return {
    title: head.title,
    boards: boards.length,
    ways: boards.reduce((sum, { board }) => sum + board.ways.length, 0),
    ...counts,
    ...heldOpen(installation),
    ...Object.fromEntries(Object.entries(known).filter(([, value]) => value !== undefined)),
  };
}

/** Of the instruments of the last tests: what an earlier visit used may be long gone. */
function firstToLapse(
  { names }: Installation,
  days: readonly TestDay[],
  tested: string,
): RegisterRow["calibration"] | undefined {
  const used = days.filter(({ on }) => !isOlder(on.value, tested)).flatMap((day) => day.with.map(({ value }) => value));
  const dated = [...new Set(used)].flatMap((instrument) => {
    const described = names.instruments.get(instrument)?.[0];
    const facts = described && factsOf(described);
    const due = facts && dueOf(facts);
    return due === undefined ? [] : [{ instrument, due }];
  });
  return dated.sort((a, b) => a.due.localeCompare(b.due))[0];
}

/** What is asked and not answered, and what was not measured. */
function heldOpen({ head, boards }: Installation): Pick<RegisterRow, "queries" | "limitations"> {
  const blocks = [
    ...blocksWithin(head.header, head.facts),
    ...boards.flatMap(({ board }) => [
      ...blocksWithin(board.head.header, board.head.facts),
      ...board.ways.flatMap((way) => blocksWithin(way.header, way.facts)),
    ]),
  ].map(({ facts }) => facts);
  return {
    queries: blocks.reduce((sum, facts) => sum + queriesIn(facts).open.length, 0),
    limitations: blocks.flatMap(({ list }) => list).reduce((sum, fact) => sum + limitationsOf(fact), 0),
  };
}

function testsOf(installation: Installation): PlacedTest[] {
  const own = planSupply(installation).map(
    (test): PlacedTest => ({ where: "supply", test, way: undefined, context: undefined }),
  );
  const inBoards = installation.boards.flatMap(({ board, context }) => [
    ...planBoard(context).map(
      (test): PlacedTest => ({ where: `board ${board.head.name}`, test, way: undefined, context }),
    ),
    ...board.ways.flatMap((way) => {
      const study = studyWay(way, context);
      const where = `${board.head.name}/${way.id}`;
      return [...planDead(study), ...planLive(study)].map((test): PlacedTest => ({ where, test, way, context }));
    }),
  ]);
  return [...own, ...inBoards].filter(({ test }) => test.recorded !== undefined);
}
