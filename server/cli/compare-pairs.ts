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

export interface PlacedComparison {
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
  const left = new Set(before.schedules);
  const pairs: { readonly old: Schedule; readonly now: Schedule }[] = [];
  const single = before.single && after.single;
  const take = (fits: (old: Schedule, now: Schedule) => boolean): void => {
    for (const now of after.schedules) {
      if (pairs.some((pair) => pair.now === now)) continue;
      const old = [...left].find((one) => fits(one, now));
      if (!old) continue;
      left.delete(old);
      pairs.push({ old, now });
    }
  };
  const title = ({ installation }: Schedule) => installation.head.title;
  take((old, now) => title(old) === title(now) && (single || old.path === now.path));
  take((old, now) => single || old.path === now.path);
  take((old, now) => title(old) !== "" && title(old) === title(now));
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
  const paired = new Set(pairs.map(({ now }) => now));
  return {
    before: before.called,
    after: after.called,
    comparisons: comparisons.filter(
      ({ was, comparison }) => single || was !== undefined || !isSame(comparison) || hasUnread(comparison),
    ),
    came: after.schedules.filter((one) => !paired.has(one)),
    went: [...left],
    compared: pairs.length,
    hasParts: pairs.some(({ old, now }) => old.isPart || now.isPart),
  };
}

const named = ({ called, single }: LoadedVersion, { path }: Schedule): string =>
  single ? called : `${called}, ${path}`;
