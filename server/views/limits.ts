/** Loop impedance and voltage drop of a whole board beside their limits, a line a way, all on one scale. */
import { designOfWay } from "../boards/design.ts";
import type { BoardNode } from "../boards/network.ts";
import { studiesOn } from "../boards/network.ts";
import { ohms, percent } from "../calc/result.ts";
import type { WayStudy } from "../circuit/way.ts";
import { gaugeOf, gaugeOfTest } from "../drawings/gauge.ts";
import { type Gauge, gaugeShapes } from "../drawings/gauge-shapes.ts";
import {
  cut,
  type Drawing,
  group,
  line,
  type Mark,
  type Shape,
  type TableCell,
  type TextRole,
  text,
} from "../drawings/shapes.ts";
import type { BoardInPlace } from "../model/installation.ts";
import { planLive } from "../readings/plan-live.ts";
import { keysOf } from "./board.ts";
import { markOf } from "./way-state.ts";

interface Compared {
  readonly gauge: Gauge;
  readonly value: string;
  readonly limit: string;
  readonly calculated: boolean;
  readonly mark: Mark;
}

const pitch = 30;
const top = 46;
const nameWidth = 190;
const barWidth = 150;
const wordsWidth = 150;
const columnWidth = barWidth + wordsWidth + 24;

interface Row extends Record<Column, Compared | undefined> {
  readonly key: string;
  readonly study: WayStudy;
}

const columns = [
  ["Earth fault loop impedance", "loop"],
  ["Voltage drop from the origin", "drop"],
] as const;
type Column = (typeof columns)[number][1];

export function limitsDrawing(place: BoardInPlace, node: BoardNode | undefined): Drawing {
  const studies = studiesOn(place).filter(({ isSpare }) => !isSpare);
  const keys = keysOf(studies.map(({ way }) => way.id));
  const rows = studies.map((study, index) => ({
    key: keys[index] ?? study.way.id,
    study,
    loop: loopOf(study, node),
    drop: node && calculated(study, node, "Voltage drop from the origin", percent),
  }));
  const width = nameWidth + columns.length * columnWidth;
  return {
    title: `Board ${place.board.head.name}: loops and drops beside their limits`,
    description:
      "Each bar runs from nothing to its limit; what is beyond it runs past the end and is thicker. The tick is what is expected.",
    width: width + 20,
    height: top + Math.max(1, rows.length) * pitch + 12,
    shapes: [
      ...columns.map(([title], index) => text(nameWidth + index * columnWidth, 22, title, "title")),
      line(10, 32, width, 32, "rule", 1),
      ...rows.map((row, index) => shapesOf(row, top + index * pitch + 8)),
    ],
    table: {
      head: ["Way", ...columns.flatMap(([what]) => [what, "Limit", "Left"])],
      rows: rows.map(cellsOf),
    },
    notes: [
      "Loops that were read are compared with the limit for cold conductors; calculated ones, in italics, with the limit for hot ones.",
    ],
  };
}

const nameOf = ({ way: { id, title } }: WayStudy): string => `${id} ${title}`.trim();

/** A row of the drawing, `y` its middle. */
function shapesOf(row: Row, y: number): Shape {
  const { id, title } = row.study.way;
  const words = columns.map(([what, kind]) => `${what} ${saidOf(row, kind)}`);
  return group(`way ${row.key}`, [`Way ${nameOf(row.study)}`, ...words].join("; "), markOf(row.study), [
    text(36, y + 4, id, "figure", "end"),
    text(44, y + 4, cut(title, 20), "label"),
    ...columns.flatMap(([, kind], column) => bar(row, kind, nameWidth + column * columnWidth, y)),
  ]);
}

/** The same row of the table that goes with the drawing. */
const cellsOf = (row: Row): TableCell[] => [
  { text: nameOf(row.study), mark: markOf(row.study) },
  ...columns.flatMap(([, kind]): TableCell[] => {
    const one = row[kind];
    if (!one) return [{ text: lacking(row, kind) }, { text: "" }, { text: "" }];
    const value = `${one.value}${one.calculated ? ", calculated" : ""}`;
    return [{ text: value, mark: one.mark }, { text: one.limit }, { text: one.gauge.left }];
  }),
];

/** The drop of a feeder is a part of that of each circuit behind it, and has no limit of its own. */
const lacking = ({ study }: Row, kind: Column): string =>
  kind === "drop" && study.isFeeder ? "in those it feeds" : "not known";

function saidOf(row: Row, kind: Column): string {
  const one = row[kind];
  return one ? `${one.value} of at most ${one.limit}, ${one.gauge.left}` : lacking(row, kind);
}

function bar(row: Row, kind: Column, x: number, y: number): Shape[] {
  const one = row[kind];
  if (!one) return [text(x, y + 4, lacking(row, kind), "missing")];
  return [
    ...gaugeShapes(one.gauge, x, y, barWidth),
    text(x + barWidth + 10, y + 4, `${one.value} of ${one.limit}`, roleOf(one)),
  ];
}

function roleOf({ gauge: { standing }, calculated }: Compared): TextRole {
  if (standing === "beyond") return "over";
  if (standing === "unproven") return "unsure";
  return calculated ? "calculated" : "figure";
}

/** As it was read; before that, as it is calculated with the conductors hot. */
function loopOf(study: WayStudy, node: BoardNode | undefined): Compared | undefined {
  const test = planLive(study).find(({ step, place }) => step === "loop" && place === undefined);
  const gauge = test && gaugeOfTest(test);
  const [limit] = test?.bounds ?? [];
  if (gauge && test?.recorded && limit) {
    const { fact } = test.recorded;
    const mark = { segment: fact.segment, offset: fact.start };
    return {
      gauge,
      value: test.recorded.text,
      limit: ohms(limit.value),
      calculated: fact.provenance === "calculated",
      mark,
    };
  }
  return node && calculated(study, node, "Loop impedance, conductors hot", ohms);
}

function calculated(
  study: WayStudy,
  node: BoardNode,
  title: string,
  show: (value: number) => string,
): Compared | undefined {
  const found = designOfWay(node, study).find((one) => one.title === title);
  if (!found?.value || !found.limit || !found.source) return undefined;
  const gauge = gaugeOf("most", found.value.value, found.limit.value, "", found.source);
  return (
    gauge && {
      // What only advises is a question, not a fault.
      gauge: found.verdict === "ask" ? { ...gauge, standing: "unproven" } : gauge,
      value: show(found.value.value),
      limit: show(found.limit.value),
      calculated: true,
      mark: markOf(study),
    }
  );
}
