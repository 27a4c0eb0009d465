/**
 * Which fixes a record allows. What is designed may be proposed. What is installed or was measured is never replaced by
 * what would pass: a part on the wall is what it is, and a reading is what the meter showed. Whoever misread corrects in
 * words of their own, and what stood there stays on the line.
 */

import { isTestBlock, readArgs } from "../../../grammar/readings.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import { lazy } from "../../circuit/lazy.ts";
import { stageOf, workOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { BoardInPlace, Context, Installation } from "../../model/installation.ts";
import type { Fix } from "../../model/problems.ts";
import type { Fact, Facts } from "../../model/values.ts";
import type { TextEdit } from "../../text/lines.ts";
import type { Finding } from "./rule.ts";

/** Parts that are there to be seen once the work is installed. */
const installed: ReadonlySet<string> = new Set([
  "afdd",
  "behind",
  "bonding",
  "busbar",
  "cable",
  "cable-type",
  "conditional-rating",
  "containment",
  "cutout",
  "device",
  "duplicate-cpc",
  "earthing-conductor",
  "fused",
  "ingress",
  "main-switch",
  "open-PEN",
  "outlet-rcd",
  "rcd",
  "supplementary-bonding",
  "tails",
]);

/** A part that a fix may write a line of while it is designed, and that is not there because a line says so. */
const claimed: ReadonlySet<string> = new Set(["afdd", "behind", "rcd"]);

type Segment = Finding["spot"]["segment"];

type Graded = (finding: Finding) => Finding;

/** What stands beyond a design: the work is installed, or was there before. */
const isBuilt = (part: Parameters<typeof workOf>[0] & { readonly context?: Context }): boolean =>
  stageOf("installation" in part ? part : { installation: part.context.installation }) !== "design" ||
  workOf(part) === "existing";

/** Findings of a way with the fixes that it allows. */
export const gradingOnWay =
  (study: WayStudy): Graded =>
  (finding) => {
    const { fixes, explains } = finding;
    if (fixes.length === 0) return finding;
    const graded = gradedFixes(finding, study.facts, isBuilt(study));
    return explains ? { ...graded, explains: explains.map(gradingOnWay(study)) } : graded;
  };

/** The same of a board and what stands on its ways. */
export function gradingOnBoard({ board, context }: BoardInPlace): Graded {
  const ways = indexOnceMany(board.ways, ({ segment }) => [segment]);
  return (finding) => {
    if (finding.fixes.length === 0) return finding;
    const way = ways(finding.spot.segment);
    return way
      ? gradedFixes(finding, way.facts, isBuilt({ context, facts: way.facts }))
      : gradedFixes(finding, board.head.facts, isBuilt(context));
  };
}

/** The same of an installation as a whole. */
export function grading({ head, boards }: Installation): Graded {
  const graded = new Map<BoardInPlace, Graded>();
  const places = indexOnceMany(boards, ({ board }) => board.segments);
  return (finding) => {
    if (finding.fixes.length === 0) return finding;
    const place = places(finding.spot.segment);
    if (!place) return gradedFixes(finding, head.facts, isBuilt({ installation: head }));
    const ofBoard = graded.get(place) ?? gradingOnBoard(place);
    graded.set(place, ofBoard);
    return ofBoard(finding);
  };
}

/** So many questions are answered by looking; what is asked more often is worth an index. */
const few = 4;

/** The first of some that has a segment. After an edit it is asked once or twice, and in a first check once a way. */
function indexOnceMany<T>(
  all: readonly T[],
  segmentsOf: (one: T) => readonly Segment[],
): (segment: Segment) => T | undefined {
  let asked = 0;
  const index = lazy(() => {
    const first = new Map<Segment, T>();
    for (const one of all) for (const segment of segmentsOf(one)) if (!first.has(segment)) first.set(segment, one);
    return first;
  });
  return (segment) => (++asked > few ? index().get(segment) : all.find((one) => segmentsOf(one).includes(segment)));
}

/**
 * The fixes of a finding that its place allows. `facts` are those of the block the finding stands in, `built` whether
 * what it describes is more than a design.
 */
function gradedFixes(finding: Finding, facts: Facts, built: boolean): Finding {
  if (finding.check.startsWith("language/")) return finding;
  const fixes = finding.fixes.flatMap((fix) => allowed(fix, finding, facts, built) ?? []);
  return fixes.length === finding.fixes.length && fixes.every((fix, index) => fix === finding.fixes[index])
    ? finding
    : { ...finding, fixes };
}

function allowed(fix: Fix, { spot: { segment } }: Finding, facts: Facts, built: boolean): Fix | undefined {
  if (fix.misread) return fix;
  for (const edit of fix.edits) {
    const at = factAt(facts, edit, segment);
    const removes = segment.text.slice(edit.start, edit.end).trim() !== "";
    if (at && removes && isMeasured(at, edit)) return undefined;
    if (!built || fix.slip) continue;
    if (at && installed.has(at.fact.word) && !isTestBlock(at.kind) && (removes || changes(edit))) return undefined;
    if (claimed.has(firstWord(edit))) return undefined;
  }
  return built && fix.slip ? asMisread(fix, segment) : fix;
}

const firstWord = ({ text }: TextEdit): string => /^\s*\n\s*([^\s]+)/.exec(text)?.[1] ?? "";

/** Words added to a line of a part say more of it, or something else: figures are something else. */
const changes = ({ text }: TextEdit): boolean => /^[^\n"]*\d/.test(text);

/** What stood there stays in a note below. */
function asMisread(fix: Fix, { text }: Fact["segment"]): Fix {
  const [edit] = fix.edits;
  const before = edit ? text.slice(edit.start, edit.end).trim() : "";
  const title = `It was written wrongly: ${small(fix.title)}`;
  if (!edit || before === "") return { ...fix, title };
  const last = Math.max(...fix.edits.map(({ end }) => end));
  const breakAt = text.slice(last).search(/\r?\n/);
  const at = breakAt < 0 ? text.length : last + breakAt;
  const indent = /^[ \t]*/.exec(text.slice(text.lastIndexOf("\n", edit.start - 1) + 1))?.[0] ?? "";
  const note = `\n${indent}note "Corrected: was written ${before.replace(/["\\]/g, "")}"`;
  return { ...fix, title, edits: [...fix.edits, { start: at, end: at, text: note }] };
}

const small = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1);

interface FactIn {
  readonly fact: Fact;
  readonly kind: Facts["kind"];
}

/** The innermost statement that an edit is in. */
function factAt(facts: Facts, edit: TextEdit, segment: Fact["segment"]): FactIn | undefined {
  for (const fact of facts.list) {
    if (fact.segment !== segment || edit.start < fact.start || edit.end > fact.end) continue;
    return (fact.inner && factAt(fact.inner, edit, segment)) ?? { fact, kind: facts.kind };
  }
  return undefined;
}

/** Whether an edit takes away something that was read, or what it was read with: a test voltage, a test current. */
function isMeasured({ fact, kind }: FactIn, edit: TextEdit): boolean {
  const row = rowOf(kind, fact.word);
  if (!row?.reads) return false;
  const read = new Set(readArgs(row).map(({ name }) => name));
  return Object.entries(fact.args).some(([name, value]) => {
    const values = value === undefined ? [] : [value].flat();
    const counts = read.has(name) || (isTestBlock(kind) && !named.has(name));
    return counts && values.some(({ start, end }) => edit.start < end && start < edit.end);
  });
}

/** What a test is called by is no result of it. */
const named: ReadonlySet<string> = new Set(["point", "name", "service", "place", "title", "why"]);
