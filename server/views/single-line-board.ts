/** A board on one line: its incoming switch, its busbar, its RCDs with the ways behind each, and its other ways. */

import type { BoardNode } from "../boards/network.ts";
import { amps, milliamps } from "../calc/result.ts";
import { boardRcdOf, isOwnRcd } from "../circuit/rcds.ts";
import type { WayStudy } from "../circuit/way.ts";
import { cut, group, line, type Mark, rounded, type Shape, text } from "../drawings/shapes.ts";
import type { FactOf } from "../model/values.ts";
import { isFuse } from "../tables/standard-values.ts";
import { keysOf } from "./board.ts";
import { boardFigures, type NamedFigure } from "./board-figures.ts";
import { markOf } from "./way-state.ts";
import { briefDevice, deviceText } from "./way-words.ts";

export const boardWidth = 310;
/** Name, main switch and figures stand above the busbar. */
const head = 80;
const namedPitch = 19;
const tickPitch = 7;
const foot = 14;
/** From the board's own busbar to that of the ways behind one RCD. */
const indent = 26;

/** A board where it stands on the paper. */
export interface Placed {
  readonly node: BoardNode;
  readonly x: number;
  /** Top of the board itself; `span` is the room it takes with all it feeds. */
  y: number;
  readonly rows: readonly Row[];
  readonly height: number;
  readonly span: number;
  /** Whether its ways have words beside them. */
  readonly named: boolean;
  readonly children: readonly Placed[];
}

type BoardRcd = FactOf<"board", "rcd">;

/** What hangs on the busbar, from top to bottom. */
type Row =
  | { readonly kind: "rcd"; readonly rcd: BoardRcd }
  | { readonly kind: "way"; readonly study: WayStudy; readonly behind: BoardRcd | undefined };

/** Each RCD is drawn once, where the first of its ways stands, and its other ways follow that one. */
export function rowsOf({ board, studies }: BoardNode): Row[] {
  const behind = Map.groupBy(studies, boardRcdOf);
  const rcds = board.head.facts.all("rcd");
  const drawn = new Set<BoardRcd>();
  const rowsBehind = (rcd: BoardRcd): Row[] => {
    drawn.add(rcd);
    return [
      { kind: "rcd", rcd },
      ...(behind.get(rcd) ?? []).map((study): Row => ({ kind: "way", study, behind: rcd })),
    ];
  };
  const rows = studies.flatMap((study): Row[] => {
    const rcd = boardRcdOf(study);
    if (rcd === undefined) return [{ kind: "way", study, behind: undefined }];
    return drawn.has(rcd) ? [] : rowsBehind(rcd);
  });
  return [...rows, ...rcds.filter((rcd) => !drawn.has(rcd)).flatMap(rowsBehind)];
}

const pitchOf = (named: boolean): number => (named ? namedPitch : tickPitch);

export const heightOf = (rows: readonly Row[], named: boolean): number => head + rows.length * pitchOf(named) + foot;

const rowY = ({ y, named }: Placed, at: number): number => rounded(y + head + (at + 0.5) * pitchOf(named));

/** Where the line of a way leaves its board. */
export const outletY = (placed: Placed, study: WayStudy): number =>
  rowY(
    placed,
    placed.rows.findIndex((row) => row.kind === "way" && row.study === study),
  );

/** Where what feeds a board comes in. */
export const inletY = ({ y }: Pick<Placed, "y">): number => rounded(y + 33);

const busX = ({ x }: Placed): number => x + 14;

export function boardShapes(placed: Placed, incoming: number): Shape[] {
  const { node, x, y, height, rows, named } = placed;
  const { facts, header, name, title } = node.board.head;
  const figures = boardFigures(node);
  const heading = `${name}${title === "" ? "" : ` ${title}`}`;
  const entry = entryText(node);
  const said = [entry, ...figures.map(figureText)].filter((one) => one !== "").join(", ");
  const mark: Mark = { segment: header.segment, offset: header.start };
  const bus = busX(placed);
  const keys = new Map(
    keysOf(node.studies.map(({ way }) => way.id)).map((key, at) => [node.studies[at], key] as const),
  );
  return [
    group(`board ${name}`, `Board ${heading}: ${said || "nothing calculated"}`, mark, [
      { kind: "rect", x, y, width: boardWidth, height, role: "board", line: 1 },
      text(x + 10, y + 20, cut(heading, 38), "title"),
      text(x + 32, y + 37, cut(entry, 40), "note"),
      ...figureLines(figures, x + 32, y + 53),
      line(x, inletY(placed), bus, inletY(placed), "wire", incoming),
      ...incomer(bus, inletY(placed), y + head - 2, facts.one("main-switch")),
      line(bus, y + head - 2, bus, y + height - foot / 2, "busbar", 4),
    ]),
    ...subBusbars(placed),
    ...rows.map((row, at) => {
      const on = rowY(placed, at);
      if (row.kind === "rcd") return rcdShapes(placed, row.rcd, on);
      const { study } = row;
      const way = keys.get(study) ?? study.way.id;
      return group(`way ${name}/${way}`, wayLabel(study), markOf(study), [
        ...(named ? wayShapes(placed, study, row.behind !== undefined, on) : []),
        ...(named ? [] : [tick(placed, study, row.behind !== undefined, on)]),
      ]);
    }),
  ];
}

/** `main switch 100 A, 30 mA A · SPD`; empty where neither is written. */
export function entryText({ board }: BoardNode): string {
  const { facts } = board.head;
  const main = facts.one("main-switch")?.args;
  const surge = facts.one("spd")?.args.fitted.value === "fitted" ? "SPD" : "";
  return [main ? `main switch ${ratedText(main)}`.trimEnd() : "", surge].filter((one) => one !== "").join(" · ");
}

/** `63 A, 30 mA A` of an RCD, `100 A` of a switch. */
function ratedText({ rating, sensitivity, type, delay }: Partial<BoardRcd["args"]>): string {
  return [
    rating ? amps(rating.value) : "",
    sensitivity ? `${milliamps(sensitivity.value)}${type ? ` ${type.value}` : ""}${delay ? " delayed" : ""}` : "",
  ]
    .filter((one) => one !== "")
    .join(", ");
}

const figureText = ({ name, text: words }: NamedFigure): string => `${name} ${words}`;

/** Two lines of two figures: a row of four would be wider than the board. */
const figureLines = (figures: readonly NamedFigure[], x: number, y: number): Shape[] =>
  figures.map((figure, at) =>
    text(
      x + (at % 2) * 118,
      y + Math.floor(at / 2) * 15,
      figureText(figure),
      figure.calculated ? "calculated" : "figure",
    ),
  );

/** From the inlet down to the busbar: through a switch-disconnector, where one is written, and what makes it an RCD. */
function incomer(x: number, from: number, to: number, main: FactOf<"board", "main-switch"> | undefined): Shape[] {
  if (!main) return [line(x, from, x, to)];
  const [top, pivot] = [from + 10, from + 24];
  return [
    line(x, from, x, top),
    line(x - 4, top, x + 4, top),
    { kind: "circle", x, y: top + 2.5, r: 2.5, role: "wire", width: 1.2 },
    line(x, pivot, x - 7, top + 4),
    line(x, pivot, x, to),
    ...(main.args.sensitivity ? [ring(x, pivot + 8, 6, 3)] : []),
  ];
}

/** The core round the conductors that makes a switch one for residual current. */
const ring = (x: number, y: number, rx: number, ry: number): Shape => ({
  kind: "path",
  d: `M${x - rx} ${y}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0`,
  role: "wire",
  width: 1.2,
});

/** Behind each RCD its ways have a busbar of their own. */
function subBusbars(placed: Placed): Shape[] {
  const x = busX(placed) + indent;
  return placed.rows.flatMap((row, at) => {
    if (row.kind !== "rcd") return [];
    const ways = placed.rows.filter((other) => other.kind === "way" && other.behind === row.rcd).length;
    return ways === 0 ? [] : [line(x, rowY(placed, at), x, rowY(placed, at + ways) + 3, "busbar", 3)];
  });
}

function rcdShapes(placed: Placed, rcd: BoardRcd, y: number): Shape {
  const x = busX(placed);
  const words = `RCD ${rcd.args.name.value} ${ratedText(rcd.args)}`.trimEnd();
  const mark: Mark = { segment: rcd.segment, offset: rcd.start };
  return group(`rcd ${placed.node.board.head.name}/${rcd.args.name.value}`, words, mark, [
    line(x, y, x + 5, y),
    line(x + 5, y, x + 14, y - 5),
    line(x + 15, y, x + indent, y),
    ring(x + 20, y, 2.5, 5),
    ...(placed.named ? [text(x + indent + 10, y + 4, cut(words, 40), "note")] : []),
  ]);
}

function wayLabel(study: WayStudy): string {
  const { id, title } = study.way;
  const device = deviceText(study);
  return `Way ${id}${title === "" ? "" : ` ${title}`}${study.isSpare ? ", spare" : device === "" ? ", no device" : `, ${device}`}`;
}

const startOf = (placed: Placed, isBehind: boolean): number => busX(placed) + (isBehind ? indent : 0);

const tick = (placed: Placed, { isSpare }: WayStudy, isBehind: boolean, y: number): Shape =>
  line(startOf(placed, isBehind), y, busX(placed) + indent + (isSpare ? 10 : 26), y, isSpare ? "rule" : "wire");

function wayShapes(placed: Placed, study: WayStudy, isBehind: boolean, y: number): Shape[] {
  const x = startOf(placed, isBehind);
  const words = busX(placed) + (placed.rows.some(({ kind }) => kind === "rcd") ? indent : 0);
  const { id, title, kind } = study.way;
  const named = (name: string, role: "note" | "label"): Shape[] => [
    text(words + 64, y + 4, id, "figure", "end"),
    text(words + 70, y + 4, name, role),
  ];
  if (study.isSpare) return [line(x, y, x + 12, y), ...named("spare", "note")];
  return [
    ...(isFuse(study.device?.family) ? fuse(x, y) : breaker(x, y)),
    line(x + 26, y, words + 38, y),
    ...(study.threePhase ? [0, 4, 8].map((at) => line(words + 27 + at, y + 3, words + 30 + at, y - 3, "wire", 1)) : []),
    ...named(cut(title || kind || "", 22), "label"),
    text(placed.x + boardWidth - 8, y + 4, cut(ownDeviceText(study), 14), study.device ? "figure" : "missing", "end"),
  ];
}

const fuse = (x: number, y: number): Shape[] => [
  { kind: "rect", x: x + 8, y: y - 3.5, width: 16, height: 7, role: "board", line: 1.2 },
  line(x, y, x + 26, y),
];

/** A contact that opens, with the cross of its function. */
const breaker = (x: number, y: number): Shape[] => [
  line(x, y, x + 12, y),
  line(x + 12, y, x + 25, y - 5),
  line(x + 10, y - 2, x + 14, y + 2),
  line(x + 10, y + 2, x + 14, y - 2),
];

/** `B32`, and of one that is an RCD as well `B32 30 mA`. */
function ownDeviceText(study: WayStudy): string {
  const own = study.rcds.find(isOwnRcd);
  return `${briefDevice(study)}${own ? ` ${milliamps(own.sensitivity)}` : ""}`;
}
