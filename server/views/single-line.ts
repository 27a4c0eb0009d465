/**
 * The installation on one line: the origin at the left, boards from left to right as they are fed, their ways as ticks in
 * order. The thickness of a feeder is its load; symbols are those of IEC 60617.
 */

import { demandOf } from "../boards/demand.ts";
import { feederDrop } from "../boards/drop-feeder.ts";
import type { BoardNode, Network } from "../boards/network.ts";
import { amps, kiloamps, ohms, percent } from "../calc/result.ts";
import { originSupply } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import {
  cut,
  type Drawing,
  type DrawingTable,
  type Group,
  group,
  line,
  type Mark,
  rounded,
  type Shape,
  type TableCell,
  text,
} from "../drawings/shapes.ts";
import type { Installation } from "../model/installation.ts";
import { exact } from "../model/values.ts";
import { keysOf } from "./board.ts";
import { boardFigures, type NamedFigure } from "./board-figures.ts";
import { markOf } from "./way-state.ts";
import { briefDevice, cableText, deviceText } from "./way-words.ts";

/** Boards beyond this number are not drawn at once: only the way up from the one that is shown, and what it feeds. */
const mostBoards = 40;
/** Ways beyond this number are ticks without words, except on the board that is shown. */
const mostNamedWays = 90;

const margin = 20;
const originWidth = 130;
const boardWidth = 290;
const linkWidth = 170;
const head = 62;
const namedPitch = 19;
const tickPitch = 7;
const foot = 14;
const between = 22;

/** A board where it stands on the paper. */
interface Placed {
  readonly node: BoardNode;
  readonly x: number;
  /** Top of the board itself; `span` is the room it takes with all it feeds. */
  y: number;
  readonly height: number;
  readonly span: number;
  readonly named: boolean;
  readonly children: readonly Placed[];
}

export function singleLine(installation: Installation, network: Network, shown: BoardNode | undefined): Drawing {
  const all = network.nodes;
  const kept = all.length <= mostBoards || !shown ? new Set(all.slice(0, mostBoards)) : neighbours(shown);
  const ways = [...kept].reduce((sum, { board }) => sum + board.ways.length, 0);
  const named = (node: BoardNode): boolean => node === shown || ways <= mostNamedWays;
  const roots = all.filter((node) => kept.has(node) && !(node.parent && kept.has(node.parent)));
  const placed = roots.map((node) => place(node, margin + originWidth, kept, named));
  let y = margin;
  for (const root of placed) {
    moveTo(root, y);
    y += root.span + between;
  }
  const flat = placed.flatMap(flattened);
  const width = Math.max(...flat.map(({ x }) => x + boardWidth), margin + originWidth + boardWidth) + margin;
  const title = `${installation.head.title || "Installation"} on one line`;
  return {
    title,
    description: `${all.length === 1 ? "One board" : `${all.length} boards`} from the origin, each with its ways in order.`,
    width,
    height: Math.max(y - between + margin, 160),
    shapes: [...originShapes(installation, placed), ...flat.flatMap((one) => boardShapes(one))],
    table: tableOf(installation, flat),
    notes: [
      ...(kept.size < all.length
        ? [`${kept.size} of ${all.length} boards are drawn: the way up to the origin, and what this board feeds.`]
        : []),
      "Figures in italics are calculated; a thicker feeder carries more.",
    ],
  };
}

function neighbours(shown: BoardNode): Set<BoardNode> {
  const kept = new Set<BoardNode>();
  for (let at: BoardNode | undefined = shown; at; at = at.parent) kept.add(at);
  for (const child of shown.children.slice(0, mostBoards)) kept.add(child);
  return kept;
}

function place(
  node: BoardNode,
  x: number,
  kept: ReadonlySet<BoardNode>,
  isNamed: (node: BoardNode) => boolean,
): Placed {
  const named = isNamed(node);
  const order = new Map(node.board.ways.map((way, at) => [way, at] as const));
  const tickOf = ({ feeder }: BoardNode): number => (feeder ? (order.get(feeder.way) ?? -1) : -1);
  const children = node.children
    .filter((child) => kept.has(child))
    .toSorted((one, other) => tickOf(one) - tickOf(other))
    .map((child) => place(child, x + boardWidth + linkWidth, kept, isNamed));
  const height = head + node.board.ways.length * (named ? namedPitch : tickPitch) + foot;
  const below = children.reduce((sum, child) => sum + child.span, 0) + between * Math.max(0, children.length - 1);
  return { node, x, y: 0, height, span: Math.max(height, below), named, children };
}

/** The boards behind one stand below each other, in the middle beside it. */
function moveTo(placed: Placed, top: number): void {
  const { children, span, height } = placed;
  placed.y = top + (span - height) / 2;
  const below = children.reduce((sum, child) => sum + child.span, 0) + between * Math.max(0, children.length - 1);
  let y = top + (span - below) / 2;
  for (const child of children) {
    moveTo(child, y);
    y += child.span + between;
  }
}

const flattened = (placed: Placed): Placed[] => [placed, ...placed.children.flatMap(flattened)];

const pitchOf = ({ named }: Placed): number => (named ? namedPitch : tickPitch);
const tickY = (placed: Placed, index: number): number => placed.y + head + (index + 0.5) * pitchOf(placed);
const busX = (placed: Placed): number => placed.x + 14;

function originShapes(installation: Installation, roots: readonly Placed[]): Shape[] {
  const fed = roots.filter(({ node }) => node.board.head.facts.one("fed-from")?.args.from.value === "supply");
  const first = fed[0] ?? roots[0];
  const y = first ? first.y + head / 2 : margin + 40;
  const fact = installation.head.facts.one("supply");
  const words = originWords(installation);
  const symbol: Shape[] = [
    // A source, with a cut-out behind it.
    { kind: "circle", x: margin + 14, y, r: 12, role: "board", width: 1.5 },
    { kind: "path", d: `M${margin + 7} ${y}c3 -8 5 -8 7 0s4 8 7 0`, role: "wire", width: 1.5 },
    { kind: "rect", x: margin + 42, y: y - 5, width: 22, height: 10, role: "board", line: 1.5 },
    line(margin + 26, y, margin + 72, y),
    ...words.map((words, at) => text(margin, y + 30 + at * 15, words, at === 0 ? "label" : "note")),
  ];
  const mark = fact && { segment: fact.segment, offset: fact.start };
  const bus = margin + 72;
  const ys = fed.map((one) => one.y + head / 2);
  return [
    group("origin", `Origin: ${words.join(", ")}`, mark, symbol),
    ...(ys.length > 1 ? [line(bus, Math.min(...ys, y), bus, Math.max(...ys, y), "wire")] : []),
    ...fed.map((one) => line(bus, one.y + head / 2, busX(one), one.y + head / 2, "wire", loadWidth(one.node))),
  ];
}

function originWords({ supply }: Installation): string[] {
  const { earthing, threePhase } = originSupply(supply);
  const Ze = supply && exact(supply.one("Ze")?.args.value);
  const Ipf = supply && exact(supply.one("Ipf")?.args.value);
  const cutout = supply?.one("cutout")?.args.rating.value;
  return [
    [earthing ?? "supply", threePhase ? "3 phase" : ""].filter((one) => one !== "").join(", "),
    ...(cutout === undefined ? [] : [`cut-out ${amps(cutout)}`]),
    ...(Ze === undefined ? [] : [`Ze ${ohms(Ze)}`]),
    ...(Ipf === undefined ? [] : [`Ipf ${kiloamps(Ipf)}`]),
  ];
}

/** Load as a thickness: 1 for little, 5 for two hundred amperes and more. */
function loadWidth(node: BoardNode): number {
  const load = demandOf(node)?.greatest.value ?? 0;
  return rounded(1.2 + Math.min(load, 200) / 50);
}

function boardShapes(placed: Placed): Shape[] {
  const { node, x, y, height, children } = placed;
  const { board } = node;
  const name = `${board.head.name}${board.head.title === "" ? "" : ` ${board.head.title}`}`;
  const figures = boardFigures(node);
  const mark: Mark = { segment: board.head.header.segment, offset: board.head.header.start };
  const label = `Board ${name}: ${figures.map(said).join(", ") || "nothing calculated"}`;
  const bus = busX(placed);
  const titled = group(`board ${board.head.name}`, label, mark, [
    { kind: "rect", x, y, width: boardWidth, height, role: "board", line: 1 },
    text(x + 10, y + 20, cut(name, 34), "title"),
    ...figureLines(figures, x + 10, y + 37),
    line(bus, y + head - 2, bus, y + height - foot / 2, "busbar", 4),
  ]);
  const fedBy = new Map(children.map((child) => [child.node.feeder?.way, child] as const));
  const keys = keysOf(node.studies.map(({ way }) => way.id));
  return [
    titled,
    ...node.studies.map((study, at) => tick(placed, study, at, keys[at] ?? study.way.id)),
    ...node.studies.flatMap((study, at) => {
      const child = fedBy.get(study.way);
      return child ? [linkTo(placed, at, study, child)] : [];
    }),
    ...children.filter(({ node: { feeder } }) => !feeder).map((child) => plainLink(placed, child)),
  ];
}

const said = ({ name, text: words }: NamedFigure): string => `${name} ${words}`;

/** Two lines of two figures: a row of four would be wider than the board. */
function figureLines(figures: readonly NamedFigure[], x: number, y: number): Shape[] {
  return figures.map((figure, at) =>
    text(x + (at % 2) * 122, y + Math.floor(at / 2) * 15, said(figure), figure.calculated ? "calculated" : "figure"),
  );
}

function tick(placed: Placed, study: WayStudy, at: number, key: string): Group {
  const y = rounded(tickY(placed, at));
  const x = busX(placed);
  const { id, title } = study.way;
  const device = deviceText(study);
  const label = `Way ${id}${title === "" ? "" : ` ${title}`}${study.isSpare ? ", spare" : device === "" ? ", no device" : `, ${device}`}`;
  const shapes: Shape[] = placed.named
    ? [
        // A circuit-breaker: a contact that opens, with the cross of its function.
        line(x, y, x + 12, y),
        ...(study.isSpare
          ? []
          : [
              line(x + 12, y, x + 25, y - 5),
              line(x + 10, y - 2, x + 14, y + 2),
              line(x + 10, y + 2, x + 14, y - 2),
              line(x + 26, y, x + 38, y),
            ]),
        text(x + 58, y + 4, id, "figure", "end"),
        text(
          x + 64,
          y + 4,
          study.isSpare ? "spare" : cut(title || study.way.kind || "", 22),
          study.isSpare ? "note" : "label",
        ),
        ...(study.isSpare
          ? []
          : [
              text(
                placed.x + boardWidth - 8,
                y + 4,
                cut(briefDevice(study), 14),
                device === "" ? "missing" : "figure",
                "end",
              ),
            ]),
      ]
    : [line(x, y, x + (study.isSpare ? 10 : 26), y, study.isSpare ? "rule" : "wire")];
  return group(`way ${placed.node.board.head.name}/${key}`, label, markOf(study), shapes);
}

/** From the way that feeds a board to that board, with the cable's size and what it drops. */
function linkTo(placed: Placed, at: number, study: WayStudy, child: Placed): Group {
  const from = { x: placed.x + boardWidth, y: rounded(tickY(placed, at)) };
  const to = { x: busX(child), y: rounded(child.y + head / 2) };
  const bend = rounded(from.x + bendOf(placed, child));
  const own = feederDrop(child.node);
  const dropped = "missing" in own ? "" : percent(Math.round(own.worst.drop.value * 100) / 100);
  const cable = cableText(study);
  const label = `Feeder to board ${child.node.board.head.name}: ${[cable, dropped === "" ? "" : `drop ${dropped}`].filter((one) => one !== "").join(", ") || "nothing known of its cable"}`;
  return group(`feeder ${child.node.board.head.name}`, label, markOf(study), [
    {
      kind: "path",
      d: `M${from.x} ${from.y}H${bend}V${to.y}H${to.x}`,
      role: "wire",
      width: loadWidth(child.node),
    },
    text(child.x - 8, to.y - 8, cut(cable, 24), "label", "end"),
    ...(dropped === "" ? [] : [text(child.x - 8, to.y + 17, `drop ${dropped}`, "calculated", "end")]),
  ]);
}

/**
 * Where a feeder turns, so that no two cross: of those that go up the first turns first, of those that go down the last.
 */
function bendOf({ children, ...placed }: Placed, child: Placed): number {
  const middle = placed.y + placed.height / 2;
  const same = children.filter((one) => one.y + head / 2 < middle === child.y + head / 2 < middle);
  const at = same.indexOf(child);
  const turn = child.y + head / 2 < middle ? at : same.length - 1 - at;
  return 12 + (turn * Math.min(28, 8 * same.length)) / Math.max(1, same.length);
}

/** A board that says what it is fed from, where no way says that it feeds it. */
function plainLink(placed: Placed, child: Placed): Shape {
  const y = rounded(child.y + head / 2);
  const from = rounded(placed.y + head / 2);
  const d = `M${placed.x + boardWidth} ${from}H${placed.x + boardWidth + 12}V${y}H${busX(child)}`;
  return { kind: "path", d, role: "rule", width: 1.2 };
}

function tableOf(installation: Installation, placed: readonly Placed[]): DrawingTable {
  const names = ["Zdb", "Ipf", "drop", "demand"];
  const rows = placed.map(({ node }): TableCell[] => {
    const { head: own, ways } = node.board;
    const figures = boardFigures(node);
    const of = (name: string) => figures.find((one) => one.name === name || (name === "Zdb" && one.name === "Ze"));
    const feeder = node.feeder;
    return [
      {
        text: `${own.name} ${own.title}`.trim(),
        mark: { segment: own.header.segment, offset: own.header.start },
      },
      {
        text: feeder
          ? `${node.parent?.board.head.name}/${feeder.way.id}`
          : (own.facts.one("fed-from")?.args.from.value ?? "not stated"),
        ...(feeder ? { mark: markOf(feeder) } : {}),
      },
      { text: feeder ? cableText(feeder) : "" },
      ...names.map((name) => {
        const found = of(name);
        return {
          text: found ? `${found.text}${found.calculated ? ", calculated" : ""}` : "not known",
          ...(found?.mark ? { mark: found.mark } : {}),
        };
      }),
      { text: String(ways.length) },
    ];
  });
  const { earthing } = originSupply(installation.supply);
  return {
    head: [
      "Board",
      `Fed from${earthing ? ` (origin ${earthing})` : ""}`,
      "Cable",
      "Zdb or Ze",
      "Ipf",
      "Drop",
      "Demand",
      "Ways",
    ],
    rows,
  };
}
