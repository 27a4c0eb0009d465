/**
 * A ring as it lies: its points at their lengths along it, spurs where they leave, both legs at the board. Beside each
 * point what was read in the two rounds, on a band of what is expected; a suspected fault where the diagnosis puts it.
 */
import { legEnd, legStart } from "../calc/circuit-network.ts";
import { metres, ohms } from "../calc/result.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { FaultPlace } from "../diagnosis/index.ts";
import { diagnosisOfWay } from "../diagnosis/of-way.ts";
import { cut, type Drawing, group, line, rounded, type Shape, text } from "../drawings/shapes.ts";
import { planDead } from "../readings/plan-dead.ts";
import { type EndName, studyRing } from "../readings/ring.ts";
import { type Point, pointsOf, type Reading } from "./ring-points.ts";
import { describe, spoken, tableOf } from "./ring-words.ts";
import { markOf } from "./way-state.ts";

const radius = 118;
const spurStep = 30;
const blockWidth = 200;
const blockPitch = 54;
const barWidth = 92;
/** Between the legs, at the board: so many degrees on either side of straight down. */
const gapAngle = 14;

interface Spot {
  readonly x: number;
  readonly y: number;
}

export function ringDrawing(study: WayStudy): Drawing {
  const points = pointsOf(study);
  const depth = Math.max(0, ...points.map((point) => point.depth));
  const reach = radius + depth * spurStep + 26;
  const width = 2 * (reach + blockWidth) + 40;
  const onLeft = points.filter(({ along }) => along < 0.5).length;
  const tall = Math.max(onLeft, points.length - onLeft) * blockPitch + 20;
  const height = Math.max(2 * reach + 70, tall + 20);
  const middle = { x: width / 2, y: height / 2 - 8 };
  const spots = new Map(points.map((point) => [point.name, spotOf(point, middle)] as const));
  const sides = sidesOf(points, spots);
  const [leading] = diagnosisOfWay(study)?.diagnosis.explanations ?? [];
  const { id, title } = study.way;
  const drawn = study.runs?.closed ?? false;
  return {
    title: `Way ${study.context.board.name}/${id}${title === "" ? "" : ` ${title}`}, a ring`,
    description: describe(points, leading),
    width,
    height,
    shapes: [
      ...legs(points, middle, leading?.where ?? []),
      ...spurs(points, spots, middle),
      ...boardAt(study, middle),
      ...centre(study, middle),
      ...blocks(points, sides, spots, { middle, reach, height }),
    ],
    table: tableOf(points),
    notes: [
      ...(points.length === 0 ? ["No point is drawn or read yet: run lines give each its place."] : []),
      ...(points.length > 0 && !drawn
        ? ["The points are taken as evenly spaced; run lines give each its own place."]
        : []),
      ...(leading ? [`${leading.sentence}${leading.fits ? "" : " It does not account for all the readings."}`] : []),
    ],
  };
}

const turn = (along: number): number => 90 + gapAngle + along * (360 - 2 * gapAngle);
const at = ({ x, y }: Spot, degrees: number, r: number): Spot => ({
  x: rounded(x + r * Math.cos((degrees * Math.PI) / 180)),
  y: rounded(y + r * Math.sin((degrees * Math.PI) / 180)),
});

const spotOf = ({ along, depth }: Point, middle: Spot): Spot => {
  const angle = turn(along) + (depth > 0 ? 7 : 0);
  return at(middle, angle, radius + depth * spurStep);
};

/** Arcs from point to point round the ring; one that is suspected has a gap. */
function legs(points: readonly Point[], middle: Spot, suspects: readonly FaultPlace[]): Shape[] {
  const main = points.filter(({ depth }) => depth === 0).toSorted((a, b) => a.along - b.along);
  const stops = [{ name: legStart, along: 0 }, ...main, { name: legEnd, along: 1 }];
  return stops.slice(1).flatMap((to, index): Shape[] => {
    const from = stops[index] ?? to;
    const [start, end] = [turn(from.along), turn(to.along)];
    const suspect = suspects.some((one) => between(one, from.name, to.name));
    if (!suspect || end - start < 6) return [arc(middle, start, end, suspect)];
    const half = (start + end) / 2;
    const mark = at(middle, half, radius);
    return [
      arc(middle, start, half - 4, true),
      arc(middle, half + 4, end, true),
      line(mark.x - 6, mark.y - 6, mark.x + 6, mark.y + 6, "over", 2.5),
      line(mark.x - 6, mark.y + 6, mark.x + 6, mark.y - 6, "over", 2.5),
    ];
  });
}

const between = ({ from, to }: FaultPlace, one: string, other: string): boolean =>
  (from === one && to === other) || (from === other && to === one);

function arc(middle: Spot, start: number, end: number, suspect: boolean): Shape {
  const [from, to] = [at(middle, start, radius), at(middle, end, radius)];
  const large = end - start > 180 ? 1 : 0;
  return {
    kind: "path",
    d: `M${from.x} ${from.y}A${radius} ${radius} 0 ${large} 1 ${to.x} ${to.y}`,
    role: suspect ? "suspect" : "wire",
    width: suspect ? 3 : 2,
  };
}

function spurs(points: readonly Point[], spots: ReadonlyMap<string, Spot>, middle: Spot): Shape[] {
  return points.flatMap(({ name, from, along, depth }) => {
    const to = spots.get(name);
    if (!to || depth === 0) return [];
    const start = (from === undefined ? undefined : spots.get(from)) ?? at(middle, turn(along), radius);
    return [line(start.x, start.y, to.x, to.y, "wire", 1.4)];
  });
}

function boardAt({ context }: WayStudy, middle: Spot): Shape[] {
  const [left, right] = [at(middle, turn(0), radius), at(middle, turn(1), radius)];
  const top = middle.y + radius + 12;
  return [
    line(left.x, left.y, left.x, top, "wire", 2),
    line(right.x, right.y, right.x, top, "wire", 2),
    { kind: "rect", x: left.x - 8, y: top, width: rounded(right.x - left.x + 16), height: 20, role: "board" },
    text(middle.x, top + 14, cut(context.board.name, 9), "title", "middle"),
  ];
}

/** The ends in the middle, each beside what it should read. */
function centre(study: WayStudy, { x, y }: Spot): Shape[] {
  const { values, ends } = studyRing(study);
  const expected = planDead(study).filter(({ step }) => step === "ring-ends");
  const rows = (["r1", "rn", "r2"] as const satisfies readonly EndName[]).map((name) => {
    const value = values[name];
    const should = expected.find((test) => test.name.startsWith(name))?.expected?.text;
    const read = value ? `${value.open ? ">" : ""}${ohms(value.quantity.value)}` : "not read";
    return { name, read, open: value?.open ?? false, missing: !value, should };
  });
  const shapes = rows.flatMap(({ name, read, open, missing, should }, index) => [
    text(x - 62, y - 14 + index * 18, name, "note"),
    text(x - 40, y - 14 + index * 18, read, open ? "over" : missing ? "missing" : "figure"),
    ...(should === undefined ? [] : [text(x + 66, y - 14 + index * 18, should, "calculated", "end")]),
  ]);
  const label = `Ends: ${rows.map(({ name, read }) => `${name} ${read}`).join(", ")}`;
  const length = study.length;
  return [
    text(x, y - 40, "read, and calculated", "note", "middle"),
    group("ends", label, ends ? { segment: ends.segment, offset: ends.start } : markOf(study), shapes),
    ...(length ? [text(x, y + 48, `${metres(length.value)} round`, "note", "middle")] : []),
  ];
}

interface Sides {
  readonly left: readonly Point[];
  readonly right: readonly Point[];
}

/** The first leg goes up on the left, so its points stand on the left. */
function sidesOf(points: readonly Point[], spots: ReadonlyMap<string, Spot>): Sides {
  const byHeight = (one: Point, other: Point): number =>
    (spots.get(one.name)?.y ?? 0) - (spots.get(other.name)?.y ?? 0);
  return {
    left: points.filter(({ along }) => along < 0.5).toSorted(byHeight),
    right: points.filter(({ along }) => along >= 0.5).toSorted(byHeight),
  };
}

interface Room {
  readonly middle: Spot;
  readonly reach: number;
  readonly height: number;
}

function blocks(
  points: readonly Point[],
  { left, right }: Sides,
  spots: ReadonlyMap<string, Spot>,
  room: Room,
): Shape[] {
  const most = Math.max(
    0.01,
    ...points.flatMap(({ readings }) => readings.flatMap(({ value, band }) => [value?.value ?? 0, band?.most ?? 0])),
  );
  return [
    ...column(left, spots, room, most, room.middle.x - room.reach - blockWidth, "left"),
    ...column(right, spots, room, most, room.middle.x + room.reach, "right"),
  ];
}

/** Blocks keep the height of their point where they can, and never stand on each other. */
function column(
  points: readonly Point[],
  spots: ReadonlyMap<string, Spot>,
  { height }: Room,
  most: number,
  x: number,
  side: "left" | "right",
): Shape[] {
  const wished = points.map(({ name }) => (spots.get(name)?.y ?? 0) - blockPitch / 2 + 6);
  const tops: number[] = [];
  for (const [index, wish] of wished.entries()) tops.push(Math.max(wish, 6, (tops[index - 1] ?? -1e9) + blockPitch));
  for (let index = tops.length - 1; index >= 0; index--) {
    const below = index === tops.length - 1 ? height - blockPitch : (tops[index + 1] ?? 0) - blockPitch;
    tops[index] = Math.max(4, Math.min(tops[index] ?? 0, below));
  }
  return points.map((point, index) => {
    const spot = spots.get(point.name) ?? { x: 0, y: 0 };
    const y = rounded(tops[index] ?? 0);
    const edge = side === "left" ? x + blockWidth : x - 6;
    const out = point.readings.some(({ value, inside }) => value && !inside);
    return group(`point ${point.name}`, spoken(point), point.mark, [
      line(edge, y + 14, spot.x, spot.y, "rule", 0.7),
      { kind: "circle", x: spot.x, y: spot.y, r: 4.5, role: out ? "over" : "reading", filled: !out, width: 2 },
      text(x, y + 12, cut(point.name, 12), "title"),
      ...(point.spur === undefined
        ? []
        : [text(x + 64, y + 12, `spur of ${metres(point.spur)} from ${cut(point.from ?? "", 8)}`, "note")]),
      ...point.readings.flatMap((reading, row) => bar(reading, x, y + 26 + row * 16, most)),
    ]);
  });
}

function bar({ round, value, band, inside }: Reading, x: number, y: number, most: number): Shape[] {
  const left = x + 32;
  const to = (reading: number): number => rounded(left + (Math.min(reading, most * 1.12) / (most * 1.12)) * barWidth);
  const read = value?.value;
  return [
    text(x, y + 4, round, "note"),
    line(left, y, left + barWidth, y, "rule", 0.8),
    ...(band
      ? [
          {
            kind: "rect",
            x: to(band.least),
            y: y - 4,
            width: rounded(to(band.most) - to(band.least)),
            height: 8,
            role: "band",
          } as const,
        ]
      : []),
    ...(read === undefined
      ? []
      : inside
        ? [{ kind: "circle", x: to(read), y, r: 3.2, role: "reading", filled: true } as const]
        : [line(to(read), y - 6, to(read), y + 6, "over", 3.5)]),
    text(
      left + barWidth + 8,
      y + 4,
      value ? `${value.open ? ">" : ""}${ohms(value.quantity.value)}` : "not read",
      value ? (inside ? "figure" : "over") : "missing",
    ),
  ];
}
