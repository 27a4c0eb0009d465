/** Which schedule of one version is which of the other, and what their comparison comes to. */
import { type Comparison, comparisonOf, isSame } from "../reports/compare/comparison.ts";
import type { LoadedVersion, Schedule } from "./versions.ts";

export interface VersionComparison {
  readonly before: string;
  readonly after: string;
  /** Those that differ. */
  readonly comparisons: readonly PlacedComparison[];
  readonly came: readonly Schedule[];
  readonly went: readonly Schedule[];
  /** How many were compared, and whether parts of installations are among them. */
  readonly compared: number;
  readonly hasParts: boolean;
}

interface PlacedComparison {
  readonly path: string;
  /** The file it was in, where that is another. */
  readonly was?: string;
  readonly comparison: Comparison;
}

export const differs = ({ comparisons, came, went }: VersionComparison): boolean =>
  came.length + went.length > 0 ||
  comparisons.some(({ was, comparison }) => was !== undefined || !isSame(comparison) || hasUnread(comparison));

/** A line that cannot be read may hold a change. */
const hasUnread = ({ unread }: Comparison): boolean => unread.before.join("\n") !== unread.after.join("\n");

export function compareVersions(before: LoadedVersion, after: LoadedVersion): VersionComparison {
  const single = before.single && after.single;
  const { pairs, left } = paired(before.schedules, after.schedules, single);
  const comparisons = pairs.flatMap(({ old, now }): PlacedComparison[] => {
    const moved = !single && old.path !== now.path;
    const isEqual =
      old.texts.length === now.texts.length && old.texts.every((text, index) => text === now.texts[index]);
    if (isEqual && !moved && !single) return [];
    const isPart = old.isPart || now.isPart;
    const comparison = comparisonOf(
      { called: named(before, old), installation: old.installation },
      { called: named(after, now), installation: now.installation },
      isPart ? { partOf: now.path } : {},
    );
    return [{ path: now.path, ...(moved ? { was: old.path } : {}), comparison }];
  });
  const taken = new Set(pairs.map(({ now }) => now));
  return {
    before: before.called,
    after: after.called,
    comparisons: comparisons.filter(
      ({ was, comparison }) => single || was !== undefined || !isSame(comparison) || hasUnread(comparison),
    ),
    came: after.schedules.filter((one) => !taken.has(one)),
    went: left,
    compared: pairs.length + after.same,
    hasParts: after.hasSameParts || pairs.some(({ old, now }) => old.isPart || now.isPart),
  };
}

interface Pair {
  readonly old: Schedule;
  readonly now: Schedule;
}

/** First those of one path and title, then those of one path, then those that were moved and kept their title. */
function paired(
  before: readonly Schedule[],
  after: readonly Schedule[],
  single: boolean,
): { readonly pairs: readonly Pair[]; readonly left: readonly Schedule[] } {
  const left = new Set(before);
  const open = new Set(after);
  const pairs: Pair[] = [];
  const title = ({ installation }: Schedule) => installation.head.title;
  const take = (keyOf: (one: Schedule) => string | undefined): void => {
    const found = Map.groupBy(left, keyOf);
    // Taken from the end, so that the first is there first.
    for (const list of found.values()) list.reverse();
    for (const now of open) {
      const key = keyOf(now);
      const old = key === undefined ? undefined : found.get(key)?.pop();
      if (!old) continue;
      left.delete(old);
      open.delete(now);
      pairs.push({ old, now });
    }
  };
  take((one) => (single ? title(one) : `${one.path}\0${title(one)}`));
  take(({ path }) => (single ? "" : path));
  take((one) => title(one) || undefined);
  return { pairs, left: [...left] };
}

const named = ({ called, single }: LoadedVersion, { path }: Schedule): string =>
  single ? called : `${called}, ${path}`;
