/** A conduit or trunking cut across, drawn to scale: what lies in it, in the colours of its cores. */

import { plain } from "../calc/result.ts";
import type { Core } from "../circuit/conductors.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { ContainmentStudy } from "../conduits/containment.ts";
import { type LaidCable, type Lay, layOf } from "../conduits/lay.ts";
import { sentence } from "../text/words.ts";
import { type Drawing, group, type PlainShape, type Role, rounded, type Shape, text } from "./shapes.ts";

/** BS 7671, Table 51. Green-and-yellow is drawn as two halves. */
const fills: Readonly<Record<Core, Role>> = {
  line: "brown",
  L1: "brown",
  L2: "black",
  L3: "grey",
  neutral: "blue",
  cpc: "green",
};
const names: Readonly<Record<Core, string>> = {
  line: "line, brown",
  L1: "L1, brown",
  L2: "L2, black",
  L3: "L3, grey",
  neutral: "neutral, blue",
  cpc: "cpc, green-and-yellow",
};

/** The drawing's own width, and what stands beside it. */
const picture = 220;
const legend = 230;
const margin = 12;
const row = 17;

export function crossSection(study: ContainmentStudy): Drawing | undefined {
  const lay = layOf(study);
  if (!lay) return undefined;
  const title = `${study.name}, ${study.title}, cut across`;
  const lines = legendOf(study, lay);
  const description = [...lines.ways.map(({ text }) => text), ...lines.notes].map(sentence).join(" ");
  return { title, description, ...shapesOf(study, lay, lines), notes: [] };
}

interface Legend {
  readonly ways: readonly { readonly id: string; readonly text: string }[];
  readonly cores: readonly Core[];
  readonly notes: readonly string[];
}

function legendOf(study: ContainmentStudy, { cables, left, undrawn }: Lay): Legend {
  const circuits = [...new Set(study.contents.map(({ study: way }) => way))];
  const counted = (way: WayStudy): number => cables.filter((one) => one.study === way).length;
  const full = study.fullest;
  return {
    ways: circuits
      .filter((way) => counted(way) > 0)
      .map((way) => ({
        id: labelOf(way),
        text: `${labelOf(way)}${way.way.title ? ` ${cut(way.way.title)}` : ""}, ${counted(way)} cable${counted(way) === 1 ? "" : "s"}`,
      })),
    cores: (Object.keys(names) as Core[]).filter((core) => cables.some((one) => one.core === core)),
    notes: [
      ...(full
        ? [`${plain((full.fill.total.value / full.fill.room.value) * 100, 0)} % of what the guide's factors allow`]
        : []),
      ...(left > 0 ? [`no place was found for ${left} more: they do not go in`] : []),
      ...(undrawn.length > 0 ? [`not drawn: way ${undrawn.map(labelOf).join(", ")}`] : []),
    ],
  };
}

const longest = 22;
const cut = (title: string): string => (title.length > longest ? `${title.slice(0, longest - 1)}…` : title);
const labelOf = ({ way, context }: WayStudy): string => `${context.board.name}/${way.id}`;

function shapesOf(
  { fact }: ContainmentStudy,
  { enclosure, wall, cables }: Lay,
  { ways, cores, notes }: Legend,
): Pick<Drawing, "width" | "height" | "shapes"> {
  const round = enclosure.shape === "round";
  const across = (round ? enclosure.radius * 2 : enclosure.width) + 2 * wall;
  const deep = (round ? enclosure.radius * 2 : enclosure.depth) + 2 * wall;
  const scale = picture / Math.max(across, deep);
  const beside = (ways.length + cores.length + notes.length + 1) * row;
  const x = margin + picture / 2;
  const y = margin + (deep * scale) / 2;
  const line = rounded(wall * scale);
  const body: PlainShape = round
    ? { kind: "circle", x, y, r: rounded((across / 2 - wall / 2) * scale), role: "board", width: line }
    : {
        kind: "rect",
        x: rounded(x - ((across - wall) / 2) * scale),
        y: rounded(y - ((deep - wall) / 2) * scale),
        width: rounded((across - wall) * scale),
        height: rounded((deep - wall) * scale),
        role: "board",
        line,
      };
  const bar = across > 60 ? 20 : 10;
  const base = rounded(margin + deep * scale + 14);
  return {
    width: picture + legend + 3 * margin,
    height: Math.round(Math.max(deep * scale, beside) + 2 * margin + 26),
    shapes: [
      group("enclosure", "The containment itself", { segment: fact.segment, offset: fact.start }, [body]),
      ...cables.map((one, index) => cableOf(one, index, { x, y, scale })),
      { kind: "path", d: `M${margin} ${base}h${rounded(bar * scale)}`, role: "wire", width: 2 },
      text(rounded(margin + bar * scale + 6), base + 4, `${bar} mm`),
      ...legendShapes(ways, cores, notes, picture + 2 * margin, margin + 11),
    ],
  };
}

interface Middle {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** A cable in the colour of its core, with the way it belongs to where there is room to write it. */
function cableOf({ x, y, radius, core, study }: LaidCable, index: number, middle: Middle): Shape {
  const at = {
    x: rounded(middle.x + x * middle.scale),
    y: rounded(middle.y + y * middle.scale),
    r: rounded(radius * middle.scale),
  };
  const { id, segment, header } = study.way;
  const size = Math.min(at.r * 1.1, (at.r * 3) / Math.max(id.length, 1));
  const light = core !== "cpc" && core !== "L3";
  return group(`cable ${index}`, `Way ${labelOf(study)}, ${names[core]}`, { segment, offset: header.start }, [
    ...coreShapes(at, core),
    ...(size < 6
      ? []
      : [
          {
            kind: "text",
            x: at.x,
            y: rounded(at.y + size * 0.35),
            text: id,
            role: light ? "onDark" : "onLight",
            anchor: "middle",
            size: rounded(size),
          } as const,
        ]),
  ]);
}

/** One core cut across; the upper half of green-and-yellow is yellow. */
function coreShapes(
  { x, y, r }: { readonly x: number; readonly y: number; readonly r: number },
  core: Core,
): PlainShape[] {
  return [
    { kind: "circle", x, y, r, role: fills[core], width: 0.7, filled: true },
    ...(core === "cpc"
      ? [
          {
            kind: "path",
            d: `M${rounded(x - r)} ${y}a${r} ${r} 0 0 1 ${rounded(2 * r)} 0z`,
            role: "yellow",
            width: 0,
            filled: true,
          } as const,
        ]
      : []),
  ];
}

function legendShapes(
  ways: Legend["ways"],
  cores: readonly Core[],
  notes: readonly string[],
  x: number,
  y: number,
): PlainShape[] {
  const below = (index: number): number => y + index * row;
  const first = ways.length + 1;
  return [
    ...ways.map(({ text: words }, index) => text(x, below(index), words)),
    ...cores.flatMap((core, index) => [
      ...coreShapes({ x: x + 6, y: below(first + index) - 4, r: 5 }, core),
      text(x + 17, below(first + index), names[core]),
    ]),
    ...notes.map((words, index) => text(x, below(first + cores.length + index), words)),
  ];
}
