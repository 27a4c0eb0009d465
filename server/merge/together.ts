/** What must not be taken from two sides at once: lines that govern others, and tests of one day that disagree. */
import type { WordRow } from "../../grammar/params.ts";
import { bare, type Item, saysSame } from "./item.ts";
import { type Group, joined, type Side } from "./pair.ts";

/** Lines by which others of their block are read, and which those are: who changes one changes what the others mean. */
const governing: Readonly<Record<string, (row: WordRow | undefined) => boolean>> = {
  "struck-out": (row) => row?.remark === undefined,
  measured: (row) => row?.reads !== undefined,
};

/** Puts together what must not be taken from two sides at once. */
export function together(groups: readonly Group[]): Group[] {
  const governed = groups.flatMap((group) => {
    const governs = governing[itemsIn(group)[0]?.word ?? ""];
    if (!governs) return [];
    const [by, other] = [changedBy(group, "ours"), changedBy(group, "theirs")];
    const isChanged = (one: Group) => (by && changedBy(one, "theirs")) || (other && changedBy(one, "ours"));
    const isGoverned = (one: Group) => one !== group && itemsIn(one).some(({ row }) => governs(row));
    return groups.filter((one) => isGoverned(one) && isChanged(one)).map((one) => [group, one] as const);
  });
  return joined(groups, [...governed, ...sameDay(groups)]);
}

/** What several groups were put together from stands on each side as that version has it, whichever side is ours. */
export function inTheirOrder(
  groups: readonly Group[],
  versions: Readonly<Record<Side, readonly Item[]>>,
): readonly Group[] {
  if (!groups.some(({ several }) => several)) return groups;
  const ordered = (group: Group, side: Side): readonly Item[] => {
    const places = new Map(versions[side].map((item, place) => [item, place]));
    return group[side].toSorted((one, other) => (places.get(one) ?? 0) - (places.get(other) ?? 0));
  };
  return groups.map((group) =>
    group.several
      ? { ...group, base: ordered(group, "base"), ours: ordered(group, "ours"), theirs: ordered(group, "theirs") }
      : group,
  );
}

const itemsIn = ({ base, ours, theirs }: Group): readonly Item[] => [...ours, ...theirs, ...base];

const changedBy = (group: Group, side: "ours" | "theirs"): boolean => !saysSame(group[side], group.base);

/** Tests of one day by different instruments, where each side has another reading of the same thing. */
function sameDay(groups: readonly Group[]): (readonly [Group, Group])[] {
  const days = Map.groupBy(groups, dayOf);
  return [...days].flatMap(([day, some]) =>
    day === ""
      ? []
      : some.flatMap((one, index) =>
          some.slice(index + 1).flatMap((other) => (disagree(one, other) ? [[one, other] as const] : [])),
        ),
  );
}

function dayOf({ base, ours, theirs }: Group): string {
  const [item] = [...ours, ...theirs, ...base];
  return item?.row?.opens !== undefined && item.row.params.on !== undefined
    ? item.key.split(" ").slice(0, 2).join(" ")
    : "";
}

function disagree(one: Group, other: Group): boolean {
  const both = (a: ReadonlySet<string>, b: ReadonlySet<string>) => [...a].some((claim) => b.has(claim));
  return both(newIn(one, "ours"), newIn(other, "theirs")) || both(newIn(one, "theirs"), newIn(other, "ours"));
}

/** What a side says in some blocks that the base did not say so. */
function newIn(group: Group, side: "ours" | "theirs"): ReadonlySet<string> {
  const inner = (items: readonly Item[]) => items.flatMap(({ body }) => body?.items ?? []);
  const was = new Set(inner(group.base).map(bare));
  return new Set(
    inner(group[side])
      .filter((item) => !was.has(bare(item)))
      .flatMap(({ claims }) => claims),
  );
}
