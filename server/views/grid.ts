/** Test entry as a grid: ways down, readings across, in each cell what it should read and its limit. */
import type { BoardNode, Network } from "../boards/network.ts";
import { studiesOn } from "../boards/network.ts";
import type { WayStudy } from "../circuit/way.ts";
import { boundText, gaugeOfTest } from "../drawings/gauge.ts";
import type { Standing } from "../drawings/gauge-shapes.ts";
import type { Mark } from "../drawings/shapes.ts";
import type { BoardInPlace } from "../model/installation.ts";
import type { Fact } from "../model/values.ts";
import { plainPair, planDead } from "../readings/plan-dead.ts";
import { planLive } from "../readings/plan-live.ts";
import { type PlannedTest, quantityOf } from "../readings/planned.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { bySegment, type FoundLine, keysOf, linesOf } from "./board.ts";
import { shortName, wayState } from "./way-state.ts";

/** What is compared while somebody types: figures in the unit of the column. */
interface Beside {
  readonly sense: "most" | "least";
  readonly value: number;
  readonly text: string;
}

export interface GridCell {
  readonly column: string;
  /** What it should read; empty where that is not known. */
  readonly expected: string;
  readonly limits: readonly Beside[];
  /** The latest reading, with the day it was taken. */
  readonly text: string;
  readonly on: string;
  readonly standing?: Standing;
  readonly mark?: Mark;
}

export interface GridColumn {
  readonly key: string;
  readonly title: string;
  readonly unit: string;
  readonly live: boolean;
  /** Words that may be written instead of a figure: the first is the good one. */
  readonly words: readonly string[];
}

export interface GridRow {
  readonly key: string;
  readonly id: string;
  readonly title: string;
  /** Of a point of a ring: the point. */
  readonly point?: string;
  readonly mark: Mark;
  readonly cells: readonly GridCell[];
  readonly missing: readonly string[];
  readonly findings: readonly FoundLine[];
}

export interface GridView {
  readonly kind: "grid";
  readonly title: string;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly GridRow[];
  readonly instruments: readonly string[];
}

export function gridView(place: BoardInPlace, network: Network, findings: readonly Finding[]): GridView {
  const { board, context } = place;
  const node = network.nodeOf(board);
  const studies = studiesOn(place).filter(({ isSpare }) => !isSpare);
  const keys = keysOf(studies.map(({ way }) => way.id));
  const found = bySegment(findings);
  const rows = studies.flatMap((study, at) => rowsOf(study, keys[at] ?? study.way.id, node, found));
  const used = new Set(rows.flatMap(({ cells }) => cells.map(({ column }) => column)));
  return {
    kind: "grid",
    title: `Tests of board ${board.head.name}${board.head.title === "" ? "" : ` ${board.head.title}`}`,
    columns: columns.filter(({ key }) => used.has(key)),
    rows,
    instruments: [...context.names.instruments.keys()],
  };
}

type PlainColumn = Omit<GridColumn, "live">;
const figure = (key: string, unit: string, title = key): PlainColumn => ({ key, title, unit, words: [] });
const verdict = (key: string, title: string, words: readonly string[]): PlainColumn => ({
  key,
  title,
  unit: "",
  words,
});

/** Insulation of line and neutral joined together, which is one reading in place of two. */
export const joinedKey = "LN-E";

const deadColumns: readonly PlainColumn[] = [
  figure("r1", "Ω"),
  figure("rn", "Ω"),
  figure("r2", "Ω"),
  figure("at L-N", "Ω", "L-N at the point"),
  figure("at L-E", "Ω", "L-E at the point"),
  figure("R1+R2", "Ω"),
  figure("R2", "Ω"),
  figure("L-L", "MΩ"),
  figure("L-N", "MΩ"),
  figure("L-E", "MΩ"),
  figure("N-E", "MΩ"),
  figure(joinedKey, "MΩ", "L and N to E"),
  verdict("polarity", "polarity", ["ok", "wrong"]),
];

const liveColumns: readonly PlainColumn[] = [
  figure("Zs", "Ω"),
  verdict("RCD ½×", "RCD ½×", ["no-trip"]),
  figure("RCD 1×", "ms"),
  figure("RCD 5×", "ms"),
  verdict("button", "test button", ["ok", "failed"]),
  verdict("AFDD button", "AFDD button", ["ok", "failed"]),
  verdict("sequence", "phase sequence", ["ok", "reversed"]),
];

/** In the order of the trade. */
const columns: readonly GridColumn[] = [
  ...deadColumns.map((column) => ({ ...column, live: false })),
  ...liveColumns.map((column) => ({ ...column, live: true })),
];

const byKey = new Map(columns.map((column) => [column.key, column] as const));
export const columnOf = (key: string): GridColumn | undefined => byKey.get(key);

interface TestInColumn {
  readonly column: string;
  readonly test: PlannedTest;
}

/**
 * The tests of a way that a grid has room for, by column; those of a ring's points by point too. Of insulation that was
 * read on each of three lines the lowest is shown.
 */
export function cellsOfWay(study: WayStudy): readonly TestInColumn[] {
  const found = new Map<string, TestInColumn>();
  for (const test of [...planDead(study), ...planLive(study)]) {
    const column = keyOf(test);
    if (column === undefined) continue;
    const id = `${column}|${test.point ?? ""}`;
    const before = found.get(id);
    if (!before || (test.step === "insulation" && readOf(test) < readOf(before.test))) found.set(id, { column, test });
  }
  return [...found.values()];
}

const readOf = ({ recorded }: PlannedTest): number => quantityOf(recorded)?.value ?? Number.POSITIVE_INFINITY;

function keyOf(test: PlannedTest): string | undefined {
  const { step, name, point, place } = test;
  if (place !== undefined || point === "every point") return undefined;
  if (point !== undefined) return `at ${name.slice(0, 3)}`;
  switch (step) {
    case "rcd":
      if (name.startsWith("AFDD")) return "AFDD button";
      return name.startsWith("Test button") ? "button" : shortName(test).replace(" at ", " ");
    case "phase-sequence":
      return "sequence";
    case "function":
      return undefined;
    default: {
      if (name.startsWith("L and N together")) return joinedKey;
      const short = step === "insulation" ? plainPair(name) : shortName(test);
      return byKey.has(short) ? short : undefined;
    }
  }
}

const inColumn = (value: number, unit: string): number => {
  const scale = unit === "MΩ" ? 1e-6 : unit === "ms" ? 1000 : 1;
  return Math.round(value * scale * 1e6) / 1e6;
};

function rowsOf(
  study: WayStudy,
  key: string,
  node: BoardNode | undefined,
  found: ReturnType<typeof bySegment>,
): GridRow[] {
  const all = cellsOfWay(study);
  const days = daysOf(study);
  const cell = (one: (typeof all)[number]): GridCell => cellOf(one, days);
  const { id, title, segment, header } = study.way;
  const mark: Mark = { segment, offset: header.start };
  const { missing } = wayState(study, node);
  const own: GridRow = {
    key,
    id,
    title,
    mark,
    cells: all.filter(({ test }) => test.point === undefined).map(cell),
    missing,
    findings: linesOf(found, segment),
  };
  const points = Map.groupBy(
    all.filter(({ test }) => test.point !== undefined),
    ({ test }) => test.point ?? "",
  );
  const below = [...points].map(([point, cells]): GridRow => {
    const own = cells.map(cell);
    return {
      key: `${key}/${point}`,
      id,
      title: point,
      point,
      mark: own.find((one) => one.mark)?.mark ?? mark,
      cells: own,
      missing: [],
      findings: [],
    };
  });
  return [own, ...below];
}

/** The day of each line of the tests of a way: a ring has a line for each of its points. */
const daysOf = ({ deadTests, liveTests }: WayStudy): ReadonlyMap<Fact, string> =>
  new Map(
    [...deadTests, ...liveTests].flatMap(({ facts, on }) => (facts?.list ?? []).map((fact) => [fact, on] as const)),
  );

function cellOf(
  { column, test }: { readonly column: string; readonly test: PlannedTest },
  days: ReadonlyMap<Fact, string>,
): GridCell {
  const { recorded, expected, bounds, unit } = test;
  const gauge = gaugeOfTest(test);
  const on = recorded && days.get(recorded.fact);
  return {
    column,
    expected: expected?.text ?? "",
    limits: bounds.map((bound) => ({
      sense: bound.sense,
      value: inColumn(bound.value, unit),
      text: boundText(bound, unit),
    })),
    text: recorded?.text ?? "",
    on: on ?? "",
    ...(gauge ? { standing: gauge.standing } : {}),
    ...(recorded ? { mark: { segment: recorded.fact.segment, offset: recorded.fact.start } } : {}),
  };
}
