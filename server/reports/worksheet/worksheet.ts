/**
 * A worksheet: what is to be tested, in the order of the trade, with what each reading should be, its limit, and a blank
 * for every reading that is not there yet.
 */
import { deviceName } from "../../circuit/describe.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { Way } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { isAbsent } from "../../model/values.ts";
import { expectedCircuit } from "../../readings/expected.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import { planDead } from "../../readings/plan-dead.ts";
import { planLive } from "../../readings/plan-live.ts";
import { type Bound, marginTo, type PlannedTest, type TestStep } from "../../readings/planned.ts";
import { type Block, paragraph, type Report, type Section, table } from "../setting/document.ts";
import { boardNotes, goLive, originNotes, proveDead, stepOrder, stepTitles, wayNotes } from "./steps.ts";

/** What a sheet is for: one way, one board with its ways, or all of an installation. */
export interface WorksheetScope {
  readonly board?: BoardInPlace;
  readonly way?: Way;
}

const cautions =
  "Help for a competent person, not a certificate. What is expected follows from the lengths and sizes in the schedule; the limits from the edition it names. Where they disagree with what you find, find out why.";

export function worksheet(installation: Installation, { board, way }: WorksheetScope = {}): Report {
  const boards = board ? [board] : installation.boards;
  const sections = way
    ? boards.flatMap((one) => waySections(studyWay(way, one.context)))
    : [
        ...(board ? [] : sheetSections("Origin", planSupply(installation), originNotes)),
        ...boards.flatMap(boardSections),
      ];
  const what = way ? `way ${boards[0]?.board.head.name}/${way.id}` : board ? `board ${board.board.head.name}` : "";
  const blanks = sections.flatMap(({ blocks }) => blocks).reduce((sum, block) => sum + blanksIn(block), 0);
  return {
    title: `Test worksheet: ${installation.head.title}${what === "" ? "" : `, ${what}`}`,
    lead: [
      installation.edition ? `To ${installation.edition.id}` : "No edition is named: limits are left out",
      blanks === 0 ? "Nothing is left to read." : `${blanks} still to be read.`,
      "Tested by ____________________   Date ______________   Instrument ______________",
    ],
    sections,
    cautions,
  };
}

const blanksIn = (block: Block): number =>
  block.kind === "table" ? block.rows.flat().filter((cell) => cell.startsWith(blank) || cell === tick).length : 0;

function boardSections({ board, context }: BoardInPlace): Section[] {
  const { name, title } = board.head;
  const heading = `Board ${name}${title === "" ? "" : `: ${title}`}`;
  const ways = board.ways.flatMap((way) => waySections(studyWay(way, context)));
  return [...sheetSections(heading, planBoard(context), boardNotes), ...ways];
}

function waySections(study: WayStudy): Section[] {
  if (study.isSpare) return [];
  const { way, context, device } = study;
  const kind = way.kind === undefined ? "" : `, ${way.kind}`;
  const heading = `Way ${context.board.name}/${way.id}: ${way.title === "" ? "no description" : way.title}${kind}`;
  const tests = [...planDead(study), ...planLive(study)];
  const note = expectedCircuit(study)?.note;
  const sections = sheetSections(heading, tests, (step) => wayNotes(study, step));
  const about = [...(device ? [deviceName(device)] : []), ...(note ? [note] : [])];
  const [head, ...rest] = sections;
  if (!head || about.length === 0) return sections;
  return [{ ...head, blocks: [paragraph(about.join(". ")), ...head.blocks] }, ...rest];
}

/** One heading and a part for each step, dead before live; the cautions stand where their work begins. */
function sheetSections(title: string, tests: readonly PlannedTest[], notes: (step: TestStep) => string[]): Section[] {
  const parts: Section[] = [];
  for (const live of [false, true]) {
    for (const step of stepOrder) {
      const here = tests.filter((test) => test.step === step && test.live === live);
      if (here.length === 0) continue;
      const isFirst = !parts.some(({ title: other }) => other.endsWith(live ? " (live)" : " (dead)"));
      const lines = [...(isFirst ? [live ? goLive : proveDead] : []), ...notes(step)];
      const blocks = [
        ...lines.map(paragraph),
        ...roundTable(here),
        ...slim(here.filter(({ point }) => point === undefined)),
      ];
      parts.push({ level: 2, title: `${stepTitles[step]} (${live ? "live" : "dead"})`, blocks });
    }
  }
  return parts.length === 0 ? [] : [{ level: 1, title, blocks: [] }, ...parts];
}

/** Both rounds of a ring beside each other, a line a point, with the sums once above them. */
function roundTable(tests: readonly PlannedTest[]): Block[] {
  const rounds = Map.groupBy(
    tests.filter(({ point }) => point !== undefined),
    ({ point }) => point as string,
  );
  if (rounds.size === 0) return [];
  const cells = (test: PlannedTest | undefined): string[] =>
    test ? [test.expected?.text ?? "", readingText(test)] : ["", ""];
  return table(
    ["Point", "L-N should read", "L-N", "L-E should read", "L-E"],
    [...rounds].map(([point, [LN, LE]]) => [point, ...cells(LN), ...cells(LE)]),
  );
}

/** Columns that would be empty are left out: a phone is narrow. */
function slim(tests: readonly PlannedTest[]): Block[] {
  const rows = tests.map(rowOf);
  const kept = head.map((_, column) => column).filter((column) => rows.some((row) => row[column] !== ""));
  return table(
    kept.map((column) => head[column] ?? ""),
    rows.map((row) => kept.map((column) => row[column] ?? "")),
  );
}

const head = ["Test", "Should read", "Limit", "Reading"];
const blank = "________";
const tick = "☐";

function rowOf(test: PlannedTest): string[] {
  const { name, expected, bounds } = test;
  return [name, expected ? expectedText(expected) : "", bounds.map(boundText).join(", "), readingText(test)];
}

const expectedText = ({ text, working }: NonNullable<PlannedTest["expected"]>): string =>
  working === "" ? text : `${text}: ${working}`;

const boundText = ({ text, source }: Bound): string => (source.standing === "memory" ? `${text} (from memory)` : text);

function readingText({ recorded, unit, bounds }: PlannedTest): string {
  if (!recorded) return unit === "" ? tick : `${blank} ${unit}`;
  if (isAbsent(recorded.value)) return recorded.value.why ? `${recorded.text}: ${recorded.value.why}` : recorded.text;
  const margins = bounds.flatMap((bound) => marginTo(bound, recorded) ?? []);
  const told = margins.find(({ passes }) => !passes) ?? margins.at(-1);
  return told ? `${recorded.text}, ${told.text}` : recorded.text;
}
