import { type Block, boardBlocks, ownBlocks } from "../circuit/blocks.ts";
import { memoByObject, memoOfBoards, memoOfWhole } from "../circuit/kept.ts";
import { allWrittenAt, writtenAt } from "../model/fact-values.ts";
import type { Board } from "../model/file.ts";
import type { Installation, InstrumentFact } from "../model/installation.ts";
import { type Fact, Facts, innerOf, type Val } from "../model/values.ts";
import { inOrder } from "../text/order.ts";

/** A dated line that says, or should say, with which instrument its readings were taken. */
export interface TestDay {
  readonly header: Fact;
  readonly on: Val<string>;
  readonly with: readonly Val<string>[];
  readonly facts: Facts | undefined;
}

const dated: ReadonlySet<string> = new Set(["dead", "live", "measured"]);

const daysIn = ({ facts }: Block): TestDay[] =>
  facts.list.flatMap((fact) => {
    const on = dated.has(fact.word) ? writtenAt(fact, "on") : undefined;
    // The day of a supply's plain lines stands beside them, not round them.
    const read = fact.word === "measured" ? besides(facts) : fact.inner;
    return on ? [{ header: fact, on, with: allWrittenAt(fact, "with"), facts: read }] : [];
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
interface InstrumentUses {
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

const usesOnBoards = memoOfBoards((board) => byInstrument(boardTestDays(board), board.head.facts.has("departure")));

/** The uses of each instrument, in the installation's own lines first and then board by board. */
const usesOfEach = memoOfWhole((installation: Installation): ReadonlyMap<string, readonly Used[]> => {
  const found = new Map<string, Used[]>();
  for (const uses of [byInstrument(ownTestDays(installation)), ...usesOnBoards(installation)]) {
    for (const [name, used] of uses) {
      const before = found.get(name);
      if (before) before.push(used);
      else found.set(name, [used]);
    }
  }
  return found;
});

/** Days between two others, both left out, and the line they follow from. */
export interface Span {
  readonly after?: string;
  readonly before?: string;
  readonly fact: Fact;
}

/** One calibration: from when, and until when where that is stated. */
interface Calibration {
  readonly fact: Fact;
  readonly from: string;
  readonly due?: string;
  /** The line that states `due`. */
  readonly dueFact?: Fact;
}

/**
 * The calibrations of an instrument, the earliest first. Its own `due` line is that of the latest, or of a calibration
 * whose day is not known.
 */
export function calibrationsOf(facts: Facts<"instrument">): readonly Calibration[] {
  const stated = facts.one("due");
  const ofLatest = stated ? { due: stated.args.on.value, dueFact: stated } : {};
  const dated = facts
    .all("calibrated")
    .map((fact) => ({
      fact,
      from: fact.args.on.value,
      ...(fact.args.due ? { due: fact.args.due.value, dueFact: fact } : {}),
    }))
    .toSorted((one, other) => inOrder(one.from, other.from));
  const latest = dated.at(-1);
  if (!latest) return stated ? [{ fact: stated, from: "", ...ofLatest }] : [];
  return [...dated.slice(0, -1), { ...ofLatest, ...latest }];
}

/** The days on which nothing shows that an instrument was in order, each with the line it follows from. */
export const lapsesOf = (facts: Facts<"instrument">): readonly (Span & { readonly day: string })[] =>
  calibrationsOf(facts).flatMap(({ due, dueFact }, at, all) => {
    const next = all[at + 1]?.from;
    return due && dueFact ? [{ after: due, ...(next ? { before: next } : {}), fact: dueFact, day: due }] : [];
  });

/** The day the calibration in force on a day runs out; of the latest where none is asked for. */
export function dueOf(facts: Facts<"instrument">, on?: string): string | undefined {
  const all = calibrationsOf(facts);
  return (on === undefined ? all.at(-1) : all.findLast(({ from }) => from <= on))?.due;
}

/**
 * The uses of each instrument within spans of its own, such as after a calibration ran out and before the next. Boards
 * none of whose tests can lie there are not looked into.
 */
export function usesWithin<S extends Span>(
  installation: Installation,
  spansOf: (facts: Facts<"instrument">) => readonly S[],
): (InstrumentUses & { readonly span: S })[] {
  const all = usesOfEach(installation);
  return instrumentsUsed(installation).flatMap((instrument) => {
    const facts = factsOf(instrument);
    if (!facts) return [];
    const name = instrument.args.name.value;
    return spansOf(facts).flatMap((span) => {
      const { after = "", before = "9999" } = span;
      const uses = (all.get(name) ?? []).flatMap((used) =>
        used.until > after && used.from < before
          ? used.uses.filter(({ day: { on } }) => on.value > after && on.value < before)
          : [],
      );
      const apart = uses.filter((use) => use.apart);
      const together = uses.filter((use) => !use.apart);
      const groups = [...(together.length > 0 ? [together] : []), ...apart.map((use) => [use])];
      return groups.map((group) => ({ name, facts, uses: group, span }));
    });
  });
}

/** What is known of an instrument. */
export const factsOf = (instrument: InstrumentFact): Facts<"instrument"> | undefined =>
  innerOf(instrument, "instrument");

/** The instruments an installation's tests were made with, each once. */
export const instrumentsUsed = (installation: Installation): readonly InstrumentFact[] =>
  [...usesOfEach(installation).keys()].flatMap((name) => installation.names.instruments.get(name)?.[0] ?? []);
