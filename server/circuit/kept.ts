/**
 * Answers that are kept with what they were made of. Facts and ways are never changed: an edit makes new ones for what it
 * touches, so that a question about a whole installation costs the way that changed. What was asked on the way to an
 * answer counts as asked by everyone who takes it over.
 */
import { changeBetween } from "../model/context-change.ts";
import type { Board, Way } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import {
  answerOf,
  type Bits,
  ReadLog,
  Reads,
  type Recorded,
  type Recorder,
  recordedAnswer,
  recordedBy,
  recorder,
} from "../model/reads.ts";
import type { SharedParts } from "../model/shared-parts.ts";

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

interface Study {
  readonly way: Way;
  readonly context: Context;
  readonly reads: Reads;
}

interface FiguresOf<Q, K extends object> {
  /** What the figures are kept with. */
  readonly key: (of: Q) => K;
  /** What was asked before, and is not asked again. */
  readonly asked: (of: Q) => readonly Bits[];
}

interface Figures<T> {
  readonly parts: SharedParts;
  readonly reads: Bits;
  readonly value: T;
}

/** A file can be part of several schedules, each with a context of its own. */
const mostKept = 6;

/**
 * Works figures of a way out once, for as long as what they were worked out of has the same answers: an edit of the
 * supply makes another context of every board, and hardly any of their figures another. Figures and words only: nothing
 * that stands in a text, and no study, which would keep its context with it.
 */
export const memoOfFigures = <S extends Study, T>(compute: (study: S) => T): ((study: S) => T) =>
  figuresOf<S, Way, T>({ key: ({ way }) => way, asked: ({ reads }) => [reads.bits] }, compute);

interface StudiedBoard extends InPlace {
  readonly studies: readonly Study[];
}

/**
 * The same of a board with all its ways. The board's own lines and ways may be among the figures: none of them changes
 * without the board.
 */
export const memoOfBoard = <P extends StudiedBoard, T>(compute: (place: P) => T): ((place: P) => T) =>
  figuresOf<P, Board, T>(
    { key: ({ board }) => board, asked: ({ studies }) => studies.map(({ reads }) => reads.bits) },
    compute,
  );

function figuresOf<Q extends { readonly context: Context }, K extends object, T>(
  { key, asked }: FiguresOf<Q, K>,
  compute: (of: Q) => T,
): (of: Q) => T {
  const kept = new WeakMap<K, readonly Figures<T>[]>();
  return (of) => {
    const { parts } = of.context;
    const all = kept.get(key(of)) ?? [];
    const found = all.find((one) => one.parts === parts || changeBetween(one.parts, parts).leaves(one.reads));
    if (found) {
      if (found.parts !== parts) keep({ ...found, parts });
      notedAgain(found.reads, parts);
      return found.value;
    }
    const reads = new Reads(parts);
    const value = recordedBy(reads, () => compute(of));
    for (const bits of asked(of)) reads.add(bits);
    keep({ parts, reads: reads.bits, value });
    return value;

    function keep(fresh: Figures<T>): void {
      kept.set(key(of), [fresh, ...all.filter((one) => one.parts !== fresh.parts).slice(0, mostKept - 1)]);
    }
  };
}

/** What was asked in another place is asked here by whoever takes its answer over. */
function notedAgain(bits: Bits, parts: SharedParts): void {
  if (!recorder) return;
  const reads = new Reads(parts);
  reads.add(bits);
  reads.passOn(recorder);
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
