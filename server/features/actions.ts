/** What can be done about a finding: its own fixes, and to depart from the check with a reason. */
import { parse, type Statement } from "../../grammar/parser.ts";
import { type BlockKind, openedBy, rowOf } from "../../grammar/vocabulary.ts";
import { reasonToWrite } from "../rules/frame/departure-checks.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import type { TextEdit } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { withEnclosingBlock } from "./cursor.ts";

export interface Action {
  readonly title: string;
  readonly finding: Finding;
  readonly segment: Segment;
  readonly edits: readonly TextEdit[];
  /** Whether it may be the first choice: it cannot change what was meant. */
  readonly safe: boolean;
}

/** Actions for the findings an editor asks about. */
export function actionsFor(snapshot: Snapshot, findings: readonly Finding[]): Action[] {
  const blocks = new Blocks(snapshot);
  return findings.flatMap((finding) => [
    ...finding.fixes.map(({ title, edits, safe }) => ({
      title,
      finding,
      segment: finding.spot.segment,
      edits,
      safe,
    })),
    ...departure(blocks, finding),
  ]);
}

/** What segments stand in and begin with, worked out once where a whole file is selected and has thousands of findings. */
class Blocks {
  readonly #kinds: ReadonlyMap<Segment, BlockKind>;
  readonly #first = new Map<Segment, Statement | undefined>();

  constructor({ file }: Snapshot) {
    this.#kinds = new Map(
      [...withEnclosingBlock(file.document.segments)].map(({ segment, within }) => [segment, within] as const),
    );
  }

  within(segment: Segment): BlockKind {
    return this.#kinds.get(segment) ?? "file";
  }

  firstOf(segment: Segment): Statement | undefined {
    if (!this.#first.has(segment)) this.#first.set(segment, parse(segment.text).statements[0]);
    return this.#first.get(segment);
  }
}

/** A fault of the language cannot be departed from, and neither can a check that broke down. */
function departure(blocks: Blocks, finding: Finding): Action[] {
  const { check, spot } = finding;
  if (/^(?:language|engine)\//.test(check) || /^record\/departure-/.test(check)) return [];
  const place = lineFor(blocks, spot.segment, spot.start);
  if (!place) return [];
  const text = `${place.before}departure ${check} "${reasonToWrite}"${place.after}`;
  return [
    {
      title: `Depart from ${check}, with a reason`,
      finding,
      segment: spot.segment,
      edits: [{ start: place.at, end: place.at, text }],
      safe: false,
    },
  ];
}

interface Line {
  readonly at: number;
  readonly before: string;
  readonly after: string;
}

/** Where a line of its own would stand: last in the way's or the board's block, or above the line or block that was marked. */
function lineFor(blocks: Blocks, segment: Segment, offset: number): Line | undefined {
  const { text } = segment;
  const breakSign = text.includes("\r\n") ? "\r\n" : "\n";
  const within = blocks.within(segment);
  const statement = blocks.firstOf(segment);
  const opens = statement && openedBy(rowOf(within, statement.word.image));
  if (segment.kind === "block" && statement && opens && rowOf(opens, "departure")) {
    const close = statement.block?.close;
    if (!close) return undefined;
    const start = text.lastIndexOf("\n", close.startOffset - 1) + 1;
    const indent = text.slice(start, close.startOffset);
    // A block on one line has no line of its own to give.
    if (indent.trim() !== "") return { at: close.startOffset, before: `${breakSign}  `, after: breakSign };
    return { at: start, before: `${indent}  `, after: breakSign };
  }
  if (segment.kind === "open" && segment.word) {
    const indent = /^[ \t]*/.exec(text)?.[0] ?? "";
    const ended = /[\r\n]$/.test(text);
    return { at: text.length, before: `${ended ? "" : breakSign}${indent}  `, after: ended ? breakSign : "" };
  }
  if (!rowOf(within, "departure")) return undefined;
  // A block of tests on a board takes no departure itself.
  const marked = segment.kind === "block" && statement ? statement.start : offset;
  const start = text.slice(0, marked).lastIndexOf("\n") + 1;
  const indent = /^[ \t]*/.exec(text.slice(start))?.[0] ?? "";
  return { at: start, before: indent, after: breakSign };
}

/** Findings of a file that touch a stretch of one of its segments. */
export function findingsTouching(snapshot: Snapshot, touches: (finding: Finding) => boolean): Finding[] {
  return snapshot.findings.filter(touches);
}
