/**
 * Which board and which way of one version is which of the other. They are known by what they are: what the schedule
 * states itself (`formerly`), their number, title, cable, points and readings. A name alone pairs only what nothing else
 * claims.
 */
import type { Board, Way } from "../../model/file.ts";
import { entriesOfWay } from "../../readings/entries.ts";
import type { Renamed } from "../../readings/entry-text.ts";
import { formerBoard, formerWay } from "./formerly.ts";

/** What both versions have, or one of them. */
export type Matched<T> =
  | { readonly old: T; readonly now: T }
  | { readonly old: T; readonly now: undefined }
  | { readonly old: undefined; readonly now: T };

/** In the order of the later version; what went comes last. */
export function matchBoards(before: readonly Board[], after: readonly Board[]): Matched<Board>[] {
  const pairs = new Map<Board, Board>();
  const left = new Set(before);
  const pair = (now: Board, old: Board | undefined): void => {
    if (!old || pairs.has(now) || !left.delete(old)) return;
    pairs.set(now, old);
  };
  const byName = Map.groupBy(before, nameOfBoard);
  const firstByName = new Map([...byName].flatMap(([name, [first]]) => (first ? [[name, first] as const] : [])));
  for (const now of after) pair(now, formerBoard(now.head, firstByName));
  for (const { now, old } of likeBoards(
    before.filter((old) => left.has(old)),
    after.filter((now) => !pairs.has(now)),
  ))
    pair(now, old);
  for (const now of after)
    pair(
      now,
      byName.get(now.head.name)?.find((old) => left.has(old)),
    );
  return [...after.map((now) => ({ old: pairs.get(now), now })), ...[...left].map((old) => ({ old, now: undefined }))];
}

const nameOfBoard = ({ head }: Board): string => head.name;

/** A board with what it is known by. */
interface KnownBoard {
  readonly board: Board;
  readonly title: string;
  /** The titles of its ways. */
  readonly ways: readonly string[];
  readonly titles: ReadonlySet<string>;
}

function knownBoard(board: Board): KnownBoard {
  const ways = board.ways.map(({ title }) => title.toLowerCase()).filter((title) => title !== "");
  return { board, title: board.head.title.trim().toLowerCase(), ways, titles: new Set(ways) };
}

/**
 * Boards that may be the same, the most alike first. No two are compared that cannot be alike enough: of those that share
 * neither name nor title only boards of the same ways are. Where two of one name and title are alike beyond what any others
 * could be, neither is compared with more.
 */
function likeBoards(before: readonly Board[], after: readonly Board[]): { readonly old: Board; readonly now: Board }[] {
  const olds = before.map(knownBoard);
  const nows = after.map(knownBoard);
  const both = Map.groupBy(olds, nameAndTitle);
  const bothNow = Map.groupBy(nows, nameAndTitle);
  const scored: { old: Board; now: Board; score: number }[] = [];
  const settled = new Set<KnownBoard>();
  for (const [key, [now, ...more]] of bothNow) {
    const [old, ...others] = both.get(key) ?? [];
    const score = now && old && more.length + others.length === 0 ? likenessOfBoards(old, now) : 0;
    if (!now || !old || score <= mostOfOthers) continue;
    scored.push({ old: old.board, now: now.board, score });
    settled.add(now).add(old);
  }
  const open = olds.filter((old) => !settled.has(old));
  const place = new Map(open.map((old, at) => [old, at]));
  const indices = [nameOfKnown, titleOfKnown, waysOfKnown].map((key) => ({ key, of: Map.groupBy(open, key) }));
  for (const now of nows) {
    if (settled.has(now)) continue;
    const near = new Set(indices.flatMap(({ key, of }) => (key(now) === "" ? [] : (of.get(key(now)) ?? []))));
    for (const old of [...near].toSorted((a, b) => (place.get(a) ?? 0) - (place.get(b) ?? 0))) {
      const score = likenessOfBoards(old, now);
      if (score >= enough) scored.push({ old: old.board, now: now.board, score });
    }
  }
  return scored.toSorted((a, b) => b.score - a.score);
}

const nameOfKnown = ({ board }: KnownBoard): string => board.head.name;
const titleOfKnown = ({ title }: KnownBoard): string => title;
const waysOfKnown = ({ titles }: KnownBoard): string => [...titles].sort().join("\0");
const nameAndTitle = ({ board, title }: KnownBoard): string => `${board.head.name}\0${title}`;

/** What a likeness must come to: two facts that a circuit or board does not share with its neighbours by chance. */
const enough = 4;

/** A name, a title, and ways that are all the same. */
const [ofName, ofTitle, ofWays] = [2, 3, 4];

/** The most that two boards can come to which do not share both name and title. */
const mostOfOthers = ofTitle + ofWays;

function likenessOfBoards(old: KnownBoard, now: KnownBoard): number {
  const name = old.board.head.name === now.board.head.name ? ofName : 0;
  const title = old.title !== "" && old.title === now.title ? ofTitle : 0;
  const common = now.ways.filter((way) => old.titles.has(way)).length;
  const share = common / Math.max(old.titles.size, now.ways.length, 1);
  return name + title + (common >= 2 ? ofWays * share : share);
}

/** A way with what it is known by. */
interface Known {
  readonly board: string;
  readonly way: Way;
  readonly title: string;
  /** What it says of cable, length, points and use, by word. */
  readonly stated: ReadonlyMap<string, string>;
  /** Its dated readings. */
  readonly readings: ReadonlySet<string>;
}

export interface PlacedWay {
  readonly board: Board;
  readonly way: Way;
}

const weights: Readonly<Record<string, number>> = {
  cable: 0.75,
  length: 1.5,
  run: 2,
  points: 0.5,
  serves: 0.5,
  device: 0.5,
  Ib: 0.5,
};

function known({ board, way }: PlacedWay, renamed: Renamed): Known {
  const stated = new Map<string, string>();
  const readings = new Set<string>();
  for (const { address, meaning, reading, on } of entriesOfWay(board.head.name, way, renamed)) {
    const word = address.line?.word ?? "";
    if (reading && on !== undefined) readings.add(`${on} ${word} ${address.part ?? ""} ${meaning}`);
    else if (word in weights) stated.set(word, `${stated.get(word) ?? ""} ${meaning}`);
  }
  return { board: board.head.name, way, title: way.title.trim().toLowerCase(), stated, readings };
}

function likeness(old: Known, now: Known, sameBoard: boolean): number {
  const number = sameBoard && old.way.id === now.way.id ? 2 : 0;
  const title = old.title !== "" && old.title === now.title ? 3 : 0;
  let stated = 0;
  for (const [word, meaning] of old.stated) if (now.stated.get(word) === meaning) stated += weights[word] ?? 0;
  let common = 0;
  for (const reading of old.readings) if (now.readings.has(reading)) common++;
  const read = common >= 2 ? 4 * (common / Math.max(old.readings.size, 1)) : 0;
  return number + title + stated + read;
}

/** `sameBoard`: whether it stayed on its board. */
export type WayMatch = Matched<PlacedWay> & { readonly sameBoard: boolean };

/** The ways of all boards: each on its own board first, then those that went from one board and came on another. */
export function matchWays(boards: readonly Matched<Board>[], renamed: Renamed): WayMatch[] {
  const matched: WayMatch[] = [];
  const leftOld: PlacedWay[] = [];
  const leftNow: PlacedWay[] = [];
  for (const { old, now } of boards) {
    const { pairs, gone, fresh } = onBoard(placed(old), placed(now), renamed);
    for (const one of pairs) matched.push({ ...one, sameBoard: true });
    leftOld.push(...gone);
    leftNow.push(...fresh);
  }
  const across = pairUp(leftOld, leftNow, renamed, false);
  return [
    ...matched,
    ...across.pairs.map((one) => ({ ...one, sameBoard: false })),
    ...across.fresh.map((now) => ({ old: undefined, now, sameBoard: true })),
    ...across.gone.map((old) => ({ old, now: undefined, sameBoard: true })),
  ];
}

const placed = (board: Board | undefined): PlacedWay[] => board?.ways.map((way) => ({ board, way })) ?? [];

interface Paired {
  readonly pairs: readonly { readonly old: PlacedWay; readonly now: PlacedWay }[];
  readonly gone: readonly PlacedWay[];
  readonly fresh: readonly PlacedWay[];
}

export const isSpare = ({ way }: Pick<PlacedWay, "way">): boolean => way.kind === "spare";

function onBoard(before: readonly PlacedWay[], after: readonly PlacedWay[], renamed: Renamed): Paired {
  const spares = pairByNumber(before.filter(isSpare), after.filter(isSpare));
  const ways = before.map(({ way }) => way);
  const former = after.flatMap((now) => {
    const old = isSpare(now) ? undefined : formerWay(now.way, ways);
    const place = old && before.find(({ way }) => way === old);
    return place ? [{ old: place, now }] : [];
  });
  const taken = new Set<PlacedWay>(former.flatMap(({ old, now }) => [old, now]));
  const rest = (ways: readonly PlacedWay[]) => ways.filter((one) => !isSpare(one) && !taken.has(one));
  const others = pairUp(rest(before), rest(after), renamed, true);
  return {
    pairs: [...spares.pairs, ...former, ...others.pairs],
    gone: [...spares.gone, ...others.gone],
    fresh: [...spares.fresh, ...others.fresh],
  };
}

/**
 * Those of one number and title are the same without a further look, where there is one of them; the rest by likeness, the
 * most alike first, and as they stand where they are alike.
 */
function pairUp(
  before: readonly PlacedWay[],
  after: readonly PlacedWay[],
  renamed: Renamed,
  sameBoard: boolean,
): Paired {
  const pairs: { old: PlacedWay; now: PlacedWay }[] = [];
  const left = new Set(before);
  const open = new Set(after);
  const pair = (old: PlacedWay, now: PlacedWay): void => {
    if (!left.has(old) || !open.has(now)) return;
    left.delete(old);
    open.delete(now);
    pairs.push({ old, now });
  };
  if (sameBoard) {
    const byName = Map.groupBy(before, nameOf);
    for (const [name, [now, ...alike]] of Map.groupBy(after, nameOf)) {
      const [old, ...others] = byName.get(name) ?? [];
      if (old && now && alike.length + others.length === 0) pair(old, now);
    }
  }
  const olds = [...left].filter((one) => !isSpare(one)).map((one) => ({ one, is: known(one, renamed) }));
  const nows = [...open].filter((one) => !isSpare(one)).map((one) => ({ one, is: known(one, new Map()) }));
  // A board has some tens of ways; where thousands are left over, only those of one title can be the same.
  const many = olds.length * nows.length > 250_000;
  const scored = nows.flatMap((now) =>
    olds.flatMap((old) => {
      if (many && now.is.title !== old.is.title) return [];
      const score = likeness(old.is, now.is, sameBoard);
      return score >= enough ? [{ old: old.one, now: now.one, score }] : [];
    }),
  );
  for (const { old, now } of scored.toSorted((a, b) => b.score - a.score)) pair(old, now);
  const byNumber = sameBoard ? pairByNumber([...left], [...open]) : undefined;
  return byNumber
    ? { pairs: [...pairs, ...byNumber.pairs], gone: byNumber.gone, fresh: byNumber.fresh }
    : { pairs, gone: [...left], fresh: [...open] };
}

const nameOf = ({ way }: PlacedWay): string => `${way.id}\0${way.title}`;

function pairByNumber(before: readonly PlacedWay[], after: readonly PlacedWay[]): Paired {
  const left = Map.groupBy(before, ({ way }) => way.id);
  const pairs: { old: PlacedWay; now: PlacedWay }[] = [];
  const fresh: PlacedWay[] = [];
  for (const now of after) {
    const alike = left.get(now.way.id);
    const [old] = alike ?? [];
    // A spare way that is used now, or the other way about, is not the same circuit.
    if (old && isSpare(old) === isSpare(now)) {
      alike?.shift();
      pairs.push({ old, now });
    } else fresh.push(now);
  }
  const paired = new Set(pairs.map(({ old }) => old));
  return { pairs, gone: before.filter((old) => !paired.has(old)), fresh };
}
