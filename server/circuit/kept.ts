/**
 * Answers that are kept with what they were made of. Facts and ways are never changed: an edit makes new ones for what it
 * touches, so that a question about a whole installation costs the way that changed. What was asked on the way to an
 * answer counts as asked by everyone who takes it over.
 */

import type { Bits } from "../memo/bits.ts";
import { Memo } from "../memo/memo.ts";
import { changeBetween } from "../model/context-change.ts";
import type { Board, InstallationHead } from "../model/file.ts";
import type { BoardInPlace, Context, Installation } from "../model/installation.ts";
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
import type { SharedParts } from "../model/shared-parts.ts";

/** What notes by itself whatever is worked out of it. */
interface Asking {
  readonly reads: Recorder;
  readonly context: Context;
}

/** Works an answer out once for each object and keeps it as long as the object lives. */
export function memoByObject<K extends object, T>(compute: (key: K) => T): (key: K) => T {
  const kept = new Memo<K, T | Noted<T>>();
  return (key) => {
    const before = kept.get(key);
    if (before === undefined) {
      const fresh = notesItself(key) ? recordedByItself(key, compute) : recordedFor(key, () => compute(key));
      kept.set(key, noted(fresh));
      return answerOf(fresh);
    }
    if (notesItself(key)) askersOf(key).took(askersOf(key).numberOf(compute));
    return before instanceof Noted ? answerOf(before.answer) : before;
  };
}

/** An answer with what was asked for it. Most asked nothing that is shared, and are kept as they are. */
class Noted<T> {
  readonly answer: Recorded<T>;

  constructor(answer: Recorded<T>) {
    this.answer = answer;
  }
}

/** Nothing is an answer too. */
const nothing = new Noted<never>({ value: undefined as never });

function noted<T>(answer: Recorded<T>): T | Noted<T> {
  if (answer.reads) return new Noted(answer);
  return answer.value === undefined ? nothing : answer.value;
}

const notesItself = <K extends object>(key: K): key is K & Asking => "reads" in key;

const askersOf = ({ context }: Asking) => context.parts.questions.askers;

/** A way that is studied notes for itself. */
function recordedByItself<K, T>(key: K & Asking, compute: (key: K) => T): Recorded<T> {
  const askers = askersOf(key);
  return { value: askers.answer(askers.numberOf(compute), () => recordedBy(key.reads, () => compute(key))) };
}

/** A board's own ways never change without it. */
function recordedFor<T>(key: object, compute: () => T): Recorded<T> {
  const ways = "ways" in key ? new Set((key as Board).ways.map(({ facts }) => facts)) : undefined;
  return recordedAnswer(new ReadLog(ways), compute);
}

interface InPlace {
  readonly board: Board;
  readonly context: Context;
}

/** Works an answer out once for a board in its place, as long as neither changes. */
export function memoInPlace<P extends InPlace, T>(compute: (place: P) => T): (place: P) => T {
  const kept = new Memo<Context, Recorded<T> & { readonly board: Board }>();
  return (place) => {
    const { board, context } = place;
    const { askers } = context.parts.questions;
    const number = askers.numberOf(compute);
    const before = kept.get(context);
    if (before?.board === board) {
      askers.took(number);
      return answerOf(before);
    }
    const reads = new Reads(context.parts);
    const fresh = { board, ...askers.answer(number, () => recordedAnswer(reads, () => compute(place))) };
    kept.set(context, fresh);
    return answerOf(fresh);
  };
}

interface Study {
  readonly reads: Reads;
}

interface Figures<T> {
  readonly parts: SharedParts;
  readonly reads: Bits;
  readonly value: T;
}

/** The same of what all ways of a board share. */
export function memoOfContext<T>(compute: (context: Context) => T): (context: Context) => T {
  const kept = new Memo<Context, Recorded<T>>();
  return (context) => {
    const before = kept.get(context);
    if (before) return answerOf(before);
    const fresh = recordedAnswer(new Reads(context.parts), () => compute(context));
    kept.set(context, fresh);
    return answerOf(fresh);
  };
}

interface StudiedBoard extends InPlace {
  readonly studies: readonly Study[];
}

/**
 * Works figures of a board and all its ways out once, for as long as what they were worked out of has the same answers:
 * an edit of the supply makes another context of every board, and hardly any of their figures another. The board's own
 * lines and ways may be among them, for none changes without the board: but no study, which would keep its context, and
 * nothing of what stands elsewhere.
 */
export function memoOfBoard<P extends StudiedBoard, T>(compute: (place: P) => T): (place: P) => T {
  const kept = new Memo<Board, readonly Figures<T>[]>();
  return (place) => {
    const { parts } = place.context;
    const { askers } = parts.questions;
    const number = askers.numberOf(compute);
    const all = kept.get(place.board) ?? [];
    const found = all.find((one) => one.parts === parts || changeBetween(one.parts, parts).leaves(one.reads));
    if (found) {
      if (found.parts !== parts) keep({ ...found, parts });
      askers.took(number);
      notedAgain(found.reads, parts);
      return found.value;
    }
    const reads = new Reads(parts);
    const value = askers.answer(number, () => recordedBy(reads, () => compute(place)));
    // What was asked of a study before is not asked again.
    for (const study of place.studies) reads.add(study.reads.bits);
    keep({ parts, reads: reads.bits, value });
    return value;

    function keep(fresh: Figures<T>): void {
      kept.set(place.board, [fresh, ...all.filter((one) => one.parts !== fresh.parts).slice(0, parts.mostKept - 1)]);
    }
  };
}

/** What was asked in another place is asked here by whoever takes its answer over. */
function notedAgain(bits: Bits, parts: SharedParts): void {
  if (!recorder) return;
  const reads = new Reads(parts);
  reads.add(bits);
  reads.passOn(recorder);
  reads.askAgain();
}

/** An installation, or a board in its network. */
interface Whole {
  readonly context?: Context;
}

/**
 * Works an answer out once for an installation or a board in its network. What is asked of the things that a board shares
 * is kept with its answer, for whoever takes it over; what is worked out of a whole installation is for those alone whom
 * nobody notes.
 */
export function memoOfWhole<K extends object & Whole, T>(compute: (key: K) => T): (key: K) => T {
  const kept = new Memo<K, { readonly value: T; readonly reads?: Bits }>();
  return (key) => {
    const parts = key.context?.parts;
    if (!parts && recorder) return compute(key);
    const before = kept.get(key);
    const askers = parts?.questions.askers;
    if (before) {
      if (parts && before.reads) notedAgain(before.reads, parts);
      if (askers && recorder) askers.took(askers.numberOf(compute));
      return before.value;
    }
    if (!parts || !askers) {
      const value = compute(key);
      kept.set(key, { value });
      return value;
    }
    const reads = new Reads(parts);
    const value = askers.answer(askers.numberOf(compute), () => recordedBy(reads, () => compute(key)));
    kept.set(key, reads.isEmpty ? { value } : { value, reads: parts.questions.oneOf(reads.bits) });
    return value;
  };
}

interface OfBoards<T> {
  readonly boards: readonly BoardInPlace[];
  readonly values: readonly T[];
}

type OfInstallation<T> = (installation: Pick<Installation, "head" | "boards">) => readonly T[];

/**
 * Works something out for each board of an installation by what is written of it: after an edit, for those alone that
 * are others. Where none of it is another, the list is the same one.
 */
export const memoOfBoards = <T>(compute: (board: Board) => T): OfInstallation<T> =>
  memoOfEach(({ board }) => board, compute);

/** The same for what depends on more than the board: a name that is given elsewhere makes every place another. */
export const memoOfPlaces = <T>(compute: (place: BoardInPlace) => T): OfInstallation<T> =>
  memoOfEach((place) => place, compute);

function memoOfEach<P extends object, T>(
  partOf: (place: BoardInPlace) => P,
  compute: (part: P) => T,
): OfInstallation<T> {
  const kept = new Memo<InstallationHead, OfBoards<T>>();
  // A line of the supply makes another head, and no board is another for it.
  const own = new Memo<P, T>();
  return ({ head, boards }) => {
    if (recorder) return boards.map((place) => compute(partOf(place)));
    const before = kept.get(head);
    if (before?.boards === boards) return before.values;
    const values = before ? changed(before, boards) : boards.map((place) => own.of(partOf(place), compute));
    kept.set(head, { boards, values });
    return values;
  };

  /** Most edits are of one board: the others are not even asked what is kept with them. */
  function changed(before: OfBoards<T>, boards: readonly BoardInPlace[]): readonly T[] {
    let isSame = before.boards.length === boards.length;
    const fresh = boards.map((place, at) => {
      const part = partOf(place);
      const other = before.boards[at];
      const value = other !== undefined && partOf(other) === part ? (before.values[at] as T) : own.of(part, compute);
      isSame &&= value === before.values[at];
      return value;
    });
    return isSame ? before.values : fresh;
  }
}
