/** Readings that were taken on more than one day: a thin line each, with what the instrument leaves open. */

import { studiesOn } from "../boards/network.ts";
import { ohms } from "../calc/result.ts";
import type { WayStudy } from "../circuit/way.ts";
import {
  cut,
  type Drawing,
  group,
  line,
  type Mark,
  rounded,
  type Shape,
  type TableCell,
  text,
} from "../drawings/shapes.ts";
import type { BoardInPlace } from "../model/installation.ts";
import { loopBounds } from "../readings/plan-live.ts";
import { type Series, seriesOfBoard, seriesOfWay, type Taken } from "../readings/series.ts";
import { dayNumber } from "../text/days.ts";

interface Row {
  readonly name: string;
  readonly series: Series;
  readonly limit: number | undefined;
}

/** Those on one scale, Ω. */
const resistances = ["joint", "clamp", "ground"] as const;

const rowHeight = 64;
const nameWidth = 210;
const plotWidth = 360;
const endWidth = 130;

/** Nothing where no reading was taken twice. */
export function yearsDrawing(place: BoardInPlace): Drawing | undefined {
  const rows: Row[] = [
    ...seriesOfBoard(place.context, resistances).map((series) => ({
      name: `Board ${place.board.head.name}`,
      series,
      limit: undefined,
    })),
    ...studiesOn(place).flatMap((study) => seriesOfWay(study, resistances).map((series) => rowOf(study, series))),
    // A day that is half written has no place on the scale.
  ].filter(({ series }) => taken(series).every(({ on }) => Number.isFinite(dayNumber(on))));
  if (rows.length === 0) return undefined;
  const days = rows.flatMap(({ series }) => taken(series).map(({ on }) => dayNumber(on)));
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const x = (on: string): number =>
    rounded(nameWidth + ((dayNumber(on) - first) / Math.max(1, last - first)) * plotWidth);
  return {
    title: `Board ${place.board.head.name}: readings over the years`,
    description: `${rows.length} readings were taken on more than one day. Resistances of conductors are brought to 20 °C where their temperature was noted.`,
    width: nameWidth + plotWidth + endWidth,
    height: rows.length * rowHeight + 30,
    shapes: rows.map((row, index) => shapesOf(row, index, x)),
    table: {
      head: ["Reading", "Day", "Value", "May be out by"],
      rows: rows.flatMap(({ name, series }) =>
        taken(series).map((one): TableCell[] => [
          { text: `${series.name}, ${name}`, mark: markOfTaken(one) },
          { text: one.on },
          { text: ohms(one.value) },
          { text: one.uncertainty ? ohms(one.uncertainty.value) : "not stated" },
        ]),
      ),
    },
    notes: [],
  };
}

function rowOf(study: WayStudy, series: Series): Row {
  const { id, title } = study.way;
  const limit = series.figures === "loop" ? loopBounds(study)[0]?.value : undefined;
  return { name: `way ${id}${title === "" ? "" : ` ${title}`}`, series, limit };
}

/** From the earliest to the latest. */
const taken = ({ now, before }: Series): Taken[] => [now, ...before].toReversed();
const markOfTaken = ({ fact }: Taken): Mark => ({ segment: fact.segment, offset: fact.start });

/** Where days and values of one row are drawn; `top` and `bottom` bound its plot. */
interface Scale {
  readonly top: number;
  readonly bottom: number;
  x(on: string): number;
  y(value: number): number;
}

const plotEnd = nameWidth + plotWidth;

function shapesOf(row: Row, index: number, x: (on: string) => number): Shape {
  const { name, series, limit } = row;
  const all = taken(series);
  const scale = scaleOf(row, index, x);
  const { top, bottom, y } = scale;
  const path = all.map(({ on, value }, at) => `${at === 0 ? "M" : "L"}${x(on)} ${y(value)}`).join("");
  const label = `${series.name}, ${name}: ${all.map(({ on, value }) => `${on} ${ohms(value)}`).join(", ")}`;
  return group(`${name} ${series.name}`, label, markOfTaken(series.now), [
    text(10, top + 12, series.name, "title"),
    text(10, top + 28, cut(name, 30), "note"),
    line(nameWidth, bottom, plotEnd, bottom, "rule", 0.6),
    ...(limit === undefined ? [] : limitShapes(limit, y(limit))),
    { kind: "path", d: path, role: "wire", width: 1.2 },
    ...all.flatMap((one) => readingShapes(one, limit, scale)),
    ...all
      .filter((one, at) => at === 0 || x(one.on) - x(all[at - 1]?.on ?? one.on) > 64)
      .map((one) => text(x(one.on), bottom + 13, one.on, "note", "middle")),
    ...lastFigure(all.at(-1), limit, scale),
  ]);
}

/** From nothing to a little above what is largest: a reading, as far as it may be out, or the limit. */
function scaleOf({ series, limit = 0 }: Row, index: number, x: (on: string) => number): Scale {
  const top = index * rowHeight + 16;
  const bottom = top + rowHeight - 28;
  const highest = taken(series).map(({ value, uncertainty }) => value + (uncertainty?.value ?? 0));
  const most = Math.max(...highest, limit) * 1.08 || 1;
  const y = (value: number): number => rounded(bottom - (Math.min(value, most) / most) * (bottom - top));
  return { top, bottom, x, y };
}

const limitShapes = (limit: number, height: number): Shape[] => [
  line(nameWidth, height, plotEnd, height, "limit", 1),
  text(plotEnd + 8, height + 4, `limit ${ohms(limit)}`, "note"),
];

/** A reading, and how far it may be out. */
function readingShapes({ on, value, uncertainty }: Taken, limit: number | undefined, { x, y }: Scale): Shape[] {
  const isOver = limit !== undefined && value > limit;
  const around = uncertainty?.value;
  return [
    ...(around === undefined ? [] : [line(x(on), y(value - around), x(on), y(value + around), "rule", 3)]),
    { kind: "circle", x: x(on), y: y(value), r: 3, role: isOver ? "over" : "reading", filled: !isOver },
  ];
}

/** The latest figure, out of the way of the words of a limit that is as high. */
function lastFigure(last: Taken | undefined, limit: number | undefined, { y }: Scale): Shape[] {
  if (!last) return [];
  const isNearLimit = limit !== undefined && Math.abs(y(limit) - y(last.value)) < 12;
  return [text(plotEnd + 8, y(last.value) + (isNearLimit ? 16 : 4), ohms(last.value), "figure")];
}
