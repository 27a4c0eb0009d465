/** What is tried with a text, and must hold whatever the text is. Each throws where it does not. */
import assert from "node:assert/strict";
import fc from "fast-check";
import { lex } from "../../grammar/lexer.ts";
import { parse } from "../../grammar/parser.ts";
import { networkOf, studiesOn } from "../../server/boards/network.ts";
import { enter } from "../../server/entry/enter.ts";
import { readingsOfTable } from "../../server/entry/table.ts";
import { blankSnippet, blankTests } from "../../server/features/blanks.ts";
import { safeEdits } from "../../server/features/fix-all.ts";
import { inlayHints } from "../../server/features/inlay.ts";
import { lensPlaces, lensText } from "../../server/features/lenses.ts";
import { earthingChoices, newSchedule, premisesChoices, standardChoices } from "../../server/features/new-schedule.ts";
import { proposalEdits } from "../../server/features/proposal.ts";
import { reportOf } from "../../server/features/report.ts";
import { reportKinds } from "../../server/features/report-kinds.ts";
import { answering, asking, conversations } from "../../server/features/review.ts";
import { format } from "../../server/format/format.ts";
import { isMerged, merge, viewOf as sideOf } from "../../server/merge/merge.ts";
import { textOf as mergedText } from "../../server/merge/write.ts";
import { parseAddress, printAddress } from "../../server/readings/address.ts";
import { entriesOfInstallation } from "../../server/readings/entries.ts";
import { comparisonOf } from "../../server/reports/compare/comparison.ts";
import { comparisonReport } from "../../server/reports/compare/report.ts";
import { inspectionReport } from "../../server/reports/inspection/inspection.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import type { Report } from "../../server/reports/setting/document.ts";
import { reportHtml } from "../../server/reports/setting/html.ts";
import { reportMarkdown } from "../../server/reports/setting/markdown.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { worksheet } from "../../server/reports/worksheet/worksheet.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { failures } from "../../server/rules/frame/run-rules.ts";
import { documentOf, textOf } from "../../server/syntax/document.ts";
import { applyEdit } from "../../server/syntax/edit.ts";
import { split } from "../../server/syntax/split.ts";
import { applyEdits, lineStarts, positionOf } from "../../server/text/lines.ts";
import { written } from "../../server/views/entry.ts";
import { gridView } from "../../server/views/grid.ts";
import { viewKinds } from "../../server/views/kinds.ts";
import { viewOf } from "../../server/views/view.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject, type ProjectResult } from "../../server/workspace/project.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { meaningOf } from "../format/helpers.ts";
import { openSample } from "../helpers/cursor.ts";
import { cursorAt, everyFeature, isInside, wholeFile } from "../helpers/every-feature.ts";
import { threeWay } from "../merge/edits.ts";
import { Files } from "../workspace/files.ts";
import { changesOf, startingFolder } from "../workspace/folder-changes.ts";
import { byTerminal, byWorkspace } from "../workspace/judgements.ts";
import { OpenText } from "../workspace/open-text.ts";
import { commanding } from "./commands.ts";
import type { Dice } from "./dice.ts";
import { anyText, fewLines, figures, halfTyped, oddSample, smallExample, withFigure } from "./texts.ts";
import { wire } from "./wire.ts";

// A check that falls over is a fault to be seen here, not a finding to be passed over.
failures.thrown = true;

/** What a trial is given: its choices, and a place to leave the text it is at. */
export interface Trial {
  readonly dice: Dice;
  /** Notes the text that is tried next, so that one that fails can be kept. */
  at(text: string): void;
}

const alone = { resolve: (_: string, use: string) => use, file: () => ({ failure: "there is no such file." }) };

const check = (text: string): ProjectResult => checkProject(fileOfText("a.ways", text), alone);

/** Words that a calculation leaves behind when it has no answer. */
const leftovers = /\bNaN\b|Infinity|\bundefined\b|\[object /;

export function isSaid(what: string, text: string, source: string): void {
  const found = leftovers.exec(text);
  if (!found || source.includes(found[0])) return;
  assert.fail(`${what} says ${found[0]}: ${text.slice(Math.max(0, found.index - 120), found.index + 60)}`);
}

/** The same of all texts in plain data, whose figures are figures. */
function isPlain(what: string, value: unknown, source: string): void {
  JSON.stringify(value, (key, one: unknown) => {
    if (leadsBack.has(key)) return null;
    if (typeof one === "number") assert.ok(Number.isFinite(one), `${what} holds ${one} as ${key}`);
    if (typeof one === "string") isSaid(what, one, source);
    return one;
  });
}

/** What of plain data leads back to the text. */
const leadsBack: ReadonlySet<string> = new Set(["segment", "mark", "study"]);

/** Division, reading, layout: what a text costs before anything is made of it. */
function reading(text: string, isSlow: boolean): void {
  assert.equal(textOf(documentOf(text)), text, "the segments are not the text");
  const { model } = fileOfText("a.ways", text);
  for (const [segment, problems] of model.problems) for (const one of problems) isInside({ segment, ...one });
  const laid = format(text);
  if (!laid) return;
  assert.equal(applyEdits(text, laid.edits), laid.text, "the edits of the layout are not its text");
  assert.equal(format(laid.text)?.text, undefined, "laid out twice is not laid out once");
  assert.deepEqual(commentsOf(laid.text), commentsOf(text), "a comment was lost");
  if (isSlow) assert.equal(meaningOf(laid.text), meaningOf(text), "the layout changed what is said");
}

const commentsOf = (text: string): string[] =>
  split(text)
    .flatMap((segment) => lex(segment.text).comments.map(({ image }) => image.trimEnd()))
    .sort();

/** What is found in a text that is open: it is worked out once, whoever asks. */
function checking(snapshot: Snapshot, text: string): void {
  for (const project of snapshot.projects) {
    for (const { findings } of project.result.files) {
      for (const { spot, message, value, limit, working, related, fixes } of findings) {
        isInside(spot);
        isPlain("a finding", { message, value, limit, working, said: related.map((one) => one.message) }, text);
        for (const one of related) isInside(one.spot);
        for (const { edits } of fixes) for (const edit of edits) isInside({ segment: spot.segment, ...edit });
      }
    }
  }
}

const settings = [reportText, reportMarkdown, reportHtml] as const;

/** In one of the settings: another text comes to the others sooner than this one does to all. */
function set(report: Report | { readonly failure: string } | undefined, text: string, dice: Dice): void {
  if (!report || "failure" in report) return;
  isSaid(report.title, dice.pick(settings)(report), text);
}

/** A few of the reports and views of a text, so that more texts have their turn. */
function reports(snapshot: Snapshot, text: string, { dice }: Trial, share = 0.3): void {
  const { installations } = snapshot;
  const some = (): boolean => dice.chance(share);
  for (const kind of reportKinds.filter((one) => (one === "editions" ? dice.chance(share / 10) : some()))) {
    const [place] = installations[0]?.boards ?? [];
    const way = place && `${place.board.head.name}/${place.board.ways[0]?.id}`;
    set(reportOf(snapshot, kind, dice.pick([undefined, way, place?.board.head.name])), text, dice);
  }
  for (const installation of installations) {
    if (some()) set(worksheet(installation, { again: dice.chance(0.5) }), text, dice);
    if (some()) set(scheduleOf(installation, { fill: dice.pick(["filled", "blank", "last"]) }), text, dice);
    if (some()) set(inspectionReport([installation], checkInstallation(installation).findings), text, dice);
    for (const place of installation.boards) {
      for (const kind of viewKinds)
        if (some()) isPlain(kind, viewOf(kind, { installations, installation, place }, snapshot.findings), text);
    }
    for (const { address } of entriesOfInstallation(installation)) {
      const printed = printAddress(address);
      const parsed = parseAddress(printed);
      assert.equal(parsed && printAddress(parsed), printed, "an address is not what it is printed as");
    }
  }
}

function beside(snapshot: Snapshot, text: string): void {
  for (const { segment } of lensPlaces(snapshot)) isSaid("a lens", lensText(snapshot, { segment }) ?? "", text);
  for (const hint of inlayHints(snapshot, "both", () => true)) {
    isSaid("a hint", `${hint.text}\n${hint.tooltip}`, text);
    isInside({ segment: hint.segment, start: hint.offset, end: hint.offset });
  }
  for (const segment of snapshot.file.document.segments) {
    for (const edit of [blankTests(snapshot, segment), blankSnippet(snapshot, segment)])
      if (edit) isInside({ segment, ...edit });
    for (const edit of proposalEdits(snapshot, segment)) isInside({ segment, ...edit });
  }
  conversations(snapshot);
}

/** Fixes that are applied without being looked at leave a text with no more faults of the language. */
function fixing(snapshot: Snapshot, text: string): void {
  const edits = safeEdits(snapshot).map(({ segment, start, end, text: by }) => {
    const begin = snapshot.positions.offset(segment, 0);
    return { start: begin + start, end: begin + end, text: by };
  });
  if (edits.length === 0) return;
  reading(applyEdits(text, edits), false);
}

function features(snapshot: Snapshot, text: string, trial: Trial): void {
  wholeFile(snapshot);
  for (let left = 6; left > 0; left--) {
    const cursor = cursorAt(snapshot, text, trial.dice.below(text.length + 1));
    if (!cursor) continue;
    everyFeature(snapshot, cursor);
    asking(snapshot, cursor, "why?");
    answering(snapshot, cursor, "so");
  }
}

/** An edit of a document gives what its text gives afresh. */
function editing(text: string, { dice }: Trial): void {
  let document = documentOf(text);
  let now = text;
  for (let left = 5; left > 0; left--) {
    const start = dice.below(now.length + 1);
    const end = Math.min(now.length, start + dice.below(8));
    const starts = lineStarts(now);
    const range = { start: positionOf(starts, start), end: positionOf(starts, end) };
    const by = dice.pick(["", "}", "{", '"', "\n", "x", " ", "0", "way 7 {\n", "\r\n"]);
    document = applyEdit(document, { range, text: by });
    now = textOf(document);
    const shape = (one: typeof document) => one.segments.map(({ kind, word, text: own }) => [kind, word, own]);
    assert.deepEqual(shape(document), shape(documentOf(now)), "an edit divides otherwise than its text");
  }
}

/** Three versions: what one side alone changed is taken, and no line of either is lost. */
function merging({ dice, at }: Trial): number {
  const [versions] = fc.sample(threeWay({ broken: dice.chance(0.5) }), { seed: dice.below(2 ** 31), numRuns: 1 });
  if (!versions) return 0;
  const { base, ours, theirs } = versions;
  at([base, ours, theirs].join("\n# ---- the next version\n"));
  const version = (text: string) => ({ text, bom: false });
  const outcome = merge({ base: version(base), ours: version(ours), theirs: version(theirs) });
  if (!isMerged(outcome)) return 3;
  mergedText(outcome, { size: 7, style: "diff3", base: "base", ours: "ours", theirs: "theirs" });
  if (ours === base) assert.equal(sideOf(outcome.pieces, "ours"), sideOf(outcome.pieces, "theirs"));
  const [was, is] = [ours, theirs].map((text) => check(text).installations[0]);
  if (!was || !is) return 3;
  const comparison = comparisonOf({ called: "ours", installation: was }, { called: "theirs", installation: is });
  set(comparisonReport(comparison), ours + theirs, dice);
  assert.equal(
    comparisonOf({ called: "a", installation: was }, { called: "b", installation: was }).places.length,
    0,
    "a version differs from itself",
  );
  return 3;
}

/** A table from outside, of our headings and of none. */
function entering({ dice, at }: Trial): number {
  const text = smallExample(dice);
  at(text);
  const heads = [
    "way",
    "board",
    "Zs (Ω)",
    "R1+R2",
    "r1",
    "rn",
    "r2",
    "L-E",
    "polarity",
    "on",
    "with",
    "test",
    "result",
    "x",
  ];
  const cells = ["1", "A", "A/1", "3", ...figures, "LIM", "ok", "2026-03-05", "M1", "Zs", ">999", "", "\u202e", '"'];
  const columns = dice.times(1 + dice.below(8), () => dice.pick(heads));
  const rows = dice.times(dice.below(6), () => dice.times(dice.below(10), () => dice.pick(cells)));
  for (const installation of check(text).installations) {
    const table = {
      head: { line: 1, cells: columns },
      rows: rows.map((row, index) => ({ line: index + 2, cells: row })),
    };
    const read = readingsOfTable(installation, table, { on: "2026-04-01" });
    if ("failure" in read) continue;
    const { misfits, blocks } = enter(installation, read.incoming);
    isSaid("what does not fit", misfits.map(({ why }) => why).join("\n"), text + JSON.stringify(rows));
    isSaid("what is entered", blocks.flatMap(({ lines }) => lines).join("\n"), text + JSON.stringify(rows));
  }
  return 1;
}

/** A reading typed into the grid: of what stands in its way it takes the place of one reading at most. */
async function typedIn({ dice, at }: Trial): Promise<number> {
  const text = dice.chance(0.5) ? smallExample(dice) : anyText(dice);
  at(text);
  const { snapshot } = await openSample(text);
  for (const installation of snapshot.installations)
    for (const place of installation.boards) {
      const view = gridView(place, networkOf(installation), []);
      for (const study of studiesOn(place).slice(0, 12)) {
        const row = dice.pick([undefined, ...view.rows.filter(({ id }) => id === study.way.id)]);
        const cell = row && dice.pick([undefined, ...row.cells]);
        const entry = {
          column: cell?.column ?? dice.pick(columnKeys),
          text: dice.pick([...figures, "o", "ok", "LIM no access", 'N/A "why"', "wrong", '"', "{", "1 }\n", ""]),
          day: cell?.on || dice.pick(["2026-03-05", "2026-02-30", ""]),
          ...(row?.point === undefined ? {} : { point: row.point }),
          ...(dice.chance(0.7) ? { why: dice.pick(['Mis"read', "a\nb", "", "\u202e"]) } : {}),
          ...(dice.chance(0.3) ? { draft: cell?.text ?? "1" } : {}),
          ...(dice.chance(0.3) ? { instrument: dice.pick(["M1", "M 1", '"']) } : {}),
        };
        const result = written(study, entry);
        if ("problem" in result) isSaid("what is refused", result.problem, JSON.stringify(entry));
        if ("edit" in result) keepsTheRest(study.way.segment.text, result.edit, JSON.stringify(entry));
      }
    }
  return 1;
}

const columnKeys: readonly string[] = [
  "r1",
  "R1+R2",
  "R2",
  "L-N",
  "L-E",
  "LN-E",
  "Zs",
  "RCD 1×",
  "button",
  "polarity",
  "x",
];

/** A figure or a word with the reason that belongs to it: no more than that is gone, and nothing is in another order. */
function keepsTheRest(
  before: string,
  { start, end, text }: { start: number; end: number; text: string },
  said: string,
) {
  const tokens = (of: string): string[] => lex(of).tokens.map(({ image }) => image);
  const gone = tokens(before.slice(start, end));
  assert.ok(gone.length <= 2, `${said} takes the place of ${gone.join(" ")}`);
  const [was] = gone;
  assert.ok(was === undefined || said.includes('"draft"') || text.includes(was), `${said}: ${was} is lost in ${text}`);
  const left = tokens(before.slice(0, start)).length + tokens(before.slice(end)).length;
  assert.equal(left, tokens(before).length - gone.length, `${said} cuts a word`);
}

/** Figures of a schedule, one after another, swept over all that may stand there. */
async function sweeping(trial: Trial): Promise<number> {
  const text = smallExample(trial.dice);
  const open = new OpenText(text);
  for (let left = figuresSwept; left > 0; left--) {
    const swept = withFigure(text, trial.dice, trial.dice.pick(figures));
    trial.at(swept);
    const snapshot = await open.as(swept);
    checking(snapshot, swept);
    beside(snapshot, swept);
    reports(snapshot, swept, trial, 0.1);
  }
  await open.isAsFresh();
  return figuresSwept;
}

const figuresSwept = 6;

/** A circuit that can be calculated, but for a word: what follows from it is said or left out, and never a leftover. */
async function odd(trial: Trial): Promise<number> {
  const text = oddSample(trial.dice);
  trial.at(text);
  reading(text, true);
  const { snapshot } = await openSample(text);
  checking(snapshot, text);
  features(snapshot, text, trial);
  beside(snapshot, text);
  fixing(snapshot, text);
  reports(snapshot, text, trial);
  return 1;
}

async function schedules(trial: Trial): Promise<number> {
  const text = anyText(trial.dice);
  trial.at(text);
  reading(text, true);
  editing(text, trial);
  const { snapshot } = await openSample(text);
  checking(snapshot, text);
  features(snapshot, text, trial);
  beside(snapshot, text);
  fixing(snapshot, text);
  if (trial.dice.chance(0.4)) reports(snapshot, text, trial);
  return 1;
}

/** Findings are the same once a sound layout is made of a text. */
function laidOut(trial: Trial): number {
  const text = anyText(trial.dice);
  trial.at(text);
  const laid = format(text);
  if (!laid) return 1;
  const found = (one: string): string[] =>
    check(one)
      .files.flatMap(({ findings }) => findings.map(({ check: id, severity }) => `${severity} ${id}`))
      .sort();
  assert.deepEqual(found(laid.text), found(text), "the layout changed what is found");
  return 1;
}

function lines(trial: Trial): number {
  const count = 60;
  for (let left = count; left > 0; left--) {
    const text = fewLines(trial.dice);
    trial.at(text);
    parse(text);
    reading(text, left % 2 === 0);
  }
  return count;
}

async function typing(trial: Trial): Promise<number> {
  const base = smallExample(trial.dice);
  const open = new OpenText(base);
  for (let left = placesTyped; left > 0; left--) {
    const { text, offset } = halfTyped(base, trial.dice);
    trial.at(text);
    const snapshot = await open.as(text);
    wholeFile(snapshot);
    const cursor = cursorAt(snapshot, text, offset);
    if (cursor) everyFeature(snapshot, cursor);
  }
  await open.isAsFresh();
  return placesTyped;
}

const placesTyped = 12;

/** Edits over several files that use each other, on disk and in the editor: as if just started, after every one. */
async function folder(trial: Trial): Promise<number> {
  const files = new Files(startingFolder);
  const done: string[] = [];
  const steps = 8;
  for (let step = 0; step < steps; step++) {
    const change = changesOf(files, trial.dice.next);
    done.push(change.kind);
    await change.make();
    trial.at(`${done.join("\n")}\n`);
    const expected = byTerminal(files);
    for (const name of files.names)
      assert.deepEqual(
        await byWorkspace(files, name),
        expected.get(files.path(name)),
        `${name} after ${done.join(", ")}`,
      );
  }
  return steps;
}

/** What a new schedule may begin with. */
function beginning({ dice, at }: Trial): number {
  const text = newSchedule({
    name: dice.pick(["Loft", "", '"', "\\", "a\nb", "\u202e", "{}", "#"]),
    earthing: dice.pick(earthingChoices).id,
    standard: dice.pick(standardChoices).id,
    ...(dice.chance(0.5) ? { premises: dice.pick(premisesChoices).id } : {}),
    ways: dice.pick([0, 1, 2.5, 12, 48, 1e9, -1, Number.NaN]),
  });
  at(text);
  const errors = check(text).files.flatMap(({ findings }) =>
    findings.filter(({ check: id }) => id.startsWith("language/")),
  );
  assert.deepEqual(
    errors.map(({ message }) => message),
    [],
    "a new schedule has faults of the language",
  );
  return 1;
}

/** Each kind of trial with how many of a hundred are of it, and how many texts or edits one tries. */
export const kinds: Readonly<
  Record<string, readonly [share: number, run: (trial: Trial) => number | Promise<number>]>
> = {
  lines: [29, lines],
  odd: [8, odd],
  schedules: [17, schedules],
  typing: [8, typing],
  values: [8, sweeping],
  layout: [6, laidOut],
  folder: [4, folder],
  merge: [4, merging],
  enter: [3, entering],
  grid: [3, typedIn],
  new: [2, beginning],
  commands: [4, commanding],
  wire: [4, wire],
};

/** The kind a roll between 0 and 1 stands for. */
export function kindFor(roll: number): string {
  let left = roll * 100;
  for (const [kind, [share]] of Object.entries(kinds)) {
    left -= share;
    if (left < 0) return kind;
  }
  return "lines";
}
