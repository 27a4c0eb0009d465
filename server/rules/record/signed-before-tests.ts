import { memoByObject, memoOfBoards } from "../../circuit/kept.ts";
import type { Board } from "../../model/file.ts";
import { inspectionFor, inspectionsOf } from "../../model/inspections.ts";
import type { Fact, FactOf, Facts } from "../../model/values.ts";
import { boardTestDays, ownTestDays, type TestDay } from "../../readings/instruments.ts";
import { factSpot, installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

type Signed = FactOf<"way", "tested">;

/** The latest of several days of tests. */
const latestOf = (days: readonly TestDay[]): TestDay | undefined =>
  days.reduce<TestDay | undefined>(
    (latest, day) => (latest && latest.on.value >= day.on.value ? latest : day),
    undefined,
  );

const daysOfWay = (facts: Facts<"way">): TestDay[] =>
  [...facts.all("dead"), ...facts.all("live")].flatMap((header) =>
    header.args.on ? [{ header, on: header.args.on, with: header.args.with ?? [], facts: header.inner }] : [],
  );

/** The latest day of a board whose tests nobody nearer than the board signs. */
const unsignedOnBoard = memoByObject((board: Board): readonly TestDay[] => {
  const signedNearer = new Set<Fact>(
    board.ways
      .filter(({ facts }) => facts.has("tested"))
      .flatMap(({ facts }) => [...facts.all("dead"), ...facts.all("live")]),
  );
  return boardTestDays(board).filter(({ header }) => !signedNearer.has(header));
});

const latestUnsigned = memoByObject((board: Board): TestDay | undefined => latestOf(unsignedOnBoard(board)));

const latestOnBoards = memoOfBoards((board) => ({ board, latest: latestUnsigned(board) }));

function checkSignature(signed: Signed | undefined, latest: TestDay | undefined, report: Reporter): void {
  const on = signed?.args.on?.value;
  if (!signed || on === undefined || !latest || latest.on.value <= on) return;
  report(factSpot(signed), {
    message: `Signed as tested on ${on}, but the last tests are dated ${latest.on.value}: correct the date, or sign for the later tests.`,
    related: [{ spot: wordSpot(latest.header), message: `Tests dated ${latest.on.value}.` }],
  });
}

export default installationRule({
  id: "record/signed-before-tests",
  severity: "warning",
  since: "0.1",
  title: "The tests were signed before the last of them was made.",
  why: "A signature covers readings that had been taken. A date before them is a slip, or readings were added afterwards and nobody has signed for those.",
  clauses: ["644.1", "643.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
  tested       by "K.A." 2026-03-01
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  dead 2026-03-04 {
    R1+R2        0.18 Ω
  }
}`,
      good: `way 1 radial "Oven" {
  tested       by "K.A." 2026-03-04
  dead 2026-03-04 {
    R1+R2        0.18 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    const signed = installation.head.facts.one("tested");
    const last = signed?.args.on?.value;
    if (!signed || last === undefined) return;
    const inspections = inspectionsOf(installation.head).filter(({ facts }) => facts.has("tested"));
    const ofBoards = latestOnBoards(installation).flatMap(({ board, latest }) => {
      // Most boards hold nothing later: none of their ways is looked into.
      if (!latest || latest.on.value <= last || board.head.facts.has("tested")) return [];
      const circuits = new Map(
        board.ways.flatMap((way) => daysOfWay(way.facts).map(({ header }) => [header, way] as const)),
      );
      // What belongs to an inspection is signed for there.
      return unsignedOnBoard(board).filter(({ header, on }) => {
        const circuit = { board: board.head, way: circuits.get(header) ?? { id: "" } };
        return on.value > last && inspectionFor(inspections, on.value, circuit) === undefined;
      });
    });
    checkSignature(signed, latestOf([...ownTestDays(installation), ...ofBoards]), report);
  },
  checkBoard({ board }, report) {
    checkSignature(board.head.facts.one("tested"), latestUnsigned(board), report);
    for (const { facts } of board.ways) checkSignature(facts.one("tested"), latestOf(daysOfWay(facts)), report);
  },
});
