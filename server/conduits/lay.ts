/** How the single cables of a conduit or trunking would lie in it, for a drawing. Whether they fit is judged elsewhere. */
import { type Enclosure, pack } from "../calc/packing.ts";
import { type Conductor, type Core, conductorsIn } from "../circuit/conductors.ts";
import type { WayStudy } from "../circuit/way.ts";
import { enclosureWalls, singleDiameters } from "../tables/diameters.ts";
import type { Source } from "../tables/source.ts";
import { combine } from "../tables/source.ts";
import { known, numberCell } from "../tables/table.ts";
import type { ContainmentStudy } from "./study.ts";

/** One single cable where it lies, mm from the middle. */
export interface LaidCable {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly core: Core;
  readonly study: WayStudy;
}

export interface Lay {
  readonly enclosure: Enclosure;
  readonly wall: number;
  readonly cables: readonly LaidCable[];
  /** Single cables for which the drawing found no place. */
  readonly left: number;
  /** Ways of which something cannot be drawn. */
  readonly undrawn: readonly WayStudy[];
  readonly source: Source;
}

/** Nothing where the enclosure's own size is not known, or nothing in it can be drawn. */
export function layOf(study: ContainmentStudy): Lay | undefined {
  const { source: ofWall, value: wall } = known(
    enclosureWalls,
    { kind: study.isConduit ? "conduit" : "trunking" },
    "wall",
  );
  const enclosure = insideOf(study, wall);
  if (!enclosure) return undefined;
  const wanted = study.contents.flatMap(({ study: way, route }) =>
    conductorsIn(way, route).flatMap((conductor) => singly(conductor, way)),
  );
  const drawn = wanted.flatMap(({ diameter, ...one }) => (diameter ? [{ ...one, diameter }] : []));
  const [first] = drawn;
  if (!first) return undefined;
  const { placed, left } = pack(
    enclosure,
    drawn.map(({ diameter }) => diameter.value / 2),
  );
  const unknown = wanted.filter(({ diameter }) => !diameter).map(({ study: way }) => way);
  const uncounted = study.contents.filter(({ missing }) => missing !== undefined).map(({ study: way }) => way);
  return {
    enclosure,
    wall,
    cables: placed.flatMap(({ x, y, radius, index }) => {
      const one = drawn[index];
      return one ? [{ x, y, radius, core: one.core, study: one.study }] : [];
    }),
    left: left.length,
    undrawn: [...new Set([...unknown, ...uncounted])],
    source: combine(ofWall, ...drawn.map(({ diameter }) => diameter.source)),
  };
}

/** Sizes are stated over all; the walls stand inside. */
function insideOf({ isConduit, size, fact }: ContainmentStudy, wall: number): Enclosure | undefined {
  const depth = fact.args.depth?.value;
  if (isConduit) return size > 2 * wall ? { shape: "round", radius: size / 2 - wall } : undefined;
  if (depth === undefined || Math.min(size, depth) <= 2 * wall) return undefined;
  return { shape: "box", width: size - 2 * wall, depth: depth - 2 * wall };
}

function singly({ core, csa, wire, count }: Conductor, study: WayStudy) {
  const of = (make: "solid" | "stranded") => numberCell(singleDiameters, { csa, wire: make }, "overall");
  // What is not stated is drawn as it takes more room.
  const diameter = wire ? (of(wire) ?? of("stranded")) : (of("stranded") ?? of("solid"));
  return Array.from({ length: count }, () => ({ core, study, diameter }));
}
