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
  rounded,
  type Shape,
  type TableCell,
  text,
} from "../drawings/shapes.ts";
import type { Installation } from "../model/installation.ts";
import { exact } from "../model/values.ts";
import { boardFigures } from "./board-figures.ts";
import {
  boardShapes,
  boardWidth,
  entryText,
  heightOf,
  inletY,
  outletY,
  type Placed,
  rowsOf,
} from "./single-line-board.ts";
import { markOf } from "./way-state.ts";
import { cableText } from "./way-words.ts";

/** Boards beyond this number are not drawn at once: only the way up from the one that is shown, and what it feeds. */
const mostBoards = 40;
/** Ways beyond this number are ticks without words, except on the board that is shown. */
const mostNamedWays = 90;

const margin = 20;
const originWidth = 130;
const linkWidth = 206;
const between = 22;

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
    description: `${all.length === 1 ? "One board" : `${all.length} boards`} from the origin. Ways are in order, those behind one RCD together.`,
    width,
    height: Math.max(y - between + margin, 160),
    shapes: [...originShapes(installation, placed), ...flat.flatMap((one) => shapesOf(one))],
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
  const rows = rowsOf(node);
  const order = new Map(rows.map((row, at) => [row.kind === "way" ? row.study.way : undefined, at] as const));
  const tickOf = ({ feeder }: BoardNode): number => (feeder ? (order.get(feeder.way) ?? -1) : -1);
  const children = node.children
    .filter((child) => kept.has(child))
    .toSorted((one, other) => tickOf(one) - tickOf(other))
    .map((child) => place(child, x + boardWidth + linkWidth, kept, isNamed));
  const height = heightOf(rows, named);
  const below = children.reduce((sum, child) => sum + child.span, 0) + between * Math.max(0, children.length - 1);
  return { node, x, y: 0, rows, height, span: Math.max(height, below), named, children };
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

function originShapes(installation: Installation, roots: readonly Placed[]): Shape[] {
  const fed = roots.filter(({ node }) => node.board.head.facts.one("fed-from")?.args.from.value === "supply");
  const first = fed[0] ?? roots[0];
  const y = first ? inletY(first) : margin + 40;
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
  const ys = fed.map(inletY);
  return [
    group("origin", `Origin: ${words.join(", ")}`, mark, symbol),
    ...(ys.length > 1 ? [line(bus, Math.min(...ys, y), bus, Math.max(...ys, y), "wire")] : []),
    ...fed.map((one) => line(bus, inletY(one), one.x, inletY(one), "wire", loadWidth(one.node))),
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

function shapesOf(placed: Placed): Shape[] {
  const { node, children } = placed;
  const fedBy = new Map(children.map((child) => [child.node.feeder?.way, child] as const));
  return [
    ...boardShapes(placed, loadWidth(node)),
    ...node.studies.flatMap((study) => {
      const child = fedBy.get(study.way);
      return child ? [linkTo(placed, study, child)] : [];
    }),
    ...children.filter(({ node: { feeder } }) => !feeder).map((child) => plainLink(placed, child)),
  ];
}

/** From the way that feeds a board to that board, with the cable's size and what it drops. */
function linkTo(placed: Placed, study: WayStudy, child: Placed): Group {
  const from = { x: placed.x + boardWidth, y: outletY(placed, study) };
  const to = { x: child.x, y: inletY(child) };
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
  const same = children.filter((one) => inletY(one) < middle === inletY(child) < middle);
  const at = same.indexOf(child);
  const turn = inletY(child) < middle ? at : same.length - 1 - at;
  return 12 + (turn * Math.min(28, 8 * same.length)) / Math.max(1, same.length);
}

/** A board that says what it is fed from, where no way says that it feeds it. */
function plainLink(placed: Placed, child: Placed): Shape {
  const y = inletY(child);
  const from = inletY(placed);
  const d = `M${placed.x + boardWidth} ${from}H${placed.x + boardWidth + 12}V${y}H${child.x}`;
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
      { text: entryText(node) },
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
      "Incoming",
      "Zdb or Ze",
      "Ipf",
      "Drop",
      "Demand",
      "Ways",
    ],
    rows,
  };
}
