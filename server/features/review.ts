/** Questions of a schedule with their answers, as conversations beside its lines, and the edits that carry them on. */

import { bindSegment } from "../model/bind.ts";
import { wordAt } from "../model/fact-values.ts";
import type { Fact, Facts } from "../model/values.ts";
import type { Spot } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import type { TextEdit } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import type { Cursor } from "./cursor.ts";
import { withinOf } from "./cursor.ts";

interface Remark {
  readonly text: string;
  readonly spot: Spot;
}

interface Conversation {
  readonly question: Remark;
  readonly answers: readonly Remark[];
}

export type Said = { readonly segment: Segment; readonly edit: TextEdit } | { readonly problem: string };

/** All of a file, in the order of its text. */
export function conversations({ file: { model } }: Snapshot): Conversation[] {
  const boards = [...model.installations.flatMap((one) => one.boards), ...model.boards];
  const blocks: readonly Facts[] = [
    model.facts,
    ...model.installations.map(({ head }) => head.facts),
    ...boards.flatMap(({ head, ways }) => [head.facts, ...ways.map(({ facts }) => facts)]),
  ];
  // A run of spare ways, or circuits of one type, share lines.
  const seen = new Set<Fact>();
  return blocks
    .flatMap(withInner)
    .flatMap(({ list }) => inBlock(list.filter((fact) => !seen.has(fact) && seen.add(fact))));
}

const withInner = (facts: Facts): Facts[] => [
  facts,
  ...facts.list.flatMap(({ inner }) => (inner ? withInner(inner) : [])),
];

function inBlock(list: readonly Fact[]): Conversation[] {
  const found: { question: Remark; answers: Remark[] }[] = [];
  for (const fact of list) {
    if (fact.word === "query") found.push({ question: remark(fact), answers: [] });
    else if (fact.word === "answer") found.at(-1)?.answers.push(remark(fact));
  }
  return found;
}

const remark = (fact: Fact): Remark => ({
  text: wordAt(fact, "text") ?? "",
  spot: { segment: fact.segment, start: fact.start, end: fact.end },
});

/** Words as the language holds them between quotes. */
const quoted = (text: string): string =>
  `"${text.replace(/\s+/g, " ").trim().replace(/\\/g, "\\\\").replace(/"/g, '\\"')}"`;

/** An answer below the last line of the conversation that a line belongs to. */
export function answering(snapshot: Snapshot, cursor: Cursor, text: string): Said {
  const all = conversations(snapshot).flatMap(({ question, answers }) => {
    const lines = [question, ...answers];
    return lines.some(({ spot }) => holds(spot, cursor)) ? [lines.at(-1) ?? question] : [];
  });
  const [last] = all;
  if (!last) return { problem: "That question is not there any more." };
  return below(snapshot, last.spot, `answer ${quoted(text)}`);
}

const holds = ({ segment, start, end }: Spot, { segment: at, offset }: Cursor): boolean => {
  const line = segment.text.lastIndexOf("\n", start - 1) + 1;
  return segment === at && offset >= line && offset <= end;
};

/**
 * A question about a line stands below it, in its block; about the first line of a block, in that block. A test holds no
 * questions: one about a reading stands below its test, and repeats what it is about.
 */
export function asking(snapshot: Snapshot, { segment, offset }: Cursor, text: string): Said {
  const own = lineAt(segment.text, offset);
  const there = below(snapshot, { segment, ...own }, `query ${quoted(text)}`);
  if (!("problem" in there)) return there;
  const about = segment.text
    .slice(own.start, own.end)
    .replace(/(?:^|\s)#.*/, "")
    .replace(/\{\s*$/, "")
    .replace(/\s+/g, " ")
    .trim();
  const query = `query ${quoted(about === "" ? text : `${about}: ${text}`)}`;
  for (let end = own.end; end < segment.text.length; ) {
    const next = lineAt(segment.text, end + 1);
    if (/^\s*\}/.test(segment.text.slice(next.start, next.end))) {
      const said = below(snapshot, { segment, ...next }, query);
      if (!("problem" in said)) return said;
    }
    end = next.end;
  }
  return there;
}

function lineAt(text: string, offset: number): Pick<Spot, "start" | "end"> {
  const found = text.indexOf("\n", offset);
  return { start: text.lastIndexOf("\n", offset - 1) + 1, end: found < 0 ? text.length : found };
}

function below(snapshot: Snapshot, { segment, start, end }: Spot, line: string): Said {
  const { text } = segment;
  const from = text.lastIndexOf("\n", start - 1) + 1;
  const found = text.indexOf("\n", end);
  const sign = text.includes("\r\n") ? "\r\n" : "\n";
  const first = text.slice(from, found < 0 ? text.length : found).replace(/\r$/, "");
  const indent = `${/^\s*/.exec(first)?.[0] ?? ""}${/\{\s*(#.*)?$/.test(first) ? "  " : ""}`;
  const at = found < 0 ? text.length : found + 1;
  const edit = { start: at, end: at, text: found < 0 ? `${sign}${indent}${line}` : `${indent}${line}${sign}` };
  return checked(snapshot, segment, edit);
}

/** What the language would not take there is not written. */
function checked(snapshot: Snapshot, segment: Segment, edit: TextEdit): Said {
  const within = withinOf(snapshot, segment);
  const before = new Set(bindSegment(segment, within).problems.map(({ message }) => message));
  const text = segment.text.slice(0, edit.start) + edit.text + segment.text.slice(edit.end);
  const fresh = bindSegment({ ...segment, text }, within).problems.find(({ message }) => !before.has(message));
  return fresh
    ? { problem: "A question can stand in an installation, a board or a way: ask it there." }
    : { segment, edit };
}
