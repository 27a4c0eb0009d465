/**
 * A worksheet: what is to be tested, in the order of the trade, with what each reading should be, its limit, and a blank
 * for every reading that is not there yet.
 */

import { deviceName } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { Way } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { isAbsent } from "../../model/values.ts";
import { expectedCircuit } from "../../readings/expected.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import { planDead } from "../../readings/plan-dead.ts";
import { planLive } from "../../readings/plan-live.ts";
import { type Bound, governing, type PlannedTest, type TestStep } from "../../readings/planned.ts";
import { citedReport } from "../setting/cited.ts";
import { type Block, paragraph, type Report, type Section, table } from "../setting/document.ts";
import {
  boardNotes,
  commonNotes,
  goLive,
  originNotes,
  ownNotes,
  proveDead,
  stepOrder,
  stepTitles,
  wayNotes,
} from "./steps.ts";

/** What a sheet is for: one way, one board with its ways, or all of an installation. */
export interface WorksheetScope {
  readonly board?: BoardInPlace;
  readonly way?: Way;
  /** A visit that reads everything again: a blank for each reading, with what was read last time beside it. */
  readonly again?: boolean;
}

const cautions =
  "Help for a competent person, not a certificate. What is expected follows from the lengths and sizes in the schedule; the limits from the edition it names. Where they disagree with what you find, find out why.";

export function worksheet(installation: Installation, { board, way, again = false }: WorksheetScope = {}): Report {
  const boards = board ? [board] : installation.boards;
  const sections = way
    ? boards.flatMap((one) => sheetOfWay(studyWay(way, one.context), again))
    : boardwide(installation, boards, board === undefined, again);
  const what = way ? `way ${boards[0]?.board.head.name}/${way.id}` : board ? `board ${board.board.head.name}` : "";
  const blanks = sections.flatMap(({ blocks }) => blocks).reduce((sum, block) => sum + blanksIn(block), 0);
  const report: Report = {
    title: `Test worksheet: ${installation.head.title || "an installation without a name"}${what === "" ? "" : `, ${what}`}`,
    lead: [
      installation.edition ? `To ${installation.edition.id}` : "No edition is named: limits are left out",
      blanks === 0 ? "Nothing is left to read." : `${blanks} still to be read.`,
      "Tested by ____________________   Date ______________   Instrument ______________",
    ],
    close: true,
    sections,
    cautions,
  };
  return citedReport(report, installation.edition);
}

/** What is tested in one place: the origin, a board, a way. */
interface Part {
  readonly title: string;
  /** Whether others stand below it, so that a person may begin here. */
  readonly begins: boolean;
  readonly tests: readonly PlannedTest[];
  /** What is to be minded at a step in this place. */
  readonly notes: (step: TestStep) => string[];
  /** Of a way: what holds at every way is written before them. */
  readonly study?: WayStudy;
}

/**
 * A whole board or installation is tested in the order of the guidance: all dead tests of every circuit, then it is
 * energised once, then all live tests. No circuit is energised beside one that is not proved. What holds for all ways
 * stands once before their tests; a place has one table, and above it only what is to be minded there.
 */
function boardwide(
  installation: Installation,
  boards: readonly BoardInPlace[],
  whole: boolean,
  again: boolean,
): Section[] {
  const parts = [
    ...(whole ? [{ title: "Origin", begins: true, tests: planSupply(installation), notes: originNotes }] : []),
    ...boards.flatMap(boardParts),
  ];
  const of = (live: boolean): Section[] => {
    const sections = parts.flatMap((part) => placeSection(part, live, again));
    return sections.length === 0 ? [] : [...howSection(parts, live), ...sections];
  };
  const [dead, live] = [of(false), of(true)];
  return [...dead, ...(dead.length > 0 && live.length > 0 ? [energise] : []), ...live];
}

const energise: Section = {
  level: 1,
  title: "Energise",
  blocks: [
    paragraph(
      "☐ Every dead test above is made and sound. ☐ Every conductor that was taken off is back. ☐ Equipment that was disconnected for the insulation test is connected again.",
    ),
    paragraph(
      "Ze is read before the installation is switched on, with the earthing conductor off the bonding; put it back first.",
    ),
  ],
};

const blanksIn = (block: Block): number =>
  block.kind === "table" ? block.rows.flat().filter((cell) => cell.startsWith(blank) || cell === tick).length : 0;

function boardParts({ board, context }: BoardInPlace): Part[] {
  const { name, title } = board.head;
  const vulnerable = board.head.facts.all("vulnerable").map(({ args }) => `Caution: ${args.what.value}`);
  const own: Part = {
    title: `Board ${name}${title === "" ? "" : `: ${title}`}`,
    begins: true,
    tests: planBoard(context, board.ways),
    notes: (step) => [...(step === "insulation" ? vulnerable : []), ...boardNotes(step)],
  };
  return [own, ...board.ways.map((way) => wayPart(studyWay(way, context)))];
}

function wayPart(study: WayStudy): Part {
  const { device } = study;
  return {
    title: `${wayTitle(study)}${device ? ` · ${deviceName(device)}` : ""}`,
    begins: false,
    tests: testsOfWay(study),
    notes: (step) => [...vulnerableAt(study, step), ...ownNotes(study, step)],
    study,
  };
}

function wayTitle({ way, context }: WayStudy): string {
  const kind = way.kind === undefined ? "" : `, ${way.kind}`;
  return `Way ${context.board.name}/${way.id}: ${way.title === "" ? "no description" : way.title}${kind}`;
}

const testsOfWay = (study: WayStudy): PlannedTest[] =>
  study.isSpare || isOutsideWork(study) ? [] : [...planDead(study), ...planLive(study)];

const vulnerableAt = ({ facts }: WayStudy, step: TestStep): string[] =>
  step === "insulation" ? facts.all("vulnerable").map(({ args }) => `Caution: ${args.what.value}`) : [];

const phaseName = (live: boolean): string => (live ? "live" : "dead");

/** How each test of the ways is made, and the cautions, in the order of the tests. */
function howSection(parts: readonly Part[], live: boolean): Section[] {
  const studies = parts.flatMap(({ study }) => study ?? []);
  const steps = new Set(
    parts.flatMap(({ study, tests }) =>
      study ? tests.filter((test) => test.live === live).map(({ step }) => step) : [],
    ),
  );
  const rows = stepOrder
    .filter((step) => steps.has(step))
    .map((step) => [stepTitles[step], commonNotes(studies, step).join(" ")])
    .filter(([, how]) => how !== "");
  if (rows.length === 0) return [];
  const undrawn = studies.some((study) => expectedCircuit(study)?.note !== undefined);
  return [
    {
      level: 1,
      title: live ? "How each way is tested live" : "How each way is tested dead",
      blocks: [...table(["Test", "How"], rows), ...(undrawn && !live ? [paragraph(whereNotDrawn)] : [])],
    },
  ];
}

const whereNotDrawn =
  "Where no runs are written, what a way should read follows from its length alone: at the far end, or at points evenly spaced.";

/** One place with what is to be minded there and its tests in their order. */
function placeSection({ title, begins, tests, notes }: Part, live: boolean, again: boolean): Section[] {
  const here = stepOrder.flatMap((step) => tests.filter((test) => test.step === step && test.live === live));
  if (here.length === 0) return [];
  const minded = [...new Set(here.map(({ step }) => step))].flatMap(notes);
  const lines = [...(begins ? [live ? goLive : proveDead] : []), ...minded];
  const rounds = here.findIndex(({ point }) => point !== undefined);
  const before = rounds < 0 ? [] : here.slice(0, rounds);
  const after = here.slice(Math.max(rounds, 0)).filter(({ point }) => point === undefined);
  return [
    {
      level: 1,
      title: `${title} · ${phaseName(live)}`,
      blocks: [
        ...lines.map(paragraph),
        ...slim(before, again),
        ...roundTable(here, again),
        ...slim(after.map(named), again),
      ],
    },
  ];
}

/** Without a heading of its own for each step a pair of conductors needs its test. */
const named = (test: PlannedTest): PlannedTest =>
  test.step === "insulation" ? { ...test, name: `Insulation ${test.name}` } : test;

/** A sheet of one way has a part for each step, dead before live; the cautions stand where their work begins. */
function sheetOfWay(study: WayStudy, again: boolean): Section[] {
  const tests = testsOfWay(study);
  const parts: Section[] = [];
  for (const live of [false, true]) {
    for (const [at, step] of stepsOf(tests, live).entries()) {
      const here = tests.filter((test) => test.step === step && test.live === live);
      const lines = [
        ...(at === 0 ? [live ? goLive : proveDead] : []),
        ...vulnerableAt(study, step),
        ...wayNotes(study, step),
      ];
      const blocks = [
        ...lines.map(paragraph),
        ...roundTable(here, again),
        ...slim(
          here.filter(({ point }) => point === undefined),
          again,
        ),
      ];
      parts.push({ level: 2, title: `${stepTitles[step]} (${phaseName(live)})`, blocks });
    }
  }
  if (parts.length === 0) return [];
  const { device } = study;
  const note = expectedCircuit(study)?.note;
  const about = [...(device ? [deviceName(device)] : []), ...(note ? [note] : [])];
  return [
    { level: 1, title: wayTitle(study), blocks: about.length > 0 ? [paragraph(about.join(". "))] : [] },
    ...parts,
  ];
}

const stepsOf = (tests: readonly PlannedTest[], live: boolean): TestStep[] =>
  stepOrder.filter((step) => tests.some((test) => test.step === step && test.live === live));

/** Both rounds of a ring beside each other, a line a point, with the sums once above them. */
function roundTable(tests: readonly PlannedTest[], again: boolean): Block[] {
  const rounds = Map.groupBy(
    tests.filter(({ point }) => point !== undefined),
    ({ point }) => point as string,
  );
  if (rounds.size === 0) return [];
  const cells = (test: PlannedTest | undefined): string[] =>
    test
      ? [test.expected?.text ?? "", ...(again ? [lastTime(test)] : []), readingText(test, again)]
      : ["", ...(again ? [""] : []), ""];
  const last = (pair: string) => (again ? [`${pair} last time`] : []);
  return table(
    ["Point", "L-N should read", ...last("L-N"), "L-N", "L-E should read", ...last("L-E"), "L-E"],
    [...rounds].map(([point, [LN, LE]]) => [point, ...cells(LN), ...cells(LE)]),
  );
}

/** Columns that would be empty are left out: a phone is narrow. */
function slim(tests: readonly PlannedTest[], again: boolean): Block[] {
  const rows = tests.map((test) => rowOf(test, again));
  const kept = head.map((_, column) => column).filter((column) => rows.some((row) => row[column] !== ""));
  return table(
    kept.map((column) => head[column] ?? ""),
    rows.map((row) => kept.map((column) => row[column] ?? "")),
  );
}

const head = ["Test", "Should read", "Limit", "Last time", "Reading"];
const blank = "________";
const tick = "☐";

function rowOf(test: PlannedTest, again: boolean): string[] {
  const { name, expected, bounds } = test;
  return [
    name,
    expected ? expectedText(expected) : "",
    bounds.map(boundText).join(", "),
    again ? lastTime(test) : "",
    readingText(test, again),
  ];
}

/** What was recorded before, for one who reads it again. */
const lastTime = ({ recorded }: PlannedTest): string => recorded?.text ?? "";

const expectedText = ({ text, working }: NonNullable<PlannedTest["expected"]>): string =>
  working === "" ? text : `${text}: ${working}`;

const boundText = ({ text, source }: Bound): string => (source.standing === "memory" ? `${text} (from memory)` : text);

function readingText({ recorded, unit, bounds }: PlannedTest, again: boolean): string {
  if (!recorded || again) return unit === "" ? tick : `${blank} ${unit}`;
  if (isAbsent(recorded.value)) return recorded.value.why ? `${recorded.text}: ${recorded.value.why}` : recorded.text;
  const left = governing(bounds, recorded);
  return left ? `${recorded.text}, ${left.margin.text}` : recorded.text;
}
