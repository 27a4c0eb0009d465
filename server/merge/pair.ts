/**
 * Which items of three versions are the same thing. Keys decide: the word and what it is about; a number that a way had
 * before, where it says so or where the circuit moved without any other change. What only looks alike is not paired.
 */
import { rowOf } from "../../grammar/vocabulary.ts";
import { bare, type Item, isSameBody, saysSame } from "./item.ts";

/** What the three versions have of one thing. More than one item where several lines say it together. */
export interface Group {
  readonly base: readonly Item[];
  readonly ours: readonly Item[];
  readonly theirs: readonly Item[];
  /** Several things that must not be taken from two sides at once: they are taken from one, or asked about. */
  readonly several?: true;
}

const sides = ["base", "ours", "theirs"] as const;
export type Side = (typeof sides)[number];
type Versions = Readonly<Record<Side, readonly Item[]>>;

type Claims = ReadonlyMap<Item, readonly string[]>;

export function groupsOf(versions: Versions): Group[] {
  const moved = {
    base: new Map(),
    ours: movedClaims(versions.base, versions.ours),
    theirs: movedClaims(versions.base, versions.theirs),
  };
  const broken = new Set(sides.flatMap((side) => versions[side].filter((item) => item.broken).map(({ word }) => word)));
  const union = new Union();
  const claimOf = new Map<Item, string>();
  for (const side of sides)
    for (const [index, item] of versions[side].entries()) {
      const own = moved[side].get(item) ?? item.claims;
      // Where a line of a word cannot be read, nothing tells the lines of that word apart.
      const all = broken.has(item.word) && !item.body ? [`? ${item.word}`, ...own] : own;
      const [first = `${side} ${index}`, ...others] = all;
      union.add(first);
      for (const other of others) union.join(first, other);
      claimOf.set(item, first);
    }
  return collided(gathered(versions, (item) => union.find(claimOf.get(item) ?? "")));
}

function gathered(versions: Versions, keyOf: (item: Item) => string): Group[] {
  const groups = new Map<string, Record<Side, Item[]>>();
  for (const side of sides)
    for (const item of versions[side]) {
      const key = keyOf(item);
      const group = groups.get(key) ?? { base: [], ours: [], theirs: [] };
      group[side].push(item);
      groups.set(key, group);
    }
  return [...groups.values()];
}

/** Puts groups together. */
export function joined(groups: readonly Group[], pairs: readonly (readonly [Group, Group])[]): Group[] {
  if (pairs.length === 0) return [...groups];
  const union = new Union();
  const name = new Map(groups.map((group, index) => [group, `${index}`]));
  for (const key of name.values()) union.add(key);
  for (const [a, b] of pairs) union.join(name.get(a) ?? "", name.get(b) ?? "");
  const parts = Map.groupBy(groups, (group) => union.find(name.get(group) ?? ""));
  return [...parts.values()].map((some) => ({
    base: some.flatMap(({ base }) => base),
    ours: some.flatMap(({ ours }) => ours),
    theirs: some.flatMap(({ theirs }) => theirs),
    ...(some.length > 1 || some.some(({ several }) => several) ? { several: true as const } : {}),
  }));
}

/** Two things that would have one key in the result, though in each version only one of them had it. */
function collided(groups: readonly Group[]): Group[] {
  const holders = new Map<string, Group>();
  const pairs: [Group, Group][] = [];
  for (const group of groups)
    for (const claim of resultClaims(group)) {
      const before = holders.get(claim);
      if (before && before !== group) pairs.push([before, group]);
      else holders.set(claim, group);
    }
  return pairs.length === 0 ? [...groups] : collided(joined(groups, pairs));
}

function resultClaims({ base, ours, theirs }: Group): readonly string[] {
  const [was, here, there] = [base, ours, theirs].map((items) => items.flatMap(({ claims }) => claims));
  const same = (a: readonly string[] = [], b: readonly string[] = []) => a.join("\n") === b.join("\n");
  // An edit of what the other side removed stays, as a conflict, under the key it has there.
  if (here?.length === 0 || there?.length === 0) {
    const [kept = [], items, other] = here?.length === 0 ? [there, theirs, ours] : [here, ours, theirs];
    return base.length > 0 && other?.length === 0 && saysSame(items ?? [], base) ? [] : kept;
  }
  return (same(here, was) ? there : same(there, was) ? here : [...(here ?? []), ...(there ?? [])]) ?? [];
}

/** Under which claims a side's items go that have another number or name than in the base. */
function movedClaims(base: readonly Item[], side: readonly Item[]): Claims {
  const claims = new Map<Item, readonly string[]>();
  for (const [item, source] of soleInstallation(base, side)) claims.set(item, source.claims);
  const movable = ({ row }: Item): boolean =>
    row?.opens !== undefined && rowOf(row.opens as "way", "formerly") !== undefined;
  const before = base.filter(movable);
  const after = side.filter(movable);
  if (before.length === 0 || after.length === 0) return claims;
  const was = byKey(before);
  const is = byKey(after);
  const left = (items: readonly Item[], others: ReadonlyMap<string, Item>) =>
    onlyOnes(items.filter((item) => !isContentSame(item, others.get(item.key))));
  const contents = { before: left(before, is), after: left(after, was) };
  const taken = new Set<Item>();
  for (const item of after) {
    const source =
      formerOf(item, was) ?? (isContentSame(item, was.get(item.key)) ? undefined : movedFrom(item, contents));
    if (!source || taken.has(source)) continue;
    taken.add(source);
    claims.set(item, source.claims);
  }
  for (const item of after) {
    const same = was.get(item.key);
    if (claims.has(item) || !same) continue;
    if (taken.has(same) || tookTitle(item, same, before, after))
      claims.set(
        item,
        item.claims.map((claim) => `new ${claim}`),
      );
  }
  return claims;
}

/** The installation of a file that has one is the same under another title. */
function soleInstallation(base: readonly Item[], side: readonly Item[]): [Item, Item][] {
  const soleOf = (items: readonly Item[]): Item | undefined => {
    const [sole, ...others] = items.filter(({ row }) => row?.opens === "installation");
    return others.length === 0 ? sole : undefined;
  };
  const [was, is] = [soleOf(base), soleOf(side)];
  return was && is ? [[is, was]] : [];
}

const byKey = (items: readonly Item[]): ReadonlyMap<string, Item> => new Map(items.map((item) => [item.key, item]));

/** Whether two say the same, whatever they are called. */
const isContentSame = (a: Item, b: Item | undefined): boolean =>
  b !== undefined && a.rest === b.rest && isSameBody(a.body, b.body);

/** What is in an item besides its name: nothing where it is empty. */
const contentOf = (item: Item): string =>
  item.body && item.body.items.length > 0 ? bare({ ...item, spelt: item.rest }) : "";

function onlyOnes(items: readonly Item[]): ReadonlyMap<string, Item> {
  const all = Map.groupBy(items, contentOf);
  const single = [...all].flatMap(([content, [item, ...others]]) =>
    content !== "" && item && others.length === 0 ? [[content, item] as const] : [],
  );
  return new Map(single);
}

/** `formerly 5` that the base does not have yet. */
function formerOf(item: Item, was: ReadonlyMap<string, Item>): Item | undefined {
  const names = (one: Item | undefined): string[] =>
    (one?.body?.items ?? []).filter(({ word }) => word === "formerly").map(({ key }) => key.replace(/^formerly /, ""));
  const known = [...was.values()].flatMap(names);
  const fresh = names(item).filter((name) => !known.includes(name));
  return fresh.map((name) => was.get(`${item.word} ${name}`)).find((source) => source && source.key !== item.key);
}

interface Contents {
  readonly before: ReadonlyMap<string, Item>;
  readonly after: ReadonlyMap<string, Item>;
}

/** The one item of the base that says the same to the letter under another name, and under its own no longer does. */
function movedFrom(item: Item, { before, after }: Contents): Item | undefined {
  const content = contentOf(item);
  const source = content === "" ? undefined : before.get(content);
  return source && source.key !== item.key && after.get(content) === item ? source : undefined;
}

/** Whether a number was given to another circuit: the title it had is now elsewhere, or its title was elsewhere. */
function tookTitle(item: Item, same: Item, before: readonly Item[], after: readonly Item[]): boolean {
  const { title } = item;
  if (title === same.title) return false;
  const has = (items: readonly Item[], wanted: string | undefined, but: Item) =>
    wanted !== undefined && items.some((other) => other !== but && other.title === wanted);
  const moved = has(after, same.title, item) && !has(before, same.title, same);
  const arrived = has(before, title, same) && !has(after, title, item);
  return moved || arrived;
}

class Union {
  readonly #parent = new Map<string, string>();

  add(key: string): void {
    if (!this.#parent.has(key)) this.#parent.set(key, key);
  }

  find(key: string): string {
    let at = key;
    for (;;) {
      const parent = this.#parent.get(at) ?? at;
      if (parent === at) return at;
      const above = this.#parent.get(parent) ?? parent;
      this.#parent.set(at, above);
      at = above;
    }
  }

  join(a: string, b: string): void {
    this.add(a);
    this.add(b);
    this.#parent.set(this.find(b), this.find(a));
  }
}
