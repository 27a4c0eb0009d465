import type { Installation } from "../model/installation.ts";
import { comparison } from "../tables/comparison.ts";
import { type Edition, editions } from "../tables/editions.ts";
import { blocksIn, partsOf } from "./blocks.ts";
import { keptWith } from "./kept.ts";

/** What the dates of an installation say of the edition it is judged by. Days as ISO. */
export interface EditionDates {
  /** The first design date of new work. */
  readonly designed: string | undefined;
  /** The edition that had taken this one's place by then. */
  readonly supersededBy: Edition | undefined;
  readonly lastTest: string | undefined;
}

const daysIn = keptWith((part: Parameters<typeof blocksIn>[0]) => {
  const facts = blocksIn(part).flatMap((block) => block.facts.list);
  const days = (words: readonly string[]): string[] =>
    facts
      .filter(({ word }) => words.includes(word))
      .flatMap(({ args }) =>
        args.on && "value" in args.on && typeof args.on.value === "string" ? [args.on.value] : [],
      );
  return { designed: days(["designed"]), tests: days(["dead", "live"]) };
});

const earlier = (a: string | undefined, b: string): string => (a === undefined || b < a ? b : a);
const later = (a: string | undefined, b: string): string => (a === undefined || b > a ? b : a);

export function editionDates(installation: Installation, edition: Edition): EditionDates {
  const parts = partsOf(installation).map(daysIn);
  const firstDesigned = parts.flatMap(({ designed }) => designed).reduce<string | undefined>(earlier, undefined);
  const existing = installation.head.facts.one("work")?.args.work.value === "existing";
  const designed = existing ? undefined : firstDesigned;
  const successor = successorOf(edition);
  const since = successor && addMonths(successor.from, comparison.editionChange.value);
  const superseded = designed !== undefined && since !== undefined && designed >= since;
  const lastTest = parts.flatMap(({ tests }) => tests).reduce<string | undefined>(later, undefined);
  return { designed, supersededBy: superseded ? newestAt(designed) : undefined, lastTest };
}

/** The next edition that asks for anything else. One that only adds a rule for feeding from both sides is not counted. */
function successorOf(edition: Edition): Edition | undefined {
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
