/** A file with the present names of words and checks in the place of former ones. Nothing of its meaning changes. */

import type { FormerWord } from "../../grammar/former-words.ts";
import { formerWords } from "../../grammar/former-words.ts";
import { bindSegment } from "../model/bind.ts";
import { writtenAt } from "../model/fact-values.ts";
import { readFile } from "../model/file.ts";
import type { AnyBlock, Fact, Facts } from "../model/values.ts";
import { formerIds } from "../rules/frame/former-ids.ts";
import { documentOf, textOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";

export function upgraded(text: string, former: readonly FormerWord[] = formerWords): string {
  const { segments } = documentOf(text);
  const kinds = kindsOf(segments);
  const texts = segments.map((segment, index) => upgradedSegment(segment, kinds[index] ?? "file", former));
  return textOf({ segments: segments.map((segment, index) => ({ ...segment, text: texts[index] ?? segment.text })) });
}

function upgradedSegment(segment: Segment, within: AnyBlock, former: readonly FormerWord[]): string {
  const { facts, problems } = bindSegment(segment, within, former);
  const words = problems.flatMap(({ check, fixes }) => (check === "former-word" ? (fixes[0]?.edits ?? []) : []));
  return applyEdits(segment.text, [...words, ...departuresIn(facts)]);
}

/** Departures from checks by their former ids. */
function departuresIn(facts: Facts): TextEdit[] {
  return [...facts.list, ...facts.struckOut].flatMap((fact) => [
    ...(fact.word === "departure" ? renamed(fact) : []),
    ...(fact.inner ? departuresIn(fact.inner) : []),
  ]);
}

function renamed(departure: Fact): TextEdit[] {
  const rule = writtenAt(departure, "rule");
  const text = rule && formerIds.get(rule.value);
  return rule && text !== undefined ? [{ start: rule.start, end: rule.end, text }] : [];
}

/** The kind of block each segment stands in. */
function kindsOf(segments: readonly Segment[]): readonly AnyBlock[] {
  const { installations, boards } = readFile(segments);
  const kinds = new Map<Segment, AnyBlock>();
  for (const board of [...boards, ...installations.flatMap((one) => one.boards)])
    for (const segment of board.segments.slice(1)) kinds.set(segment, "board");
  for (const { head, boards: own } of installations) {
    for (const { segments: of } of own) if (of[0]) kinds.set(of[0], "installation");
    for (const { segment } of head.facts.list) if (segment !== head.header.segment) kinds.set(segment, "installation");
  }
  return segments.map((segment) => kinds.get(segment) ?? "file");
}
