import { type Block, boardBlocks, ownBlocks } from "../circuit/blocks.ts";
import { memoOfBoards, memoOfWhole } from "../circuit/kept.ts";
import { Memo } from "../memo/memo.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact } from "../model/values.ts";
import { comparison } from "../tables/comparison.ts";
import { type Edition, editions } from "../tables/editions.ts";

/** What the dates of an installation say of the edition it is judged by. Days as ISO. */
interface EditionDates {
  /** The first design date of new work. */
  readonly designed: string | undefined;
  /** The edition that had taken this one's place by then. */
  readonly supersededBy: Edition | undefined;
  readonly lastTest: string | undefined;
}

interface Days {
  readonly designed: string | undefined;
  readonly lastTest: string | undefined;
}

function daysIn(blocks: readonly Block[]): Days {
  const facts = blocks.flatMap((block) => block.facts.list);
  const days = (...words: string[]) => facts.flatMap((fact) => (words.includes(fact.word) ? dayOf(fact) : [])).sort();
  return { designed: days("designed")[0], lastTest: days("dead", "live").at(-1) };
}

const daysOnBoards = memoOfBoards((board) => daysIn(boardBlocks(board)));

/** The first design and the last test of an installation and its boards. */
const daysOf = memoOfWhole((installation: Installation): Days => {
  const parts = [daysIn(ownBlocks(installation)), ...daysOnBoards(installation)];
  const designed = parts.flatMap((part) => part.designed ?? []).sort()[0];
  const lastTest = parts
    .flatMap((part) => part.lastTest ?? [])
    .sort()
    .at(-1);
  return { designed, lastTest };
});

const dayOf = ({ args }: Fact): string[] =>
  args.on && "value" in args.on && typeof args.on.value === "string" ? [args.on.value] : [];

export function editionDates(installation: Installation, edition: Edition): EditionDates {
  const { designed: firstDesigned, lastTest } = daysOf(installation);
  const existing = installation.head.facts.one("work")?.args.work.value === "existing";
  const designed = existing ? undefined : firstDesigned;
  const successor = successorOf(edition);
  const since = successor && addMonths(successor.from, comparison.editionChange.value);
  const superseded = designed !== undefined && since !== undefined && designed >= since;
  return { designed, supersededBy: superseded ? newestAt(designed) : undefined, lastTest };
}

/** The next edition that asks for anything else. One that only adds a rule for feeding from both sides is not counted. */
const successorOf = (edition: Edition): Edition | undefined => successors.of(edition, findSuccessor);

/** What follows from the tables alone lies with the edition it is for. */
const successors = new Memo<Edition, Edition | undefined>();

function findSuccessor(edition: Edition): Edition | undefined {
  const at = editions.indexOf(edition);
  return editions.slice(at + 1).find((next) => next.unseen !== undefined || asksOf(next) !== asksOf(edition));
}

const asksOf = (edition: Edition): string =>
  JSON.stringify([
    edition.cmin.value,
    edition.socketDisconnectionScope,
    edition.fixedDisconnectionScope,
    edition.socketRcdUpTo,
    edition.lightingRcdInDwellings,
    edition.typeAcRestricted,
    edition.rcdTest,
    edition.insulationMinimum.value,
    edition.afdd,
    edition.spd,
  ]);

const newestAt = (day: string): Edition | undefined => editions.filter(({ from }) => from <= day).at(-1);

function addMonths(day: string, months: number): string {
  const date = new Date(`${day}T00:00:00Z`);
  date.setUTCMonth(date.getUTCMonth() + months);
  return date.toISOString().slice(0, 10);
}
