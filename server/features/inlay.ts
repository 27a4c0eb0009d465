/** Short hints beside the lines of a way: what is left to a limit, what a reading should be, what is still to be read. */

import { ohms } from "../calc/result.ts";
import type { Test } from "../circuit/supply.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Fact } from "../model/values.ts";
import { expectedCircuit } from "../readings/expected.ts";
import { planDead } from "../readings/plan-dead.ts";
import { planLive } from "../readings/plan-live.ts";
import { governing, type Left, type PlannedTest } from "../readings/planned.ts";
import type { Segment } from "../syntax/split.ts";
import { isOneOf } from "../text/words.ts";
import type { Snapshot } from "../workspace/workspace.ts";

const hintModes = ["margins", "expectations", "both", "off"] as const;
export type HintMode = (typeof hintModes)[number];
export const isHintMode = (value: unknown): value is HintMode => isOneOf(hintModes, value);

export interface Hint {
  readonly segment: Segment;
  readonly offset: number;
  readonly text: string;
  /** The working, where there is any. */
  readonly tooltip: string;
  /** Whether a limit is not kept: an editor may show that otherwise than one that is. */
  readonly isOver?: boolean;
}

export function inlayHints(snapshot: Snapshot, mode: HintMode, isShown: (segment: Segment) => boolean): Hint[] {
  if (mode === "off") return [];
  const places = snapshot.installations.flatMap(({ boards }) => boards);
  return places.flatMap(({ board, context }) =>
    board.ways
      .filter(({ segment }) => snapshot.positions.has(segment) && isShown(segment))
      .flatMap((way) => hintsOf(studyWay(way, context), mode)),
  );
}

function hintsOf(study: WayStudy, mode: HintMode): Hint[] {
  if (study.isSpare) return [];
  const tests = [...planDead(study), ...planLive(study)];
  // Polarity that is stated point by point has nothing to be expected, and takes no hint from the readings of a point.
  const read = new Map<Fact, PlannedTest[]>();
  for (const test of tests) {
    const fact = test.recorded?.fact;
    if (fact?.segment !== study.way.segment || test.step === "polarity") continue;
    read.set(fact, [...(read.get(fact) ?? []), test]);
  }
  const beside = [...read].flatMap(([fact, of]) => besideReading(fact, of, mode));
  if (mode === "margins") return beside;
  return [...besideName(study), ...besideLength(study), ...beside, ...stillOpen(study, tests)].sort(
    (a, b) => a.offset - b.offset,
  );
}

/** Behind the first line of a way: what it has from its circuit type, and the line that its number says it is on. */
function besideName({ way: { type, header, segment }, facts }: WayStudy): Hint[] {
  const shared = facts.list.filter((fact) => type && fact.segment === type.segment);
  const line = facts.list.find(
    (fact) => fact.word === "phase" && fact.segment === segment && fact.end <= header.args.id.end,
  );
  const texts = [
    ...(line ? [`on ${segment.text.slice(line.wordEnd, line.end)}`] : []),
    ...(type && shared.length > 0
      ? [`from ${type.args.name.value}: ${[...new Set(shared.map(({ word }) => word))].join(", ")}`]
      : []),
  ];
  if (texts.length === 0) return [];
  const tooltip = shared.map((fact) => fact.segment.text.slice(fact.start, fact.end)).join("\n");
  return [{ segment, offset: endOfArgs(header), text: texts.join("; "), tooltip }];
}

function besideReading(fact: Fact, tests: readonly PlannedTest[], mode: HintMode): Hint[] {
  const margin = mode === "expectations" ? undefined : tightest(tests);
  const texts = [...(margin ? [margin.text] : []), ...(mode === "margins" ? [] : expectedText(tests))];
  if (texts.length === 0) return [];
  const tooltip = [
    ...(margin ? [`${margin.which}: ${margin.bound}`] : []),
    ...tests.flatMap(({ expected }) => expected?.working || []),
  ].join("\n");
  const isOver = margin !== undefined && !margin.passes;
  return [{ segment: fact.segment, offset: fact.end, text: texts.join("; "), tooltip, ...(isOver ? { isOver } : {}) }];
}

function expectedText(tests: readonly PlannedTest[]): string[] {
  const texts = tests.flatMap(({ expected }) => expected?.text ?? []);
  return texts.length < tests.length || texts.length === 0 ? [] : [`expected ${texts.join(" / ")}`];
}

/** Twenty times what is asked is no news: insulation of sound wiring says nothing here. */
const isPlenty = ({ bound, margin }: Left): boolean => bound.sense === "least" && margin.share >= 19;

interface Shown {
  readonly passes: boolean;
  /** The margin first: where a line is cut off, that is what was read. */
  readonly text: string;
  readonly which: string;
  readonly bound: string;
}

/** The tightest of the line's readings. */
function tightest(tests: readonly PlannedTest[]): Shown | undefined {
  const all = tests.flatMap((test) => {
    const left = governing(test.bounds, test.recorded);
    return left && !isPlenty(left) ? [{ ...left, which: test.name }] : [];
  });
  const [least] = all.sort((one, other) => one.margin.share - other.margin.share);
  if (!least) return undefined;
  const { margin, bound, which } = least;
  const limit = bound.text.replace(/^at (?:most|least) /, "");
  return {
    passes: margin.passes,
    text: `${margin.passes ? "" : `${overSign} `}${margin.upTo} ${limit}`,
    which,
    bound: bound.text,
  };
}

/** So that it is recognised without colours too. */
const overSign = "▲";

function besideLength(study: WayStudy): Hint[] {
  const R1R2 = expectedCircuit(study)?.R1R2;
  const [fact] = [study.facts.one("length"), ...study.facts.all("run")].filter((one) => one !== undefined);
  if (!R1R2 || !fact || !Number.isFinite(R1R2.value)) return [];
  const tooltip = R1R2.steps.map(({ numbers }) => numbers).join("\n");
  return [{ segment: fact.segment, offset: fact.end, text: `R1+R2 expected ${ohms(R1R2.value)}`, tooltip }];
}

const shown = 2;

/** Beside the latest block of tests, what it does not say yet. */
function stillOpen(study: WayStudy, tests: readonly PlannedTest[]): Hint[] {
  return [false, true].flatMap((live) => {
    const block: Test<"dead"> | Test<"live"> | undefined = live ? study.live : study.dead;
    const broken = study.facts.isUnread(live ? "live" : "dead") || (block?.facts?.broken.length ?? 0) > 0;
    const open = tests.filter((test) => test.live === live && !test.recorded && test.step !== "function");
    if (!block || broken || open.length === 0 || block.header.segment !== study.way.segment) return [];
    const offset = block.header.segment.text.indexOf("{", endOfArgs(block.header));
    if (offset < 0) return [];
    const names = open.slice(0, shown).map(({ name, expected }) => (expected ? `${name} ${expected.text}` : name));
    const text = `${open.length} to be read: ${names.join("; ")}${open.length > shown ? " …" : ""}`;
    const all = open.map(({ name, expected }) => (expected ? `${name}: ${expected.text}` : name));
    return [{ segment: block.header.segment, offset: offset + 1, text, tooltip: all.join("\n") }];
  });
}

const endOfArgs = ({ wordEnd, args }: Fact): number =>
  Math.max(wordEnd, ...Object.values(args).flatMap((value) => [value ?? []].flat().map(({ end }) => end)));
