/** A conduit or trunking cut across, drawn to scale: what lies in it, in the colours of its cores. */

import { plain } from "../../calc/result.ts";
import type { Core } from "../../circuit/conductors.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { ContainmentStudy } from "../../conduits/containment.ts";
import { type LaidCable, type Lay, layOf } from "../../conduits/lay.ts";
import { element, type Html, html } from "../../text/html.ts";
import { sentence } from "../setting/document.ts";

export interface Drawing {
  readonly title: string;
  /** What is to be seen, for those who cannot see it. */
  readonly description: string;
  readonly svg: Html;
}

/** BS 7671, Table 51. Green-and-yellow is drawn as two halves. */
const fills: Readonly<Record<Core, string>> = {
  line: "#8a5a2b",
  L1: "#8a5a2b",
  L2: "#26262a",
  L3: "#9a9aa0",
  neutral: "#2f6fd0",
  cpc: "#2e9a4a",
};
const yellow = "#f5d327";
const names: Readonly<Record<Core, string>> = {
  line: "line, brown",
  L1: "L1, brown",
  L2: "L2, black",
  L3: "L3, grey",
  neutral: "neutral, blue",
  cpc: "cpc, green-and-yellow",
};

const ink = "#1c1c1a";
const paper = "#ffffff";
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
  return { title, description, svg: svgOf(lay, title, description, lines) };
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

function svgOf({ enclosure, wall, cables }: Lay, title: string, description: string, { ways, cores, notes }: Legend) {
  const round = enclosure.shape === "round";
  const across = (round ? enclosure.radius * 2 : enclosure.width) + 2 * wall;
  const deep = (round ? enclosure.radius * 2 : enclosure.depth) + 2 * wall;
  const scale = picture / Math.max(across, deep);
  const beside = (ways.length + cores.length + notes.length + 1) * row;
  const height = Math.max(deep * scale, beside) + 2 * margin + 26;
  const mm = (value: number): string => plain(value * scale, 2);
  const body = round
    ? element("circle", { r: mm(across / 2 - wall / 2), fill: paper, stroke: ink, "stroke-width": mm(wall) })
    : element("rect", {
        x: mm(-(across - wall) / 2),
        y: mm(-(deep - wall) / 2),
        width: mm(across - wall),
        height: mm(deep - wall),
        fill: paper,
        stroke: ink,
        "stroke-width": mm(wall),
      });
  const middle = `translate(${plain(margin + picture / 2, 2)} ${plain(margin + (deep * scale) / 2, 2)})`;
  const bar = across > 60 ? 20 : 10;
  const base = margin + deep * scale + 14;
  return element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      width: String(picture + legend + 3 * margin),
      height: plain(height, 0),
      viewBox: `0 0 ${picture + legend + 3 * margin} ${plain(height, 0)}`,
      "font-family": "system-ui, sans-serif",
      "font-size": "12",
      fill: ink,
    },
    element("title", {}, title),
    element("desc", {}, description),
    element("rect", { width: "100%", height: "100%", fill: paper }),
    element("g", { transform: middle }, body, ...cables.map((one) => cableOf(one, mm))),
    element("path", { d: `M${margin} ${plain(base, 2)}h${mm(bar)}`, stroke: ink, "stroke-width": "2" }),
    element("text", { x: plain(margin + bar * scale + 6, 2), y: plain(base + 4, 2) }, `${bar} mm`),
    element("g", { transform: `translate(${picture + 2 * margin} ${margin + 11})` }, legendSvg(ways, cores, notes)),
  );
}

/** A cable in the colour of its core, with the way it belongs to where there is room to write it. */
function cableOf({ x, y, radius, core, study }: LaidCable, mm: (value: number) => string): Html {
  const at = { cx: mm(x), cy: mm(y), r: mm(radius) };
  const id = study.way.id;
  const edge = { stroke: ink, "stroke-width": "0.7" };
  const half =
    core === "cpc"
      ? element(
          "path",
          { d: `M${mm(x - radius)} ${mm(y)}a${at.r} ${at.r} 0 0 1 ${mm(2 * radius)} 0z`, fill: yellow },
          "",
        )
      : "";
  const size = Math.min(Number(at.r) * 1.1, (Number(at.r) * 3) / Math.max(id.length, 1));
  const writing = core === "cpc" || core === "L3" ? ink : paper;
  const label =
    size < 6
      ? ""
      : element(
          "text",
          {
            x: at.cx,
            y: plain(Number(at.cy) + size * 0.35, 2),
            fill: writing,
            "font-size": plain(size, 1),
            "text-anchor": "middle",
          },
          id,
        );
  return html`${element("circle", { ...at, fill: fills[core], ...edge })}${half}${label}`;
}

function legendSvg(ways: Legend["ways"], cores: readonly Core[], notes: readonly string[]): Html {
  const line = (index: number, content: Html): Html =>
    element("g", { transform: `translate(0 ${index * row})` }, content);
  const dot = (core: Core): Html =>
    html.join([
      element("circle", { cx: "6", cy: "-4", r: "5", fill: fills[core], stroke: ink, "stroke-width": "0.7" }),
      core === "cpc" ? element("path", { d: "M1 -4a5 5 0 0 1 10 0z", fill: yellow }) : "",
      element("text", { x: "17" }, names[core]),
    ]);
  const words = [...ways.map(({ text }) => text), ""];
  return html.join([
    ...words.map((text, index) => line(index, element("text", {}, text))),
    ...cores.map((core, index) => line(words.length + index, dot(core))),
    ...notes.map((text, index) => line(words.length + cores.length + index, element("text", {}, text))),
  ]);
}

/** The drawing as an address that a Markdown image takes. */
export const imageOf = ({ svg }: Drawing): string =>
  `data:image/svg+xml,${encodeURIComponent(svg.text).replace(/[()'!*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`)}`;
