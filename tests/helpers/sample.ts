/**
 * Samples with marks: a line of carets stands below what it claims. One parser for every test.
 */

import { format } from "../../server/format/format.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import type { Finding, Rule, Setting } from "../../server/rules/frame/rule.ts";
import { failures } from "../../server/rules/frame/run-rules.ts";
import { Positions } from "../../server/syntax/document.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

failures.thrown = true;

/** A claim: the line, and the columns the carets stand under. */
export interface Mark {
  readonly line: number;
  readonly from: number;
  readonly to: number;
}

/** Takes the caret lines out of a sample. */
export function unmark(sample: string): { text: string; marks: Mark[] } {
  const lines: string[] = [];
  const marks: Mark[] = [];
  for (const line of sample.split("\n")) {
    const claims = /^[ \t]*\^[\^ ]*$/.test(line);
    if (!claims) lines.push(line);
    else
      for (const found of line.matchAll(/\^+/g))
        marks.push({ line: lines.length - 1, from: found.index, to: found.index + found[0].length });
  }
  return { text: lines.join("\n"), marks };
}

const usualSupply = "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA";

/** Puts a way's lines into the surroundings a setting describes. Returns the text and how many lines stand above. */
export function inSetting(lines: string, setting: Setting = {}): { text: string; above: number } {
  if (/^\s*(wayfile|installation|instrument)\b/.test(lines)) return { text: lines, above: 0 };
  const head = [
    "wayfile 1",
    ...(setting.before?.split("\n") ?? []),
    'installation "Sample" {',
    `standard ${setting.standard ?? "BS 7671:2018+A2:2022"}`,
    `stage ${setting.stage ?? "design"}`,
    `work ${setting.work ?? "new"}`,
    `premises ${setting.premises ?? "commercial"}`,
    "supply {",
    ...(setting.supply ?? usualSupply).split("\n"),
    "}",
    'board A "Board" {',
    ...(setting.board ?? "fed-from supply\nmain-switch BS EN 60947-3 100 A").split("\n"),
  ];
  return { text: [...head, lines, "}", "}", ""].join("\n"), above: head.length };
}

const alone: Sources = { file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use };

/** What one rule finds in a text, as marks. Other rules do not run. */
export function marksOf(rule: Rule, text: string): { mark: Mark; message: string }[] {
  const file = fileOfText("sample.ways", text);
  const positions = new Positions(file.document);
  const problems = [...file.model.problems.values()].flat();
  if (problems.length > 0)
    throw new Error(`The sample is not sound: ${problems.map((problem) => problem.message).join(" ")}`);
  const findings = installationsOf([file]).flatMap((installation) => checkInstallation(installation, [rule]).findings);
  return findings.map(({ spot, message }) => ({ mark: markOf(spot, positions), message }));
}

/** Where a check of any kind, one of the language included, finds something in a text. All checks run. */
export function marksOfCheck(id: string, text: string): Mark[] {
  const file = fileOfText("sample.ways", text);
  const positions = new Positions(file.document);
  return checkProject(file, alone).files.flatMap(({ findings }) =>
    findings.filter(({ check }) => check === id).map(({ spot }) => markOf(spot, positions)),
  );
}

function markOf({ segment, start, end }: Finding["spot"], positions: Positions): Mark {
  const [from, to] = [positions.place(segment, start), positions.place(segment, end)];
  return {
    line: from.line,
    from: from.character,
    to: to.line === from.line ? to.character : Number.POSITIVE_INFINITY,
  };
}

/** Every finding of a whole text, as `check at line` with its message; what a verdict speaks for is listed behind it. */
export function findingsOf(
  text: string,
  sources: Sources = alone,
): { check: string; line: number; severity: string; message: string }[] {
  const file: LoadedFile = fileOfText("sample.ways", text);
  const positions = new Positions(file.document);
  const own = checkProject(file, sources).files.find((entry) => entry.file === file);
  const all = (own?.findings ?? []).flatMap((finding) => [finding, ...(finding.explains ?? [])]);
  return all.map(({ check, severity, message, spot }) => ({
    check,
    line: positions.place(spot.segment, spot.start).line + 1,
    severity,
    message,
  }));
}

/** A sample as the formatter lays it out, its carets below what they were below. */
export function laidOut(sample: string): string {
  const { text, marks } = unmark(sample);
  const isWhole = /^\s*(wayfile|installation|instrument)\b/.test(text);
  const whole = isWhole ? `${text}\n` : `wayfile 1\ninstallation "Sample" {\n  board A "Board" {\n${text}\n  }\n}\n`;
  const formatted = format(whole);
  // Laid out already, or with a fault that keeps it as it is.
  if (!formatted) return sample;
  const after = formatted.text.trimEnd().split("\n");
  const start = after.findIndex((line) => /^ {2}board A "Board"/.test(line)) + 1;
  const lines = isWhole ? after : after.slice(start, -2).map((line) => line.replace(/^ {4}/, ""));
  const own = lines[0] === "" ? lines.slice(1) : lines;
  return withMarks(text.split("\n"), text.endsWith("\n") ? [...own, ""] : own, marks);
}

const squeezed = (line: string): string => line.replace(/\s+/g, "");

function withMarks(before: readonly string[], after: readonly string[], marks: readonly Mark[]): string {
  const below = new Map<number, Mark[]>();
  for (const { line, from, to } of marks) {
    const was = before[line] ?? "";
    const nth = before.slice(0, line).filter((one) => squeezed(one) === squeezed(was)).length;
    const at = after.flatMap((one, index) => (squeezed(one) === squeezed(was) ? [index] : []))[nth];
    if (at === undefined) throw new Error(`The marked line is not laid out as one: ${was}`);
    const now = after[at] ?? "";
    const [start, end] = [
      columnOf(now, squeezed(was.slice(0, from)).length),
      columnOf(now, squeezed(was.slice(0, to)).length - 1),
    ];
    below.set(at, [...(below.get(at) ?? []), { line: at, from: start, to: end + 1 }]);
  }
  return after.flatMap((line, at) => [line, ...caretsOf(below.get(at) ?? [])]).join("\n");
}

/** Where the sign of so many before it, blanks left out, is in a line. */
function columnOf(line: string, count: number): number {
  let seen = 0;
  for (let at = 0; at < line.length; at++) {
    if (/\s/.test(line[at] ?? "")) continue;
    if (seen === count) return at;
    seen++;
  }
  return line.length;
}

function caretsOf(marks: readonly Mark[]): string[] {
  if (marks.length === 0) return [];
  let carets = "";
  for (const { from, to } of marks.toSorted((a, b) => a.from - b.from))
    carets = carets.padEnd(from) + "^".repeat(to - from);
  return [carets];
}
