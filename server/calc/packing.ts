/**
 * Circles laid into an enclosure as cables come to lie: each as deep as the walls and those already there allow, the
 * thickest first. The same circles always lie the same way. Deep is where y is great.
 */

export type Enclosure =
  | { readonly shape: "round"; readonly radius: number }
  | { readonly shape: "box"; readonly width: number; readonly depth: number };

interface Placed {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Its place in the list that was given. */
  readonly index: number;
}

interface Packing {
  readonly placed: readonly Placed[];
  /** Those for which no place was found, by their places in the list. */
  readonly left: readonly number[];
}

interface Point {
  readonly x: number;
  readonly y: number;
}

const slack = 1e-7;

/** The middle of the enclosure is the origin. */
export function pack(enclosure: Enclosure, radii: readonly number[]): Packing {
  const order = radii.map((radius, index) => ({ radius, index })).toSorted((a, b) => b.radius - a.radius);
  const placed: Placed[] = [];
  const left: number[] = [];
  let open: Point[] = [];
  let current: number | undefined;
  for (const { radius, index } of order) {
    if (radius !== current) open = openPlaces(enclosure, placed, radius);
    current = radius;
    const [place] = open;
    if (!place) {
      left.push(index);
      continue;
    }
    const one = { ...place, radius, index };
    const added = besides(enclosure, one, placed, radius).filter((point) => isFree(point, radius, [...placed, one]));
    placed.push(one);
    // A place stays open as long as what has just been laid leaves it.
    open = [...open.filter((point) => isFree(point, radius, [one])), ...added].toSorted(deepest);
  }
  return { placed, left: left.toSorted((a, b) => a - b) };
}

/** The deepest first; of two as deep the one nearer the middle, then the left one. */
const deepest = (a: Point, b: Point): number =>
  rounded(b.y) - rounded(a.y) || rounded(Math.abs(a.x)) - rounded(Math.abs(b.x)) || a.x - b.x;
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

function openPlaces(enclosure: Enclosure, placed: readonly Placed[], radius: number): Point[] {
  const all = [
    ...atTheBottom(enclosure, radius),
    ...placed.flatMap((one, index) => besides(enclosure, one, placed.slice(0, index), radius)),
  ];
  return all.filter((point) => isFree(point, radius, placed)).toSorted(deepest);
}

/** Where a first circle comes to rest. */
function atTheBottom(enclosure: Enclosure, radius: number): Point[] {
  if (enclosure.shape === "round") {
    const reach = enclosure.radius - radius;
    return reach < 0 ? [] : [{ x: 0, y: reach }];
  }
  const x = enclosure.width / 2 - radius;
  const y = enclosure.depth / 2 - radius;
  return x < 0 || y < 0
    ? []
    : [
        { x: -x, y },
        { x, y },
      ];
}

/** Where a circle may lie that touches one circle, and a wall or a second circle. */
function besides(enclosure: Enclosure, one: Placed, others: readonly Placed[], radius: number): Point[] {
  const reach = one.radius + radius;
  const atOthers = others.flatMap((other) => crossings(one, reach, other, other.radius + radius));
  return [...atOthers, ...atWall(enclosure, one, reach, radius)].filter((point) => isWithin(enclosure, point, radius));
}

function atWall(enclosure: Enclosure, one: Point, reach: number, radius: number): Point[] {
  if (enclosure.shape === "round") return crossings(one, reach, { x: 0, y: 0 }, enclosure.radius - radius);
  const x = enclosure.width / 2 - radius;
  const y = enclosure.depth / 2 - radius;
  const along = (distance: number): number[] => {
    // No number where it does not reach so far, which lies within nothing.
    const sideways = Math.sqrt(reach * reach - distance * distance);
    return [-sideways, sideways];
  };
  return [
    ...[-y, y].flatMap((level) => along(level - one.y).map((dx) => ({ x: one.x + dx, y: level }))),
    ...[-x, x].flatMap((side) => along(side - one.x).map((dy) => ({ x: side, y: one.y + dy }))),
  ];
}

/** The points at given distances from two points. */
function crossings(a: Point, toA: number, b: Point, toB: number): Point[] {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const apart = Math.hypot(dx, dy);
  if (apart < slack || apart > toA + toB || apart < Math.abs(toA - toB)) return [];
  const along = (apart * apart + toA * toA - toB * toB) / (2 * apart);
  const across = Math.sqrt(Math.max(0, toA * toA - along * along));
  const x = a.x + (dx * along) / apart;
  const y = a.y + (dy * along) / apart;
  const off = { x: (-dy * across) / apart, y: (dx * across) / apart };
  return [
    { x: x + off.x, y: y + off.y },
    { x: x - off.x, y: y - off.y },
  ];
}

const isFree = (point: Point, radius: number, placed: readonly Placed[]): boolean =>
  placed.every((one) => Math.hypot(point.x - one.x, point.y - one.y) >= radius + one.radius - slack);

function isWithin(enclosure: Enclosure, { x, y }: Point, radius: number): boolean {
  if (enclosure.shape === "round") return Math.hypot(x, y) + radius <= enclosure.radius + slack;
  return Math.abs(x) + radius <= enclosure.width / 2 + slack && Math.abs(y) + radius <= enclosure.depth / 2 + slack;
}
