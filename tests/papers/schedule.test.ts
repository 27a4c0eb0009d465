/** The schedule of circuit details and test results: what it must hold, and what a cell may say. */
import { read, utils } from "@e965/xlsx";
import { describe, expect, test } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { csvOf, harmless, unharmed } from "../../server/papers/csv.ts";
import { workbookOf } from "../../server/papers/workbook.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import { valuesOf } from "../../server/reports/schedule/values.ts";
import type { Cell, Grid } from "../../server/reports/setting/document.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { runIn } from "../cli/run.ts";

const examples = `${import.meta.dirname}/../../examples`;
const run = (...args: string[]) => runIn(examples, "schedule", ...args);

const hut = `wayfile 1
instrument M1 "Tester" {
  serial  "77"
}
installation "Peat hut" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      new
  tested    by "A.B." 2026-05-02
  supply {
    earthing  TN-S
    Ze        0.30 Ω
  }
  board A "Hut board" {
    fed-from     supply
    location     "By the door"
    main-switch  BS EN 60947-3 100 A
    rcd sockets  BS EN 61008 63 A 30 mA type A
    live 2026-05-01 with M1 {
      Zdb          0.31 Ω
      rcd sockets  30 mA 1x 21 ms
    }
    way 1 ring "=SUM(A1)" {
      device  BS EN 60898 B32 6 kA
      behind  sockets
      cable   flat-twin line 2.5 mm² cpc 1.5 mm²
      route   clipped method C
      length  40 m
      dead 2026-05-01 with M1 {
        ends        r1 290 mΩ rn 0.30 Ω r2 0.47 Ω
        insulation  500 V L-N >999 MΩ L-E 1.2 GΩ N-E 210 MΩ
        polarity    ok
      }
      live 2026-05-01 with M1 {
        Zs  0.49 Ω calculated
      }
    }
    way 2 radial "Heater" {
      device  BS EN 61009 B16 6 kA 30 mA type A
      cable   flat-twin line 2.5 mm² cpc 1.5 mm²
      route   clipped method C
      length  9 m
      dead 2026-05-01 with M1 {
        R1+R2       LIM "behind the boiler"
        insulation  250 V joined L-E 40 MΩ "a dimmer stays in"
        polarity    wrong
      }
    }
    way 3 spare
  }
}
`;

const of = (text: string) => installationsOf([fileOfText("hut.ways", text)])[0];
const gridOf = (text: string, fill: "filled" | "blank" | "last" = "filled"): Grid => {
  const installation = of(text);
  const blocks = installation ? scheduleOf(installation, { fill }).sections.flatMap((section) => section.blocks) : [];
  const grid = blocks.find((block) => block.kind === "grid");
  if (!grid) throw new Error("There is no grid.");
  return grid;
};
const cellsOf = ({ bands, rows }: Grid, way: string): Record<string, Cell> => {
  const keys = bands.flatMap(({ columns }) => columns.map(({ key }) => key));
  const row = rows.find(([first]) => first?.text === way) ?? [];
  return Object.fromEntries(keys.map((key, at) => [key, row[at] as Cell]));
};

describe("what it must hold", () => {
  // The content of the standard's informative models (BS 7671 Appendix 6, schedule of circuit details and of test
  // results), from memory: each is a column, or in the head of the board.
  test.each([
    ...["way", "serves", "wiring", "method", "points", "live", "cpc"],
    ...["disconnect", "device-standard", "device", "breaking", "max-Zs"],
    ...["rcd-standard", "rcd-type", "rcd-sensitivity", "rcd-rating"],
    ...["r1", "rn", "r2", "R1+R2", "test-voltage", "live-live", "live-earth", "polarity"],
    ...["Zs", "rcd-time", "rcd-button", "notes"],
  ])("a column %s", (key) => {
    expect(gridOf(hut).bands.flatMap(({ columns }) => columns.map((column) => column.key))).toContain(key);
  });

  test.each([
    ["a line that could not be read", (text: string) => text.replace("polarity    wrong", "polarity    wrnog 3")],
    [
      "a merge conflict",
      (text: string) =>
        text.replace("        polarity    wrong\n", (line) => `<<<<<<< ours\n${line}=======\n${line}>>>>>>> theirs\n`),
    ],
  ])("a caution, where the paper may lack what stands on %s", (_, change) => {
    const cautions = (text: string) => {
      const installation = of(text);
      const blocks = installation ? scheduleOf(installation).sections.flatMap((section) => section.blocks) : [];
      return blocks.flatMap((block) => (block.kind === "caution" ? [block.text] : []));
    };
    expect(cautions(hut)).toEqual([]);
    expect(cautions(change(hut))).toEqual([expect.stringMatching(/^Lines of way 2 could not be read/)]);
  });

  test("the board's head, its shared RCDs, instruments and a line to sign", async () => {
    const { out } = await run("heron-wharf/boatyard.ways", "--board", "W");
    for (const fact of ["Location", "Fed from", "M, way M/1, 63 A BS 88-2", "Zdb", "0.27 Ω", "Ipf", "Main switch"])
      expect(out).toContain(fact);
    expect(out).toMatch(/RCD east .*26\.4 ms +✓/);
    expect(out).toMatch(/no\. MF-20417/);
    expect(out).toMatch(/^Tested by {2}R\.M\.\n +signature _+ .*date 2026-03-06$/m);
    expect(out).toMatch(/(?:no revision|revision [0-9a-f]{8}(?:, changed since)?), printed 2026-05-04$/m);
  });
});

describe("a cell", () => {
  const ring = cellsOf(gridOf(hut), "1");
  const radial = cellsOf(gridOf(hut), "2");

  test("holds a reading in the unit of its column", () => {
    expect(ring.r1).toMatchObject({ text: "0.29", kind: "measured" });
    expect(ring["live-live"]?.text).toBe(">999");
    expect(ring["live-earth"]?.text).toBe("210");
  });

  test("tells calculated, missing, limited and not applicable apart", () => {
    expect(ring.Zs).toMatchObject({ text: "0.49", kind: "calculated" });
    expect(ring["R1+R2"]?.kind).toBe("missing");
    expect(radial["R1+R2"]).toMatchObject({ text: "LIM", kind: "absent" });
    expect(radial.r1).toMatchObject({ text: "N/A", kind: "absent" });
    expect(radial["live-live"]).toMatchObject({ text: "N/A" });
    expect(radial.Zs?.kind).toBe("missing");
    expect(radial.polarity?.text).toBe("✗");
  });

  test("gives the reason of a limitation and of a lower test voltage as a note", () => {
    const { notes } = gridOf(hut);
    expect(notes[Number(radial["R1+R2"]?.mark) - 1]).toBe("behind the boiler");
    expect(notes[Number(radial["live-earth"]?.mark) - 1]).toBe("a dimmer stays in");
  });

  test("shows the time of a shared RCD in brackets", () => {
    expect(ring["rcd-time"]?.text).toBe("(21)");
  });

  test("says that something is not stated, except on a spare way", () => {
    expect(ring.points?.text).toBe("–");
    expect(cellsOf(gridOf(hut), "3").points?.text).toBe("");
  });

  test("is blank to be filled, with last time's reading where that is wanted", () => {
    expect(cellsOf(gridOf(hut, "blank"), "1").r1).toEqual({ text: "", kind: "blank" });
    expect(cellsOf(gridOf(hut, "last"), "1").r1).toEqual({ text: "", kind: "blank", last: "0.29" });
    expect(cellsOf(gridOf(hut, "last"), "2").r1).toMatchObject({ text: "N/A" });
  });
});

test("of the waveforms and half cycles of one day the longest time is the RCD's", () => {
  const text = `wayfile 1
installation "Hut" {
  board A {
    way 1 radial "Charger" {
      device  BS EN 61009 B32 6 kA 30 mA type B
      live 2025-05-02 {
        rcd  30 mA 1x 88 ms pulsating
      }
      live 2026-05-02 {
        rcd  30 mA 1x 19 ms sinusoidal from-0
        rcd  30 mA 1x 31 ms sinusoidal from-180
        rcd  30 mA 5x 41 ms
      }
    }
  }
}
`;
  const [installation] = installationsOf([fileOfText("hut.ways", text)]);
  const { columns, rows } = valuesOf(installation as NonNullable<typeof installation>);
  const at = columns.findIndex(({ key }) => key === "rcd-time");
  expect(rows.map((row) => row[at])).toContain("31");
});

describe("as a table of values", () => {
  const installation = of(hut);
  const table = valuesOf(installation ?? (undefined as never));

  test("CSV begins no cell like a formula, and gives the text back", () => {
    const text = csvOf(table);
    expect(text).toContain(",'=SUM(A1),");
    for (const risky of ["=1+1", "+44", "-2+3", "@x", "\t=1", "  =1", "a\n=1", "＝1"])
      if (!/^[+-]?\d+$/.test(risky)) {
        expect(harmless(risky)).toBe(`'${risky}`);
        expect(unharmed(harmless(risky))).toBe(risky);
      }
    for (const plain of ["0.41", "-3", "+44", ">999", "N/A", "'tis"]) expect(harmless(plain)).toBe(plain);
  });

  // Read by another library than the one that wrote it.
  test("a workbook holds the same, figures as numbers", async () => {
    const book = read(await workbookOf(table, { file: "hut.ways" }), { type: "array" });
    expect(book.SheetNames).toEqual(["Schedule", "About"]);
    const rows = utils.sheet_to_json<(string | number)[]>(book.Sheets.Schedule ?? {}, { header: 1, defval: "" });
    const [head = [], ...body] = rows;
    const shown = utils.sheet_to_json<string[]>(book.Sheets.Schedule ?? {}, { header: 1, defval: "", raw: false });
    expect(shown.slice(1).map((row) => head.map((_, at) => row[at] ?? ""))).toEqual(table.rows.map((row) => [...row]));
    const at = head.indexOf("rn (Ω)");
    expect(body.find((row) => row[1] === 1 || row[1] === "1")?.[at]).toBe(0.3);
    expect(JSON.stringify(book.Sheets.Schedule)).not.toContain('"f":');
  });

  test("a row each for the board, its shared RCD and every way", () => {
    expect(table.rows.map((row) => row[1])).toEqual(["board", "rcd sockets", "1", "2", "3"]);
  });
});

test("a format that is none, and a folder that is not there, are refused in one sentence", async () => {
  expect(await run("heron-wharf/boatyard.ways", "--format", "docx")).toMatchObject({ code: 2, out: "" });
  const ran = await run("heron-wharf/boatyard.ways", "-o", "nowhere/at/all.csv");
  expect(ran).toMatchObject({ code: 2, out: "" });
  expect(ran.err).toMatch(/^“nowhere\/at\/all\.csv” cannot be written: .+\n$/);
});

test.each([
  ["2026-05-01", "Tested 2026-05-01."],
  ["2026-05-03", "Tested 2026-05-01 to 2026-05-03."],
])("what was tested last on %s is dated as “%s”", (last, words) => {
  const text = hut.replace("dead 2026-05-01", `dead ${last}`);
  const installation = of(text);
  const shown = JSON.stringify(installation && scheduleOf(installation).sections);
  expect(/Tested 2026-[^.]*\./.exec(shown)?.[0]).toBe(words);
});
