import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Enclosure, pack } from "../../server/calc/packing.ts";

const enclosures = fc.oneof(
  fc.double({ min: 4, max: 20, noNaN: true }).map((radius): Enclosure => ({ shape: "round", radius })),
  fc
    .tuple(fc.double({ min: 8, max: 60, noNaN: true }), fc.double({ min: 8, max: 60, noNaN: true }))
    .map(([width, depth]): Enclosure => ({ shape: "box", width, depth })),
);
const radii = fc.array(fc.constantFrom(1.45, 1.6, 2, 2.3, 2.6, 3.35, 3.9), {
  minLength: 1,
  maxLength: 60,
  size: "max",
});
const area = (all: readonly number[]) => all.reduce((sum, radius) => sum + Math.PI * radius * radius, 0);
const room = (one: Enclosure) => (one.shape === "round" ? Math.PI * one.radius ** 2 : one.width * one.depth);

describe("circles in an enclosure", () => {
  it("never overlap, never leave it, and are all accounted for", () => {
    let many = 0;
    fc.assert(
      fc.property(enclosures, radii, (enclosure, all) => {
        const { placed, left } = pack(enclosure, all);
        expect([...placed.map(({ index }) => index), ...left].toSorted((a, b) => a - b)).toEqual([...all.keys()]);
        if (placed.length > 5) many++;
        for (const [index, one] of placed.entries()) {
          expect(one.radius).toBe(all[one.index]);
          if (enclosure.shape === "round")
            expect(Math.hypot(one.x, one.y) + one.radius).toBeLessThanOrEqual(enclosure.radius + 1e-6);
          else {
            expect(Math.abs(one.x) + one.radius).toBeLessThanOrEqual(enclosure.width / 2 + 1e-6);
            expect(Math.abs(one.y) + one.radius).toBeLessThanOrEqual(enclosure.depth / 2 + 1e-6);
          }
          for (const other of placed.slice(0, index))
            expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThanOrEqual(
              one.radius + other.radius - 1e-6,
            );
        }
      }),
      { numRuns: 80 },
    );
    expect(many).toBeGreaterThan(10);
  });

  it("all find a place where they fill less than two fifths of a roomy enclosure", () => {
    fc.assert(
      fc.property(enclosures, radii, (enclosure, all) => {
        const narrow = enclosure.shape === "round" ? enclosure.radius : Math.min(enclosure.width, enclosure.depth) / 2;
        fc.pre(area(all) < 0.4 * room(enclosure) && narrow > 4 * Math.max(0, ...all));
        expect(pack(enclosure, all).left).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });

  // Two side by side and a third in the hollow between them: one and √3/2 of their diameter deep.
  it("lie in the hollow between two, as deep as they go and no deeper", () => {
    const three = (depth: number) => pack({ shape: "box", width: 4, depth }, [1, 1, 1]);
    expect(three(2 + Math.sqrt(3) + 1e-6).left).toEqual([]);
    expect(three(2 + Math.sqrt(3) - 1e-3).left).toEqual([2]);
    expect(three(2 + Math.sqrt(3) + 1e-6).placed.at(-1)?.x).toBeCloseTo(0, 6);
  });

  // What lies in an enclosure is held by two: walls, or those laid before it. Nothing hangs in the air.
  it("of several sizes each touch two of the walls and the others", () => {
    const all = [3.9, 2.6, 2.6, 2, 2, 1.6, 1.6, 1.45, 1.45, 1.45];
    const near = (distance: number) => Math.abs(distance) < 1e-6;
    for (const enclosure of [
      { shape: "round", radius: 9 },
      { shape: "box", width: 17, depth: 13 },
    ] as const) {
      const { placed, left } = pack(enclosure, all);
      expect(left).toEqual([]);
      const walls = ({ x, y, radius }: (typeof placed)[number]) =>
        enclosure.shape === "round"
          ? [enclosure.radius - radius - Math.hypot(x, y)]
          : [enclosure.width / 2 - radius - Math.abs(x), enclosure.depth / 2 - radius - Math.abs(y)];
      const touches = placed.map((one, at) => [
        ...walls(one).filter(near),
        ...placed
          .slice(0, at)
          .filter((other) => near(Math.hypot(one.x - other.x, one.y - other.y) - one.radius - other.radius)),
      ]);
      // The first lies at the bottom, in a round one by itself.
      expect(touches.slice(1).filter(({ length }) => length < 2)).toEqual([]);
    }
  });

  it("as wide as the enclosure lie alone in it, and wider ones not at all", () => {
    expect(pack({ shape: "round", radius: 2 }, [2]).placed).toMatchObject([{ x: 0, y: 0 }]);
    expect(pack({ shape: "round", radius: 2 }, [2.1]).left).toEqual([0]);
    expect(pack({ shape: "box", width: 4, depth: 4 }, [2]).left).toEqual([]);
    expect(pack({ shape: "box", width: 4, depth: 3.9 }, [2]).left).toEqual([0]);
    expect(pack({ shape: "box", width: 3.9, depth: 4 }, [2]).left).toEqual([0]);
  });

  it("lie at the bottom, and the same way each time", () => {
    const round = { shape: "round", radius: 8.4 } as const;
    expect(pack(round, [2]).placed).toEqual([{ x: 0, y: 6.4, radius: 2, index: 0 }]);
    expect(pack(round, [2, 2, 2])).toEqual(pack(round, [2, 2, 2]));
    expect(pack({ shape: "box", width: 20, depth: 10 }, [2, 2]).placed.map(({ y }) => y)).toEqual([3, 3]);
  });

  // By Pythagoras: what has a diameter of 2 and touches one of its like is 2 from its middle, across by what the walls leave.
  it.each([
    // Side by side on the floor, and the next on the first: 6 wide holds three, each floor of a box three and a half wide one.
    [
      { shape: "box", width: 6, depth: 4 },
      3,
      [
        [-2, 1],
        [0, 1],
        [2, 1],
      ],
    ],
    [
      { shape: "box", width: 2, depth: 6 },
      3,
      [
        [0, 2],
        [0, 0],
        [0, -2],
      ],
    ],
    [
      { shape: "box", width: 3, depth: 10 },
      3,
      [
        [-0.5, 4],
        [0.5, 4 - Math.sqrt(3)],
        [-0.5, 4 - 2 * Math.sqrt(3)],
      ],
    ],
    // In a round one of four radii the second and third lie beside the first: 2 from it and 3 from the middle.
    [
      { shape: "round", radius: 4 },
      3,
      [
        [0, 3],
        [-Math.sqrt(4 - 4 / 9), 7 / 3],
        [Math.sqrt(4 - 4 / 9), 7 / 3],
      ],
    ],
    // Three that touch each other and the wall have their middles at the corners of a triangle with sides of 2.
    [
      { shape: "round", radius: 1 + 2 / Math.sqrt(3) },
      3,
      [
        [0, 2 / Math.sqrt(3)],
        [-1, -1 / Math.sqrt(3)],
        [1, -1 / Math.sqrt(3)],
      ],
    ],
  ] as const)("in %j %i of radius 1 lie at %j", (enclosure, count, middles) => {
    const { placed } = pack(
      enclosure,
      Array.from({ length: count }, () => 1),
    );
    expect(placed.map(({ x, y }) => [x, y])).toEqual(
      middles.map(([x, y]) => [expect.closeTo(x, 6), expect.closeTo(y, 6)]),
    );
  });

  it("are left over where there is no room", () => {
    expect(pack({ shape: "round", radius: 2 }, [3, 1, 1, 1]).left).toEqual([0, 3]);
    expect(pack({ shape: "box", width: 4, depth: 4 }, [2, 2])).toEqual({
      placed: [{ x: -0, y: 0, radius: 2, index: 0 }],
      left: [1],
    });
  });
});
