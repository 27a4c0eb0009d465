import { type Block, boardBlocks, ownBlocks } from "../circuit/blocks.ts";
import { memoByObject } from "../circuit/kept.ts";
import type { Board } from "../model/file.ts";
import type { Installation, InstrumentFact } from "../model/installation.ts";
import { type Fact, Facts, type Val } from "../model/values.ts";

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
    // The day of a supply's plain lines stands beside them, not round them.
    const read = fact.word === "measured" ? besides(facts) : fact.inner;
    return dated.has(fact.word) && on ? [{ header: fact, on, with: used, facts: read }] : [];
  });

const besides = ({ kind, list, broken }: Facts): Facts =>
  new Facts(
    kind,
    list.filter(({ inner }) => !inner),
    broken,
  );

/** The days of tests in an installation's own lines: those of its supply. */
export const ownTestDays = (installation: Pick<Installation, "head">): TestDay[] =>
  ownBlocks(installation).flatMap(daysIn);

/** The days of tests of a board and its ways. */
export const boardTestDays = memoByObject((board: Board): readonly TestDay[] => boardBlocks(board).flatMap(daysIn));

/** A day of tests, and the name on its line that says with what. */
export interface NamedUse {
  readonly day: TestDay;
  readonly name: Val<string>;
  /** Whether a departure stands beside it: it may suppress this use, and must not suppress others. */
  readonly apart: boolean;
}

/** An instrument with days it was used on; never none. */
export interface InstrumentUses {
  readonly name: string;
  readonly facts: Facts<"instrument">;
  readonly uses: readonly NamedUse[];
}

/** The uses of one instrument in the order of the file, with the first and the last of their days. */
interface Used {
  readonly uses: readonly NamedUse[];
  readonly from: string;
  readonly until: string;
}

function byInstrument(days: readonly TestDay[], departed = false): ReadonlyMap<string, Used> {
  const groups = Map.groupBy(
    days.flatMap((day) => {
      const apart = departed || /\bdeparture\b/.test(day.header.segment.text);
      return day.with.map((name) => ({ day, name, apart }));
    }),
    ({ name }) => name.value,
  );
  return new Map(
    [...groups].map(([name, uses]) => {
      const on = uses.map(({ day }) => day.on.value).sort();
      return [name, { uses, from: on[0] ?? "", until: on.at(-1) ?? "" }];
    }),
  );
}

const usesOnBoard = memoByObject((board: Board) =>
  byInstrument(boardTestDays(board), board.head.facts.has("departure")),
);

/**
 * The uses of each instrument before or after a day of its own, such as that its calibration ran out. Boards all of
 * whose tests lie on the other side are not looked into.
 */
export function usesBeyond(
  installation: Installation,
  side: "before" | "after",
  dayOf: (facts: Facts<"instrument">) => string | undefined,
): InstrumentUses[] {
  const own = byInstrument(ownTestDays(installation));
  return instrumentsUsed(installation).flatMap((instrument) => {
    const facts = factsOf(instrument);
    const day = facts && dayOf(facts);
    if (!facts || day === undefined) return [];
    const name = instrument.args.name.value;
    const beyond = (on: string): boolean => (side === "after" ? on > day : on < day);
    const all = [own.get(name), ...installation.boards.map(({ board }) => usesOnBoard(board).get(name))];
    const uses = all.flatMap((used) =>
      used && beyond(side === "after" ? used.until : used.from)
        ? used.uses.filter((use) => beyond(use.day.on.value))
        : [],
    );
    const apart = uses.filter((use) => use.apart);
    const together = uses.filter((use) => !use.apart);
    const groups = [...(together.length > 0 ? [together] : []), ...apart.map((use) => [use])];
    return groups.map((group) => ({ name, facts, uses: group }));
  });
}

const namesUsedOn = memoByObject((board: Board) => new Set(namesIn(boardTestDays(board))));

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
