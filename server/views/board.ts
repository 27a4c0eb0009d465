/** A board as rows: what each way is, what was read on it, its least margin and what is missing. */
import type { BoardNode, Network } from "../boards/network.ts";
import { studiesOn } from "../boards/network.ts";
import type { WayStudy } from "../circuit/way.ts";
import { gaugeOfTest } from "../drawings/gauge.ts";
import type { Gauge } from "../drawings/gauge-shapes.ts";
import type { Mark } from "../drawings/shapes.ts";
import type { BoardInPlace } from "../model/installation.ts";
import { isAbsent } from "../model/values.ts";
import type { PlannedTest } from "../readings/planned.ts";
import type { Finding, Severity } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import { boardFigures, type NamedFigure } from "./board-figures.ts";
import { type LeastMargin, markOf, shortName, wayState } from "./way-state.ts";
import { cableText, deviceText } from "./way-words.ts";

/** How a figure came to be there, or why it is not: an empty cell that could be either does not exist. */
export type ReadingState =
  | "measured"
  | "calculated"
  | "declared"
  | "from-record"
  | "limited"
  | "not-applicable"
  | "missing";

export interface ReadingCell {
  readonly name: string;
  readonly text: string;
  readonly state: ReadingState;
  readonly gauge?: Gauge;
  /** A word that says that a test was failed. */
  readonly failed?: boolean;
  readonly mark?: Mark;
}

export interface FoundLine {
  readonly severity: Severity;
  readonly check: string;
  readonly message: string;
  readonly mark: Mark;
}

export interface BoardRow {
  /** Unique on its board: two ways of one number are a fault, and both are shown. */
  readonly key: string;
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly spare: boolean;
  readonly device: string;
  readonly cable: string;
  readonly readings: readonly ReadingCell[];
  readonly least?: LeastMargin;
  readonly missing: readonly string[];
  readonly findings: readonly FoundLine[];
  readonly mark: Mark;
}

export interface BoardView {
  readonly kind: "board";
  readonly title: string;
  readonly mark: Mark;
  readonly figures: readonly NamedFigure[];
  /** Of the board's own lines. */
  readonly findings: readonly FoundLine[];
  readonly rows: readonly BoardRow[];
}

export function boardView(place: BoardInPlace, network: Network, findings: readonly Finding[]): BoardView {
  const { board } = place;
  const node = network.nodeOf(board);
  const found = bySegment(findings);
  const own = board.segments.filter(({ word }) => word !== "way");
  const studies = studiesOn(place);
  const keys = keysOf(studies.map(({ way }) => way.id));
  return {
    kind: "board",
    title: `${board.head.name}${board.head.title === "" ? "" : ` ${board.head.title}`}`,
    mark: { segment: board.head.header.segment, offset: board.head.header.start },
    figures: node ? boardFigures(node) : [],
    findings: own.flatMap((segment) => linesOf(found, segment)),
    rows: studies.map((study, at) => rowOf(study, node, found, keys[at] ?? study.way.id)),
  };
}

/** Numbers as they are, and those that occur twice made distinct. */
export function keysOf(ids: readonly string[]): string[] {
  const seen = new Map<string, number>();
  return ids.map((id) => {
    const before = seen.get(id) ?? 0;
    seen.set(id, before + 1);
    return before === 0 ? id : `${id}#${before + 1}`;
  });
}

function rowOf(
  study: WayStudy,
  node: BoardNode | undefined,
  found: ReadonlyMap<Segment, readonly Finding[]>,
  key: string,
): BoardRow {
  const { least, missing, tests } = wayState(study, node);
  const { id, kind, title, segment } = study.way;
  return {
    key,
    id,
    kind: kind ?? "",
    title,
    spare: study.isSpare,
    device: deviceText(study),
    cable: cableText(study),
    readings: readingCells(tests),
    ...(least ? { least } : {}),
    missing,
    // Spare ways that are written as a run share one text.
    findings: study.isSpare ? [] : linesOf(found, segment),
    mark: markOf(study),
  };
}

/** What is found, by the segment it is found in: asked of each way, and gone through once. */
export const bySegment = (findings: readonly Finding[]): ReadonlyMap<Segment, readonly Finding[]> =>
  Map.groupBy(findings, ({ spot }) => spot.segment);

export const linesOf = (found: ReadonlyMap<Segment, readonly Finding[]>, segment: Segment): FoundLine[] =>
  (found.get(segment) ?? []).map(foundLine);

const foundLine = ({ severity, check, message, spot }: Finding): FoundLine => ({
  severity,
  check,
  message,
  mark: { segment: spot.segment, offset: spot.start },
});

/** The readings a supervisor looks for; those of single points are in the ring's own view. */
function readingCells(tests: readonly PlannedTest[]): ReadingCell[] {
  return tests
    .filter(
      ({ point, place, step, recorded }) =>
        point === undefined && place === undefined && (recorded || !["function", "phase-sequence"].includes(step)),
    )
    .map(readingCell);
}

const failures: ReadonlySet<unknown> = new Set(["wrong", "failed", "reversed"]);

export function readingCell(test: PlannedTest): ReadingCell {
  const { recorded } = test;
  const name = shortName(test);
  if (!recorded) return { name, text: "", state: "missing" };
  const { fact, value, text } = recorded;
  const gauge = gaugeOfTest(test);
  return {
    name,
    text,
    state: isAbsent(value) ? (value.absent === "LIM" ? "limited" : "not-applicable") : fact.provenance,
    ...(gauge ? { gauge } : {}),
    ...("value" in value && failures.has(value.value) ? { failed: true } : {}),
    mark: { segment: fact.segment, offset: fact.start },
  };
}
