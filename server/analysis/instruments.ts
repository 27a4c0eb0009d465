import type { Board } from "../model/file.ts";
import type { Installation, InstrumentFact, Names } from "../model/installation.ts";
import type { Fact, Facts, Val } from "../model/values.ts";
import { type Block, boardBlocks, ownBlocks } from "./blocks.ts";
import { keptWith } from "./kept.ts";

/** A dated line that says, or should say, with which instrument its readings were taken. */
export interface TestDay {
  readonly header: Fact;
  readonly on: Val<string>;
  readonly with: readonly Val<string>[];
  readonly facts: Facts | undefined;
}

const dated: ReadonlySet<string> = new Set(["dead", "live", "measured"]);

interface DatedArgs {
  readonly on?: Val<string>;
  readonly with?: readonly Val<string>[];
}

const daysIn = ({ facts }: Block): TestDay[] =>
  facts.list.flatMap((fact) => {
    const { on, with: used = [] } = fact.args as DatedArgs;
    return dated.has(fact.word) && on ? [{ header: fact, on, with: used, facts: fact.inner }] : [];
  });

/** The days of tests in an installation's own lines: those of its supply. */
export const ownTestDays = (installation: Pick<Installation, "head">): TestDay[] =>
  ownBlocks(installation).flatMap(daysIn);

/** The days of tests of a board and its ways. */
export const boardTestDays = keptWith((board: Board): readonly TestDay[] => boardBlocks(board).flatMap(daysIn));

/** An instrument used on a day of tests, with the name that says so. */
export interface DatedUse {
  readonly day: TestDay;
  readonly name: Val<string>;
  readonly facts: Facts<"instrument">;
}

/** Every use of an instrument that is described, the first of a name as a reference would find it. */
export const usesOn = (days: readonly TestDay[], names: Names): DatedUse[] =>
  days.flatMap((day) =>
    day.with.flatMap((name) => {
      const instrument = names.instruments.get(name.value)?.[0];
      const facts = instrument && factsOf(instrument);
      return facts ? [{ day, name, facts }] : [];
    }),
  );

const namesUsedOn = keptWith((board: Board) => new Set(namesIn(boardTestDays(board))));

const namesIn = (days: readonly TestDay[]): string[] => days.flatMap((day) => day.with.map(({ value }) => value));

/** What is known of an instrument. */
export const factsOf = (instrument: InstrumentFact): Facts<"instrument"> | undefined =>
  instrument.inner as Facts<"instrument"> | undefined;

/** The instruments an installation's tests were made with, each once. */
export function instrumentsUsed(installation: Installation): InstrumentFact[] {
  const names = new Set(namesIn(ownTestDays(installation)));
  for (const { board } of installation.boards) for (const name of namesUsedOn(board)) names.add(name);
  return [...names].flatMap((name) => installation.names.instruments.get(name)?.[0] ?? []);
}
