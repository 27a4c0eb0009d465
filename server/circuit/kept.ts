/**
 * Answers that are kept with what they were made of. Facts and ways are never changed: an edit makes new ones for what it
 * touches, so that a question about a whole installation costs the way that changed. What was asked on the way to an
 * answer counts as asked by everyone who takes it over.
 */
import type { Board } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import {
  answerOf,
  ReadLog,
  Reads,
  type Recorded,
  type Recorder,
  recordedAnswer,
  recordedBy,
  recorder,
} from "../model/reads.ts";

/** What notes by itself whatever is worked out of it. */
interface Asking {
  readonly reads: Recorder;
}

/** Works an answer out once for each object and keeps it as long as the object lives. */
export function memoByObject<K extends object, T>(compute: (key: K) => T): (key: K) => T {
  const kept = new WeakMap<K, Recorded<T>>();
  return (key) => {
    const before = kept.get(key);
    if (before) return answerOf(before);
    const fresh = recordedFor(key, () => compute(key));
    kept.set(key, fresh);
    return answerOf(fresh);
  };
}

/** A way that is studied notes for itself; a board's own ways never change without it. */
function recordedFor<T>(key: object, compute: () => T): Recorded<T> {
  if ("reads" in key) return { value: recordedBy((key as Asking).reads, compute) };
  const ways = "ways" in key ? new Set((key as Board).ways.map(({ facts }) => facts)) : undefined;
  return recordedAnswer(new ReadLog(ways), compute);
}

interface InPlace {
  readonly board: Board;
  readonly context: Context;
}

/** Works an answer out once for a board in its place, as long as neither changes. */
export function memoInPlace<P extends InPlace, T>(compute: (place: P) => T): (place: P) => T {
  const kept = new WeakMap<Context, Recorded<T> & { readonly board: Board }>();
  return (place) => {
    const { board, context } = place;
    const before = kept.get(context);
    if (before?.board === board) return answerOf(before);
    const fresh = { board, ...recordedAnswer(new Reads(context.parts), () => compute(place)) };
    kept.set(context, fresh);
    return answerOf(fresh);
  };
}

/**
 * Works an answer out once for an installation or a board in its network. Checks of one way or board never ask these, so
 * what is asked on the way is not noted; should one do so, it is worked out for it alone.
 */
export function memoOfWhole<K extends object, T>(compute: (key: K) => T): (key: K) => T {
  const kept = new WeakMap<K, { readonly value: T }>();
  return (key) => {
    if (recorder) return compute(key);
    const before = kept.get(key);
    if (before) return before.value;
    const value = compute(key);
    kept.set(key, { value });
    return value;
  };
}
