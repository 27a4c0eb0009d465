/**
 * What is not said of a line while it is being written. An editor that says where its cursor is gets new findings of the
 * line in which a person types once the line is left, and what is missing in a block once the block is left. What was
 * shown before stays shown for as long as it is found, and what is found no more goes at once. Nothing is held back of a
 * file that is saved or was edited by anything but typing, nor for a client that keeps its cursor to itself: a file at
 * rest has the same findings everywhere.
 */
import type { Diagnostic, Position, Range } from "vscode-languageserver";
import type { Finding } from "../rules/frame/rule.ts";
import type { Edit } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { rangeOf } from "./convert.ts";
import type { CursorNote } from "./protocol.ts";

interface Writing {
  readonly path: string;
  /** The line the cursor is in. */
  line: number;
  /** The lines that are being written: that line, or all of a block that was laid out at once and has gaps to fill. */
  from: number;
  to: number;
  /** How much of those lines may be shown: nothing new, all but what only half a line has, or all of it. */
  state: "typed" | "rests" | "left";
}

export class Calm {
  #isOn = false;
  #writing: Writing | undefined;
  /** Lines that were put in elsewhere than at the cursor: it may be on its way there, to fill what has gaps. */
  #laid: Omit<Writing, "line"> | undefined;
  /** Where the cursor was when it was last heard of. */
  #cursor: { readonly path: string; readonly line: number } | undefined;

  /** From now on the editor says where its cursor is. */
  begin(): void {
    this.#isOn = true;
  }

  /** A change of a document: one by hand is a single one, at the cursor. */
  edited(path: string, changes: readonly Edit[]): void {
    if (!this.#isOn || this.#isLaidOut(path, changes)) return;
    const [change] = changes;
    const range = change?.range;
    if (!change || !range || changes.length > 1 || range.end.line - range.start.line > 1 || !this.#isAt(path, range)) {
      this.#writing = undefined;
      this.#laid = laidBy(path, changes);
      return;
    }
    this.#laid = undefined;
    const breaks = change.text.match(/\r\n|\r|\n/g)?.length ?? 0;
    const line = range.start.line + breaks;
    this.#cursor = { path, line };
    const before = this.#writing;
    const isWithin = before?.path === path && before.from <= range.start.line && range.end.line <= before.to;
    // A break begins a line of its own; anything else within a block that was laid out goes on filling it.
    if (before && isWithin && breaks === 0) {
      const to = before.to - (range.end.line - range.start.line);
      this.#writing = { path, line, from: before.from, to, state: "typed" };
    } else {
      const from = /^[\r\n]/.test(change.text) ? line : range.start.line;
      this.#writing = { path, line, from, to: line, state: "typed" };
    }
  }

  /** The line that was left by its end, or the one that opened a block: an editor lays it out behind the cursor. */
  #isLaidOut(path: string, changes: readonly Edit[]): boolean {
    const cursor = this.#cursor;
    if (this.#writing?.path !== path || cursor?.path !== path) return false;
    return changes.every(({ range, text }) => {
      if (!range || range.start.line !== range.end.line || /[\r\n]/.test(text)) return false;
      return range.start.line < cursor.line && cursor.line - range.start.line <= 2;
    });
  }

  /** What is changed elsewhere than at the cursor was not typed. */
  #isAt(path: string, { start, end }: Range): boolean {
    const cursor = this.#cursor;
    return cursor?.path === path && start.line <= cursor.line && cursor.line <= end.line;
  }

  /** Where the cursor is now. Returns whether something may be shown by it that was held back. */
  moved(path: string, { line, rests }: Pick<CursorNote, "line" | "rests">): boolean {
    this.#cursor = { path, line };
    const laid = this.#laid;
    this.#laid = undefined;
    if (laid?.path === path && laid.from <= line && line <= laid.to) this.#writing = { ...laid, line };
    const writing = this.#writing;
    if (!writing) return false;
    if (laid) return true;
    if (writing.path !== path) {
      this.#writing = undefined;
      return true;
    }
    writing.line = line;
    if (writing.state === "left") return true;
    if (line < writing.from || line > writing.to) writing.state = "left";
    else if (rests && writing.state === "typed") writing.state = "rests";
    else return false;
    return true;
  }

  /** A file that is saved is at rest. Returns whether something was held back of it. */
  saved(path: string): boolean {
    if (this.#writing?.path !== path) return false;
    this.#writing = undefined;
    return true;
  }

  /** The file something may be held back of. */
  get path(): string | undefined {
    return this.#writing?.path;
  }

  /** The segment in which somebody is writing: what is new in it does not move the lines about. */
  isWriting(snapshot: Snapshot, segment: Segment): boolean {
    const writing = this.#writing;
    if (writing?.path !== snapshot.file.path) return false;
    return snapshot.positions.at({ line: writing.line, character: 0 })?.segment === segment;
  }

  /** The same while keys are being pressed: what stands above it waits for a rest. */
  isTyping(snapshot: Snapshot, segment: Segment): boolean {
    return this.#writing?.state === "typed" && this.isWriting(snapshot, segment);
  }

  /** The findings that may be shown. `before` is what is shown now. */
  shown(snapshot: Snapshot, findings: readonly Finding[], before: readonly Diagnostic[]): readonly Finding[] {
    const writing = this.#writing;
    if (writing?.path !== snapshot.file.path) return findings;
    const held = heldBack(snapshot, writing);
    return findings.filter((finding) => !held(finding) || wasShown(snapshot, finding, before));
  }
}

/** Lines that one change put in, where it put in more than one. */
function laidBy(path: string, changes: readonly Edit[]): Omit<Writing, "line"> | undefined {
  const [change] = changes;
  const breaks = change?.text.match(/\r\n|\r|\n/g)?.length ?? 0;
  if (!change?.range || changes.length > 1 || breaks === 0) return undefined;
  const { start } = change.range;
  return { path, from: start.line, to: start.line + breaks, state: "typed" };
}

function heldBack(snapshot: Snapshot, { line, from, to, state }: Writing): (finding: Finding) => boolean {
  const around = segmentsAround(snapshot, { line, character: 0 });
  return (finding) => {
    const { check, spot } = finding;
    if (isAbsence(check) && around.has(spot.segment)) return true;
    if (state === "left" || (state === "rests" && !check.startsWith("language/"))) return false;
    if (!snapshot.positions.has(spot.segment)) return false;
    const range = rangeOf(snapshot.positions, spot);
    return range.start.line <= to && from <= range.end.line;
  };
}

/** The segment of a place, and the opening lines of the board and the installation round it. */
function segmentsAround({ file, positions }: Snapshot, place: Position): ReadonlySet<Segment> {
  const own = positions.at(place)?.segment;
  const open: Segment[] = [];
  for (const segment of file.document.segments) {
    if (segment.ends) open.length = Math.max(0, open.length - segment.ends);
    if (segment === own) break;
    if (segment.kind === "open") open.push(segment);
    else if (segment.kind === "close") open.pop();
  }
  return new Set(own ? [own, ...open] : open);
}

/** Findings of the same kind that stand where this one does. */
function wasShown({ positions }: Snapshot, { check, spot }: Finding, before: readonly Diagnostic[]): boolean {
  const line = positions.has(spot.segment) ? positions.place(spot.segment, spot.start).line : -1;
  return before.some(({ code, range }) => code === check && range.start.line === line);
}

/** Checks that find that something is not written: so it is of every block that is begun. */
const isAbsence = (check: string): boolean => absences.test(check);

const absences =
  /^(?:record\/(?:no-.*|not-signed|stage-behind)|network\/feeder-without-feeds|instrument\/(?:no-.*|not-named)|language\/no-version|(?!language\/).*\/(?:.*-incomplete|.*-without-result|.*-not-recorded|.*-?missing(?:-.*)?|.*-?not-(?:stated|calculated|tested)|no-device|without-rcd))$/;
