/** A drawing as SVG in the colours of paper, for pages and hovers. The live view has the theme's instead. */
import type { Drawing, PlainShape, Role, Shape, TextRole } from "../../drawings/shapes.ts";
import { element, type Html, html } from "../../text/html.ts";

interface Picture {
  readonly title: string;
  /** What is to be seen, for those who cannot see it. */
  readonly description: string;
  readonly svg: Html;
}

const ink = "#1c1c1a";
const paper = "#ffffff";
const soft = "#62625d";

/** The line of a role, and what it is filled with where it is filled. */
const strokes: Readonly<Record<Role, string>> = {
  rule: soft,
  wire: ink,
  busbar: ink,
  board: ink,
  limit: ink,
  band: soft,
  expected: soft,
  reading: ink,
  over: ink,
  unsure: ink,
  missing: soft,
  suspect: ink,
  paper,
  brown: ink,
  black: ink,
  grey: ink,
  blue: ink,
  green: ink,
  yellow: "none",
};
const fills: Readonly<Partial<Record<Role, string>>> = {
  board: paper,
  band: "#e6e6e1",
  brown: "#8a5a2b",
  black: "#26262a",
  grey: "#9a9aa0",
  blue: "#2f6fd0",
  green: "#2e9a4a",
  yellow: "#f5d327",
};
const dashes: Readonly<Partial<Record<Role, string>>> = { missing: "3 3", suspect: "2 4" };

export function pictureOf({ title, description, width, height, shapes }: Drawing): Picture {
  const svg = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      role: "img",
      width: String(width),
      height: String(height),
      viewBox: `0 0 ${width} ${height}`,
      "font-family": "system-ui, sans-serif",
      "font-size": "12",
      fill: ink,
    },
    element("title", {}, title),
    element("desc", {}, description),
    element("rect", { width: "100%", height: "100%", fill: paper }),
    ...shapes.map(shapeSvg),
  );
  return { title, description, svg };
}

const shapeSvg = (shape: Shape): Html =>
  shape.kind === "group" ? html.join(shape.shapes.map(shapeSvg)) : plainSvg(shape);

function plainSvg(shape: PlainShape): Html {
  switch (shape.kind) {
    case "line":
      return element("line", {
        ...numbers({ x1: shape.x1, y1: shape.y1, x2: shape.x2, y2: shape.y2 }),
        ...look(shape.role, shape.width),
      });
    case "path":
      return element("path", { d: shape.d, ...look(shape.role, shape.width, shape.filled) });
    case "circle":
      return element("circle", {
        ...numbers({ cx: shape.x, cy: shape.y, r: shape.r }),
        ...look(shape.role, shape.width, shape.filled),
      });
    case "rect":
      return element("rect", {
        ...numbers({ x: shape.x, y: shape.y, width: shape.width, height: shape.height }),
        ...look(shape.role, shape.line, shape.filled),
      });
    case "text":
      return element(
        "text",
        {
          ...numbers({ x: shape.x, y: shape.y }),
          ...textLook(shape.role),
          ...(shape.size === undefined ? {} : numbers({ "font-size": shape.size })),
          ...(shape.anchor ? { "text-anchor": shape.anchor } : {}),
        },
        shape.text,
      );
  }
}

const numbers = (values: Readonly<Record<string, number>>): Record<string, string> =>
  Object.fromEntries(Object.entries(values).map(([name, value]) => [name, String(value)]));

function look(role: Role, width = 1.4, filled = false): Record<string, string> {
  const dash = dashes[role];
  return {
    fill: fills[role] ?? (filled ? ink : "none"),
    stroke: strokes[role],
    "stroke-width": String(width),
    ...(dash ? { "stroke-dasharray": dash } : {}),
  };
}

function textLook(role: TextRole): Record<string, string> {
  switch (role) {
    case "title":
    case "over":
    case "unsure":
      return { "font-weight": "600" };
    case "calculated":
      return { "font-style": "italic" };
    case "note":
    case "missing":
      return { fill: soft };
    case "onDark":
      return { fill: paper };
    default:
      return {};
  }
}

/** A picture as an address that a Markdown image takes. */
export const imageOf = ({ svg }: Picture): string =>
  `data:image/svg+xml,${encodeURIComponent(svg.text.toWellFormed()).replace(/[()'!*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`)}`;
