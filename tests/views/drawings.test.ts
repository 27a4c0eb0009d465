import { describe, expect, test } from "vitest";
import type { ViewKind } from "../../server/views/kinds.ts";
import { example, look, wordsIn } from "./looking.ts";

async function drawingsOf(text: string, kind: ViewKind, board?: string) {
  const view = await look(text, kind, board);
  if (view.kind !== "drawings") throw new Error("These are no drawings.");
  return view;
}

const hall = example("copper-lane/hall-faulty.ways");

const ring = (ends: string, points: readonly string[] = [], run = "run A 10 m S1 10 m S2 10 m S3 10 m A") => `wayfile 1
installation "Barn" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.3 Ω
  }
  board A "Barn board" {
    fed-from supply
    way 1 ring "Sockets" {
      device BS EN 60898 B32 6 kA
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      ${run}
      serves sockets
      dead 2026-03-04 {
        ${ends}
        ${points.join("\n        ")}
      }
    }
  }
}
`;

describe("a ring", () => {
  const sound = ring("ends r1 0.30 Ω rn 0.30 Ω r2 0.48 Ω", [
    "at S1 L-N 0.15 Ω L-E 0.20 Ω",
    "at S2 L-N 0.15 Ω L-E 0.20 Ω",
    "at S3 L-N 0.15 Ω L-E 0.20 Ω",
  ]);

  test("has its points in order, and each reading lies on the band of what is expected", async () => {
    const { drawings } = await drawingsOf(sound, "rings");
    const [drawing] = drawings;
    expect(drawing?.table?.rows.map(([point]) => point?.text)).toEqual(["S1", "S2", "S3"]);
    // (0.30 + 0.30) / 4 and (0.30 + 0.48) / 4, as the trade works them (GN3, 2.6.6): half way round.
    const second = drawing?.table?.rows[1]?.map(({ text }) => text) ?? [];
    expect(second.slice(0, 3)).toEqual(["S2", "the ring", "0.15 Ω"]);
    expect(Number.parseFloat(second[3] ?? "")).toBeCloseTo(0.15, 2);
    expect(Math.abs(Number.parseFloat(second[5] ?? "") - 0.195)).toBeLessThan(0.0051);
    expect(JSON.stringify(drawing)).not.toContain('"over"');
    expect(drawing?.notes).toEqual([]);
  });

  test("points stand round it at their lengths: a quarter of the cable is a quarter of the way", async () => {
    const { drawings } = await drawingsOf(sound, "rings");
    const dots = (drawings[0]?.shapes ?? []).flatMap((shape) =>
      shape.kind === "group" && shape.key.startsWith("point ")
        ? shape.shapes.filter(({ kind }) => kind === "circle").slice(0, 1)
        : [],
    ) as readonly { readonly x: number; readonly y: number }[];
    const [left, top, right] = dots.toSorted((a, b) => a.x - b.x);
    const middle = (drawings[0]?.width ?? 0) / 2;
    // S2 is half way: straight above the board. S1 and S3 mirror each other.
    expect(top?.x).toBeCloseTo(middle, 1);
    expect(middle - (left?.x ?? 0)).toBeCloseTo((right?.x ?? 0) - middle, 1);
    expect(left?.y).toBeCloseTo(right?.y ?? 0, 1);
  });

  test("an open conductor is marked between the points the readings put it at", async () => {
    const { drawings } = await drawingsOf(hall, "rings");
    const [drawing] = drawings;
    const shapes = JSON.stringify(drawing?.shapes);
    expect(drawing?.notes.at(-1)).toContain("open between S2 and S3");
    expect(shapes).toContain('"suspect"');
    // Two crosses of two lines: the break, and the joint of the second explanation.
    expect((drawing?.shapes ?? []).filter((shape) => shape.kind === "line" && shape.role === "over").length).toBe(4);
    expect(wordsIn(drawing?.shapes ?? [])).toContain("spur of 3 m from S2");
  });

  test.each([
    ["no point at all", ring("ends r1 0.30 Ω rn 0.30 Ω r2 0.48 Ω", [], "length 40 m")],
    ["no reading at all", ring("temperature 20 °C")],
    ["ends that are open", ring("ends r1 >99 Ω rn >99 Ω r2 >99 Ω")],
    [
      "forty points",
      ring(
        "ends r1 0.30 Ω rn 0.30 Ω r2 0.48 Ω",
        [],
        `run A ${Array.from({ length: 40 }, (_, at) => `1 m P${at}`).join(" ")} 1 m A`,
      ),
    ],
    [
      "a spur off a spur off a spur",
      ring(
        "ends r1 0.30 Ω rn 0.30 Ω r2 0.48 Ω",
        [],
        "run A 10 m S1 10 m A\n      run S1 2 m X\n      run X 2 m Y\n      run Y 2 m Z",
      ),
    ],
  ])("is drawn of %s, with every shape on the paper", async (_, text) => {
    const { drawings } = await drawingsOf(text, "rings");
    const [drawing] = drawings;
    if (!drawing) throw new Error("Nothing was drawn.");
    const numbers = [
      ...JSON.stringify(drawing.shapes).matchAll(/"(x|y|x1|x2|y1|y2|r|width|height)":(null|-?[\d.e+-]+)/g),
    ];
    expect(numbers.length).toBeGreaterThan(5);
    for (const [, name, value] of numbers) {
      expect(value).not.toBe("null");
      expect(Number(value)).toBeGreaterThanOrEqual(0);
      expect(Number(value)).toBeLessThanOrEqual(name === "y" || name?.startsWith("y") ? drawing.height : drawing.width);
    }
  });

  test("of a board without one, that is said", async () => {
    expect(await drawingsOf(hall.replace("way 3 ring", "way 3 radial"), "rings")).toMatchObject({
      drawings: [],
      nothing: "Board A has no ring.",
    });
  });
});

describe("limits of a whole board", () => {
  test("each circuit has its loop and its drop beside their limits", async () => {
    const { drawings } = await drawingsOf(hall, "limits");
    const rows = drawings[0]?.table?.rows.map((row) => row.map(({ text }) => text));
    // 230 V × 0.95 / (10 × 32 A) = 0.68 Ω, and 80 % of it cold (Table 41.3; GN3).
    expect(rows?.[0]?.slice(0, 4)).toEqual(["1 Kitchen boiler", "0.89 Ω", "0.54 Ω", "65 % over"]);
    expect(rows?.length).toBe(6);
  });

  test("before anything is read the calculated figures stand there, and say so", async () => {
    const design = hall.replace("stage      tested", "stage      design").replace(/\n {6}(dead|live) [^}]*\}/g, "");
    const { drawings } = await drawingsOf(design, "limits");
    expect(drawings[0]?.table?.rows[0]?.[1]?.text).toMatch(/^[\d.]+ Ω, calculated$/);
  });
});

describe("years", () => {
  const twiceOn = (day: string): string =>
    ring("ends r1 0.30 Ω rn 0.30 Ω r2 0.48 Ω").replace(
      "      dead 2026",
      `      live 2021-03-04 {\n        Zs 0.50 Ω\n      }\n      live ${day} {\n        Zs 0.62 Ω\n      }\n      dead 2026`,
    );

  test("a reading of several days stands in the order of the days, beside its limit", async () => {
    const { drawings } = await drawingsOf(twiceOn("2026-03-04"), "years");
    expect(drawings[0]?.table?.rows.map((row) => row.slice(1, 3).map(({ text }) => text))).toEqual([
      ["2021-03-04", "0.50 Ω"],
      ["2026-03-04", "0.62 Ω"],
    ]);
    expect(wordsIn(drawings[0]?.shapes ?? [])).toContain("limit 1.09 Ω");
  });

  test("nothing is drawn of a single day", async () => {
    expect((await drawingsOf(hall, "years")).drawings).toEqual([]);
  });

  test("a day that is no day has no place in it", async () => {
    for (const day of ["2026-13-45", "2026-02-31", "2026-03-"]) {
      const text = twiceOn(day);
      expect(JSON.stringify((await drawingsOf(text, "years")).drawings)).not.toMatch(/null|NaN/);
    }
    expect((await drawingsOf(twiceOn("2026-03-04"), "years")).drawings).toHaveLength(1);
  });
});

test("the drop of a feeder is a part of what its circuits have, and not unknown", async () => {
  const { drawings } = await drawingsOf(example("millrace/bakery.ways"), "limits", "A");
  const drops = new Map(drawings[0]?.table?.rows.map((row) => [row[0]?.text, row[4]?.text]));
  expect(drops.get("9 Loft office")).toBe("in those it feeds");
  expect(drops.get("1 Deck oven")).toBe("0.45 %, calculated");
});

describe("reports", () => {
  test("the schedule of results is a view, and so is the paper of the latest inspection or why there is none", async () => {
    const schedule = await look(example("larkfield/cottage.ways"), "schedule");
    expect(schedule).toMatchObject({ kind: "report", title: expect.stringContaining("Schedule") });
    const table = (schedule.kind === "report" ? schedule.sections : []).flatMap(({ blocks }) => blocks);
    expect(table.some((block) => block.kind === "table" && block.rows.length > 10)).toBe(true);
    const periodic = await look(example("alder-row/periodic.ways"), "inspection");
    expect(periodic).toMatchObject({ title: expect.stringContaining("condition report") });
    const refused = await look(hall, "inspection");
    expect(JSON.stringify(refused)).toContain("can be given");
  });

  test("working and worksheet are there as data, with all their parts", async () => {
    const working = await look(hall, "working");
    const sheet = await look(hall, "worksheet");
    expect(working).toMatchObject({ kind: "report", title: expect.stringContaining("Working") });
    expect(sheet).toMatchObject({ kind: "report", title: expect.stringContaining("worksheet") });
    const kinds = new Set(
      (working.kind === "report" ? working.sections : []).flatMap(({ blocks }) => blocks.map(({ kind }) => kind)),
    );
    for (const kind of ["words", "calculation", "table"]) expect(kinds).toContain(kind);
  });
});
