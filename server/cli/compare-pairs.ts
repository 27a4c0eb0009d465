/** Which schedule of one version is which of the other, and what their comparison comes to. */
import { type Comparison, isSame } from "../reports/compare/comparison.ts";
import { Cache, type CachePlace } from "./run/cache.ts";
import { comparer, contentOfTask, heldBy, type KeyedCompareTask } from "./run/compare-task.ts";
import { perform, type Threading } from "./run/perform.ts";
import type { LoadedVersion, Schedule } from "./versions.ts";

export interface VersionComparison {
  readonly before: string;
  readonly after: string;
  /** Those that differ. */
  readonly comparisons: readonly PlacedComparison[];
  readonly came: readonly Whole[];
  readonly went: readonly Whole[];
  /** How many were compared, and whether parts of installations are among them. */
  readonly compared: number;
  readonly hasParts: boolean;
  /** What could not be compared, a sentence each. */
  readonly failures: readonly string[];
}

/** A schedule that is in one version only. */
export interface Whole {
  readonly path: string;
  readonly title: string;
  readonly boards: number;
  readonly ways: number;
}

interface PlacedComparison {
  readonly path: string;
  /** The file it was in, where that is another. */
  readonly was?: string;
  readonly comparison: Comparison;
}

export const differs = ({ came, went, comparisons }: VersionComparison): boolean =>
  came.length + went.length > 0 || comparisons.some(isOther);

const isOther = ({ was, comparison }: PlacedComparison): boolean =>
  was !== undefined || !isSame(comparison) || hasUnread(comparison);

/** A line that cannot be read may hold a change. */
const hasUnread = ({ unread }: Comparison): boolean => unread.before.join("\n") !== unread.after.join("\n");

interface Comparing extends Threading {
  readonly cache: CachePlace | undefined;
  /** Called after each schedule, with how many are done of how many. */
  readonly done: (count: number, of: number) => Promise<void> | undefined;
}

/** One version beside each of some others. */
export async function compareVersions(
  before: LoadedVersion,
  others: readonly LoadedVersion[],
  options: Comparing,
): Promise<readonly VersionComparison[]> {
  const pairings = others.map((after) => pairingOf(before, after));
  const tasks = pairings.flatMap((pairing, of) => pairing.open.map((pair) => ({ of, pair, size: sizeOf(pair) })));
  const compared = pairings.map((): PlacedComparison[] => []);
  const failures = pairings.map((): string[] => []);
  let count = 0;
  for await (const { task, result } of comparisonsOf(tasks, options)) {
    const { of, pair } = tasks[task.index] as Task;
    const after = others[of] as LoadedVersion;
    const called = { before: named(before, pair.old), after: named(after, pair.now) };
    if ("failure" in result) failures[of]?.push(`“${pair.now.path}” ${result.failure}`);
    else compared[of]?.push(placed(pair, { ...result, ...called }));
    await options.done(++count, tasks.length);
  }
  return pairings.map(({ after, pairs, single, came, went }, index) => ({
    before: before.called,
    after: after.called,
    comparisons: (compared[index] ?? []).filter((one) => single || isOther(one)),
    came: came.map(wholeOf),
    went: went.map(wholeOf),
    compared: pairs.length + after.same - (failures[index]?.length ?? 0),
    hasParts: after.hasSameParts || pairs.some(({ old, now }) => old.isPart || now.isPart),
    failures: failures[index] ?? [],
  }));
}

const placed = ({ old, now, isMoved }: Pair, comparison: Comparison): PlacedComparison => ({
  path: now.path,
  ...(isMoved ? { was: old.path } : {}),
  comparison,
});

const wholeOf = ({ path, title, texts }: Schedule): Whole => ({ path, title, ...heldBy(texts()) });

interface Task {
  /** Which pairing it is of. */
  readonly of: number;
  readonly pair: Pair;
  readonly size: number;
}

const sizeOf = ({ old, now }: Pair): number => old.size + now.size;

/** What a thread is handed. */
interface Handed extends KeyedCompareTask {
  readonly index: number;
  readonly size: number;
  readonly isKept: boolean;
}

function comparisonsOf(tasks: readonly Task[], options: Comparing) {
  const cache = options.cache && new Cache(options.cache);
  return perform<{ readonly index: number; readonly size: number }, Handed, Comparison>(
    {
      tasks: tasks.map(({ size }, index) => ({ index, size })),
      ahead: ({ index, size }) => {
        const { old, now, isPart } = (tasks[index] as Task).pair;
        const texts = { old: old.texts(), now: now.texts(), ...(isPart ? { partOf: now.path } : {}) };
        const content = cache ? contentOfTask(texts) : "";
        return { ...texts, index, size, content, isKept: cache?.has(content, "comparison") ?? false };
      },
      kept: ({ content }) => cache?.read(content, "comparison"),
      here: comparer(cache),
      start: { making: "comparison", ...(options.cache ? { cache: options.cache } : {}) },
    },
    options,
  );
}

interface Pair {
  readonly old: Schedule;
  readonly now: Schedule;
  readonly isPart: boolean;
  /** Whether it is in another file than it was. */
  readonly isMoved: boolean;
}

interface Pairing {
  readonly before: LoadedVersion;
  readonly after: LoadedVersion;
  readonly single: boolean;
  readonly pairs: readonly Pair[];
  /** Those that have to be compared: what is written alike says the same. */
  readonly open: readonly Pair[];
  readonly came: readonly Schedule[];
  readonly went: readonly Schedule[];
}

function pairingOf(before: LoadedVersion, after: LoadedVersion): Pairing {
  const single = before.single && after.single;
  // Of a file that could not be read nobody knows what it holds.
  const known = ({ schedules }: LoadedVersion, { isUnread }: LoadedVersion) =>
    schedules.filter(({ path }) => single || !isUnread(path));
  const { pairs, came, went } = paired(known(before, after), known(after, before), single);
  const open = pairs.filter(({ old, now, isMoved }) => single || isMoved || old.content !== now.content);
  return { before, after, single, pairs, open, came, went };
}

/** First those of one path and title, then those of one path, then those that were moved and kept their title. */
function paired(
  before: readonly Schedule[],
  after: readonly Schedule[],
  single: boolean,
): Pick<Pairing, "pairs" | "came" | "went"> {
  const left = new Set(before);
  const open = new Set(after);
  const pairs: Pair[] = [];
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
      const isPart = (old.isPart ?? now.isPart) === true;
      pairs.push({ old, now, isPart, isMoved: !single && old.path !== now.path });
    }
  };
  take((one) => (single ? one.title : `${one.path}\0${one.title}`));
  take(({ path }) => (single ? "" : path));
  take(({ title }) => title || undefined);
  return { pairs, came: [...open], went: [...left] };
}

const named = ({ called, single }: LoadedVersion, { path }: Schedule): string =>
  single ? called : `${called}, ${path}`;
