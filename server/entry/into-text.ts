/** Where new blocks of tests stand in the text of a schedule. */
import { parse } from "../../grammar/parser.ts";
import { formatDocument } from "../format/format.ts";
import type { Installation } from "../model/installation.ts";
import { written } from "../proposal/write.ts";
import { type Document, documentOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";
import type { NewBlock } from "./blocks.ts";
import { placeName, type SlotPlace } from "./slots.ts";

/** A segment of a file with what it becomes. */
interface ChangedSegment {
  readonly segment: Segment;
  readonly text: string;
}

/** The texts of the segments that the new blocks are written into. */
export function changedSegments(
  installation: Installation,
  blocks: readonly NewBlock[],
  holding: (segment: Segment) => Document | undefined,
): ChangedSegment[] {
  const byPlace = [...Map.groupBy(blocks, ({ place }) => placeName(place)).values()];
  return byPlace.flatMap((group): ChangedSegment[] => {
    const [first] = group;
    const target = first && targetOf(installation, first.place);
    const document = target && holding(target.segment);
    if (!target || !document) return [];
    const lines = group.flatMap((one) => one.lines);
    const edit = editOf(target, lines);
    const text =
      target.where === "inside" ? written(document, target.segment, [edit]) : behind(document, target.segment, edit);
    return [{ segment: target.segment, text }];
  });
}

/** The segment with new lines behind it, laid out in the file's style; all that was there stays as it is. */
function behind({ segments }: Document, segment: Segment, edit: TextEdit): string {
  const breaks = segment.text.includes("\r\n") ? edit.text.replace(/\r?\n/g, "\r\n") : edit.text;
  const text = applyEdits(segment.text, [{ ...edit, text: breaks }]);
  const offset = segments.slice(0, segments.indexOf(segment)).reduce((sum, one) => sum + one.text.length, 0);
  const whole = documentOf(segments.map((one) => (one === segment ? text : one.text)).join(""));
  const [from, to] = [offset + segment.text.length, offset + text.length];
  const own = (formatDocument(whole)?.edits ?? [])
    .filter(({ start, end }) => start >= from && end <= to)
    .map((one) => ({ ...one, start: one.start - offset, end: one.end - offset }));
  return applyEdits(text, own);
}

interface Target {
  readonly segment: Segment;
  /** Before the brace that closes its block, or behind all of it. */
  readonly where: "inside" | "behind";
}

function targetOf({ boards, supply, head }: Installation, { board, way }: SlotPlace): Target | undefined {
  if (board === undefined) {
    const line = head.facts.one("supply");
    return supply && line ? { segment: line.segment, where: "inside" } : undefined;
  }
  const place = boards.find(({ board: one }) => one.head.name === board);
  if (!place) return undefined;
  if (way !== undefined) {
    const found = place.board.ways.find(({ id }) => id === way);
    return found && { segment: found.segment, where: "inside" };
  }
  const own = place.board.segments.filter(({ word }) => word !== "way");
  const until = place.board.segments.findIndex(({ word }) => word === "way");
  const before = until < 0 ? own.slice(0, -1) : place.board.segments.slice(0, until);
  const last = before.at(-1) ?? own[0];
  return last && { segment: last, where: "behind" };
}

function editOf({ segment, where }: Target, lines: readonly string[]): TextEdit {
  const { text } = segment;
  const block = lines.map((line) => `    ${line}\n`).join("");
  if (where === "behind") {
    const at = text.length;
    return { start: at, end: at, text: text.endsWith("\n") ? block : `\n${block}` };
  }
  const statement = parse(text).statements.find((one) => one.block !== undefined) ?? parse(text).statements[0];
  const close = statement?.block?.close;
  if (!close) {
    const end = text.trimEnd().length;
    return { start: end, end, text: ` {\n${block}}` };
  }
  const start = text.lastIndexOf("\n", close.startOffset - 1) + 1;
  const alone = text.slice(start, close.startOffset).trim() === "";
  return alone
    ? { start, end: start, text: block }
    : { start: close.startOffset, end: close.startOffset, text: `\n${block}` };
}
