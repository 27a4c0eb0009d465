import { describe, expect, test } from "vitest";
import { example, look, wordsIn } from "./looking.ts";

async function drawingOf(text: string, board?: string) {
  const view = await look(text, "single-line", board);
  const [drawing] = view.kind === "drawings" ? view.drawings : [];
  if (!drawing) throw new Error("Nothing was drawn.");
  return drawing;
}

const wharf = example("heron-wharf/boatyard.ways");

/** Boards one behind the other, or side by side. */
const boards = (count: number, parent: (index: number) => number) => `wayfile 1
installation "Long shed" {
  standard  BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.2 Ω
  }
${Array.from({ length: count }, (_, index) => {
  const from = parent(index);
  const fed = Array.from({ length: count }, (_, other) => other).filter((other) => parent(other) === index);
  return `  board B${index} "Board ${index}" {
    fed-from ${from < 0 ? "supply" : `B${from}`}
${fed
  .map(
    (other, at) => `    way ${at + 1} feeder "To ${other}" {
      device BS EN 60898 B32 6 kA
      cable multicore line 10 mm² cpc 10 mm²
      length 12 m
      feeds B${other}
    }
`,
  )
  .join("")}  }
`;
}).join("")}}
`;

describe("the installation on one line", () => {
  test("boards stand in the order they are fed, with their figures", async () => {
    const drawing = await drawingOf(wharf, "M");
    const words = wordsIn(drawing.shapes);
    // The fourth stands in a file of its own.
    for (const name of ["M Main board", "O Office board", "G Gatehouse board"]) expect(words).toContain(name);
    // As they are written in the schedules of the boards.
    expect(words).toContain("Zdb 0.19 Ω");
    expect(words).toContain("Ipf 1.31 kA");
  });

  test("the table says the same for every board", async () => {
    const { table } = await drawingOf(wharf, "M");
    expect(table?.rows.map(([board]) => board?.text)).toEqual(["M Main board", "O Office board", "G Gatehouse board"]);
    for (const row of table?.rows ?? []) expect(row.length).toBe(table?.head.length);
  });

  test("what comes in goes through the main switch to the busbar, and each RCD has its ways behind it", async () => {
    const board = `wayfile 1
installation "Net shed" {
  standard  BS 7671:2018+A2:2022
  board A {
    fed-from     supply
    main-switch  BS EN 61008 100 A 100 mA type A delayed
    spd          fitted T2
    rcd left     BS EN 61008 63 A 30 mA type A
    rcd idle     BS EN 61008 40 A 30 mA type A
    way 1 radial "Hoist" { behind left }
    way 2 radial "Winch" { device BS 88-2 32 A }
    way 3 radial "Sockets" { behind left }
    way 4 radial "Boiler" { device BS EN 61009 B16 6 kA 30 mA type A }
  }
}
`;
    const { shapes, table } = await drawingOf(board);
    const things = shapes.flatMap((shape) => (shape.kind === "group" ? [shape] : []));
    // The second way behind an RCD follows the first, and the RCD is drawn once.
    expect(things.map(({ key }) => key)).toEqual([
      "origin",
      "board A",
      "rcd A/left",
      "way A/1",
      "way A/3",
      "way A/2",
      "way A/4",
      "rcd A/idle",
    ]);
    expect(things[1]?.label).toContain("main switch 100 A, 100 mA A delayed · SPD");
    expect(things[2]?.label).toBe("RCD left 63 A, 30 mA A");
    expect(wordsIn(things[6]?.shapes ?? [])).toEqual(["4", "Boiler", "B16 30 mA"]);
    expect(table?.rows[0]?.map(({ text }) => text)).toContain("main switch 100 A, 100 mA A delayed · SPD");
    // A fuse is a rectangle on its line.
    expect(things.filter(({ shapes: own }) => own.some(({ kind }) => kind === "rect")).map(({ key }) => key)).toEqual([
      "origin",
      "board A",
      "way A/2",
    ]);
    // From the origin one line leads on: to the edge of the board, to its busbar, through the switch.
    const [edge] = shapes.flatMap((shape) => (shape.kind === "line" ? [shape] : []));
    const inside = (things[1]?.shapes ?? []).flatMap((shape) => (shape.kind === "line" ? [shape] : []));
    expect(inside[0]).toMatchObject({ x1: edge?.x2, y1: edge?.y2 });
    expect(inside[1]).toMatchObject({ x1: inside[0]?.x2, y1: inside[0]?.y2 });
    const busbar = inside.find(({ role }) => role === "busbar");
    expect(inside).toContainEqual(expect.objectContaining({ x2: busbar?.x1, y2: busbar?.y1, role: "wire" }));
  });

  test("a circuit of three lines has a stroke for each of them", async () => {
    const { shapes } = await drawingOf(example("millrace/bakery.ways"), "A");
    const strokes = (key: string): number =>
      shapes
        .flatMap((shape) => (shape.kind === "group" && shape.key === key ? shape.shapes : []))
        .filter((shape) => shape.kind === "line" && shape.width === 1).length;
    expect([strokes("way A/1"), strokes("way A/6L3")]).toEqual([3, 0]);
  });

  test("no two boards overlap, however they are fed", async () => {
    const drawing = await drawingOf(
      boards(14, (index) => (index === 0 ? -1 : Math.floor((index - 1) / 3))),
      "B0",
    );
    const rects = drawing.shapes.flatMap((shape) =>
      shape.kind === "group" && shape.key.startsWith("board ") ? shape.shapes.filter((one) => one.kind === "rect") : [],
    );
    expect(rects.length).toBe(14);
    for (const one of rects)
      for (const other of rects) {
        if (one === other) continue;
        const apart =
          one.x + one.width <= other.x ||
          other.x + other.width <= one.x ||
          one.y + one.height <= other.y ||
          other.y + other.height <= one.y;
        expect(apart).toBe(true);
      }
    for (const { x, y, width, height } of rects) {
      expect(x + width).toBeLessThanOrEqual(drawing.width);
      expect(y + height).toBeLessThanOrEqual(drawing.height);
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
    }
  });

  test("of a great many boards only those that matter to the one shown are drawn, and it says so", async () => {
    const drawing = await drawingOf(
      boards(90, (index) => (index === 0 ? -1 : 0)),
      "B7",
    );
    expect(drawing.table?.rows.map(([board]) => board?.text)).toEqual(["B0 Board 0", "B7 Board 7"]);
    expect(drawing.notes[0]).toContain("2 of 90 boards are drawn");
  });

  test("boards that feed each other in a circle are no reason to stop", async () => {
    const drawing = await drawingOf(
      boards(3, (index) => (index + 1) % 3),
      "B0",
    ).catch((error: Error) => error.message);
    expect(drawing).toMatchObject({ title: "Long shed on one line" });
  });
});
