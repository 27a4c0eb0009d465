/** Readings entered one by one become lines of the schedule; what stands there is never lost. */
import { globSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { networkOf, studiesOn } from "../../server/boards/network.ts";
import { keysOf } from "../../server/views/board.ts";
import { type Entry, written } from "../../server/views/entry.ts";
import { type GridView, gridView } from "../../server/views/grid.ts";
import { openSample } from "../helpers/cursor.ts";
import { example, look } from "./looking.ts";

const day = "2026-11-29";
const examples = join(import.meta.dirname, "../../examples");

const sample = (way: string, stage = "tested"): string => `wayfile 1
instrument M1 "Multifunction tester"
installation "Barn" {
  standard BS 7671:2018+A2:2022
  stage ${stage}
  supply {
    earthing TN-S
    Ze 0.30 Ω
  }
  board A "Barn board" {
    fed-from supply
${way}
  }
}
`;
const radial = `    way 1 radial "Boiler" {
      device  BS EN 61009 B16 6 kA 30 mA type A
      cable   flat-twin line 2.5 mm² cpc 1.5 mm²
      length  14 m
    }`;
const ring = `    way 1 ring "Sockets" {
      device  BS EN 60898 B32 6 kA
      cable   flat-twin line 2.5 mm² cpc 1.5 mm²
      run     A 10 m S1 10 m S2 10 m A
    }`;

async function first(text: string) {
  const { snapshot } = await openSample(text);
  const [place] = snapshot.installations[0]?.boards ?? [];
  const [study] = place ? studiesOn(place) : [];
  if (!study) throw new Error("The sample has no way.");
  return { study, snapshot };
}

/** The text after some entries, each made in what the one before has left. */
async function entering(text: string, ...entries: readonly (Partial<Entry> & Pick<Entry, "column" | "text">)[]) {
  let current = text;
  for (const entry of entries) {
    const { study, snapshot } = await first(current);
    const result = written(study, { day, ...entry });
    if (!("edit" in result)) return { text: current, result };
    const at = snapshot.positions.offset(study.way.segment, 0);
    current = current.slice(0, at + result.edit.start) + result.edit.text + current.slice(at + result.edit.end);
  }
  return { text: current, result: undefined };
}

const problemsOf = async (text: string) => {
  const { snapshot } = await openSample(text);
  return snapshot.findings.filter(({ check }) => check.startsWith("language/")).map(({ message }) => message);
};

describe("a reading that is entered", () => {
  test("stands in a new block of its day, with its instrument and unit, and the language reads it", async () => {
    const { text } = await entering(sample(radial), { column: "R1+R2", text: "0.27", instrument: "M1" });
    expect(text).toContain(`      length  14 m
      dead 2026-11-29 with M1 {
        R1+R2        0.27 Ω
      }
    }`);
    expect(await problemsOf(text)).toEqual([]);
    expect((await first(text)).study.R1R2?.value).toMatchObject({ value: 0.27 });
  });

  test("joins what was read on the same day, dead with dead and live with live", async () => {
    const { text } = await entering(
      sample(radial),
      { column: "R1+R2", text: "0.27" },
      { column: "L-N", text: ">999" },
      { column: "L-E", text: ">999" },
      { column: "polarity", text: "o" },
      { column: "Zs", text: ".57" },
      { column: "RCD 1×", text: "24" },
      { column: "button", text: "ok" },
    );
    expect(text).toContain(`      dead 2026-11-29 {
        R1+R2        0.27 Ω
        insulation   500 V L-N >999 MΩ L-E >999 MΩ
        polarity     ok
      }
      live 2026-11-29 {
        Zs           0.57 Ω
        rcd          30 mA 1x 24 ms
        test-button  ok
      }
    }`);
    expect(await problemsOf(text)).toEqual([]);
  });

  test("of a ring's ends is completed step by step, and its points are lines of their own", async () => {
    const { text } = await entering(
      sample(ring),
      { column: "r1", text: "0.22" },
      { column: "rn", text: "0.22" },
      { column: "r2", text: "0.36" },
      { column: "at L-N", point: "S2", text: "0.11" },
      { column: "at L-E", point: "S2", text: "0.15" },
    );
    expect(text).toContain("ends         r1 0.22 Ω rn 0.22 Ω r2 0.36 Ω");
    expect(text).toContain("at S2        L-N 0.11 Ω L-E 0.15 Ω");
    expect(await problemsOf(text)).toEqual([]);
  });

  test("leaves an earlier day as it is", async () => {
    const before = sample(radial.replace("    }", "      live 2021-02-03 {\n        Zs 0.50 Ω\n      }\n    }"));
    const { text } = await entering(before, { column: "Zs", text: "0.57" });
    expect(text).toContain(
      "live 2021-02-03 {\n        Zs 0.50 Ω\n      }\n      live 2026-11-29 {\n        Zs           0.57 Ω",
    );
  });

  test("never takes the place of what was recorded that day without a reason, and keeps it", async () => {
    const { text } = await entering(sample(radial), { column: "Zs", text: "0.75" });
    const refused = await entering(text, { column: "Zs", text: "0.57" });
    expect(refused).toEqual({ text, result: { stands: "0.75 Ω" } });
    const corrected = await entering(text, { column: "Zs", text: "0.57", why: 'Figures "turned" round' });
    expect(corrected.text).toContain('Zs           0.57 Ω was 0.75 Ω "Figures  turned  round"');
    expect(await problemsOf(corrected.text)).toEqual([]);
    // What was typed a moment ago is not a record yet.
    const again = await entering(text, { column: "Zs", text: "0.57", draft: "0.75 Ω" });
    expect(again.text).toContain("Zs           0.57 Ω\n");
    // Somebody else has written another figure meanwhile.
    expect((await entering(text, { column: "Zs", text: "0.57", draft: "0.70 Ω" })).result).toEqual({
      stands: "0.75 Ω",
    });
  });

  const dead = (line: string): string =>
    sample(radial.replace(/\n {4}}$/, `\n      dead ${day} {\n        ${line}\n      }\n    }`));

  test.each([
    [
      "N-E",
      'insulation 500 V L-N 90 MΩ L-E 80 MΩ N-E >999 MΩ spd-in "Left in"',
      'N-E 300 MΩ was >999 MΩ "Misread" spd-in "Left in"',
    ],
    ["N-E", 'insulation 500 V L-N 90 MΩ L-E 80 MΩ N-E LIM "Shared" spd-in', 'N-E 300 MΩ was LIM "Misread" spd-in'],
    ["LN-E", "insulation 500 V L-E 80 MΩ joined", 'L-E 300 MΩ was 80 MΩ "Misread" joined'],
  ])("corrects %s, and what else its line says stays", async (column, line, corrected) => {
    const { text } = await entering(dead(line), { column, text: "300", why: "Misread" });
    expect(text).toContain(corrected);
    expect(await problemsOf(text)).toEqual([]);
  });

  test("of line and neutral joined is one reading, before and after it is taken again", async () => {
    const before = dead("insulation 500 V L-E 80 MΩ joined").replace(day, "2021-02-03");
    const { study } = await first(before);
    const { text } = await entering(before, { column: "LN-E", text: "120" });
    expect(text).toContain(`dead ${day} {\n        insulation   500 V L-E 120 MΩ joined`);
    expect(await problemsOf(text)).toEqual([]);
    expect(written(study, { column: "L-E", text: "120", day })).toEqual({ problem: "Way 1 has no such reading." });
  });

  test("of three lines the lowest is shown, and corrected where it stands", async () => {
    const line = "insulation 500 V L1-L2 90 MΩ L1-E 60 MΩ L2-E 50 MΩ L3-E 70 MΩ N-E 30 MΩ";
    const { snapshot } = await openSample(dead(line));
    const [installation] = snapshot.installations;
    const [place] = installation?.boards ?? [];
    const view = installation && place && gridView(place, networkOf(installation), []);
    const cells = new Map(view?.rows[0]?.cells.map(({ column, text }) => [column, text]));
    expect([cells.get("L-L"), cells.get("L-E"), cells.get("N-E")]).toEqual(["90 MΩ", "50 MΩ", "30 MΩ"]);
    const { text } = await entering(dead(line), { column: "L-E", text: "55", why: "Misread" });
    expect(text).toContain('L1-E 60 MΩ L2-E 55 MΩ was 50 MΩ "Misread" L3-E 70 MΩ');
    expect(await problemsOf(text)).toEqual([]);
  });

  test("may be what could not be read, with its reason", async () => {
    const { text } = await entering(sample(radial), { column: "Zs", text: "lim no access to the far point" });
    expect(text).toContain('Zs           LIM "no access to the far point"');
    expect(await problemsOf(text)).toEqual([]);
  });

  test.each([
    ["Zs", "0,57", "Write a point for the decimals: 0.57."],
    ["Zs", "quite low", "Zs: write a figure such as 0.31, or LIM with the reason."],
    ["polarity", "7", "polarity: write ok or wrong, or LIM with the reason."],
    ["Zs", "0.57 MΩ", expect.stringContaining("MΩ")],
    ["r1", "0.3", "Way 1 has no such reading."],
  ])("%s “%s” is answered, and nothing is written", async (column, text, problem) => {
    const before = sample(radial);
    const after = await entering(before, { column, text });
    expect(after).toEqual({ text: before, result: { problem } });
  });

  test.each([
    ["a day that is none", { day: "yesterday" }, radial],
    ["a day that does not exist", { day: "2026-13-40" }, radial],
    ["a way on one line", {}, '    way 1 radial "Boiler" { length 14 m }'],
    ["an instrument with a name that would break the line", { instrument: "M1 {" }, radial],
  ])("of %s is refused in a sentence", async (_, more, way) => {
    const before = sample(way);
    const { text, result } = await entering(before, { column: "Zs", text: "0.57", ...more });
    expect(text).toBe(before);
    expect(result).toMatchObject({ problem: expect.stringMatching(/\.$/) });
  });

  test("keeps the line ends of its file", async () => {
    const { text } = await entering(sample(radial).replaceAll("\n", "\r\n"), { column: "Zs", text: "0.57" });
    expect(text).toMatch(/Zs +0\.57 Ω\r\n/);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });
});

describe("the grid", () => {
  test("has a column for each reading that some way needs, with what it should read and its limit", async () => {
    const view = await look(example("copper-lane/hall-faulty.ways"), "tests");
    if (view.kind !== "grid") throw new Error("This is no grid.");
    expect(view.columns.map(({ key }) => key)).toEqual(
      expect.arrayContaining(["r1", "rn", "r2", "R1+R2", "L-N", "L-E", "N-E", "polarity", "Zs", "RCD 1×", "button"]),
    );
    const Zs = view.rows[0]?.cells.find(({ column }) => column === "Zs");
    expect(Zs).toMatchObject({
      text: "0.89 Ω",
      on: "2026-03-10",
      standing: "beyond",
      limits: [{ sense: "most", value: 0.54 }],
    });
    expect(view.rows.some(({ point }) => point === "S3")).toBe(true);
    expect(view.rows.every(({ id }) => id !== "7")).toBe(true);
  });

  test("every cell of every example takes a reading, and the language reads what was written", async () => {
    for (const name of ["copper-lane/hall-faulty.ways", "larkfield/cottage.ways", "tanner-row/shop.ways"]) {
      const text = example(name).replace(/use "[^"]*"/, 'use "instruments.ways"');
      const { snapshot } = await openSample(text, { "instruments.ways": example("shared/instruments.ways") });
      for (const installation of snapshot.installations)
        for (const place of installation.boards) {
          const view: GridView = gridView(place, networkOf(installation), []);
          for (const study of studiesOn(place)) {
            const rows = view.rows.filter(({ id }) => id === study.way.id);
            for (const row of rows)
              for (const { column } of row.cells) {
                const words = view.columns.find(({ key }) => key === column)?.words;
                const result = written(study, {
                  column,
                  text: words?.[0] ?? "0.50",
                  day,
                  ...(row.point === undefined ? {} : { point: row.point }),
                });
                expect([name, row.key, column, result]).toEqual([
                  name,
                  row.key,
                  column,
                  expect.objectContaining({ edit: expect.anything() }),
                ]);
              }
          }
        }
    }
  });

  test("a correction of any reading of any example keeps every other word of its way", async () => {
    const names = globSync("*/*.ways", { cwd: examples }).filter((name) => !name.startsWith("shared/"));
    let corrected = 0;
    for (const name of names) {
      const text = example(name).replace(/use "\.\.\/[^"]*"/, 'use "instruments.ways"');
      const { snapshot } = await openSample(text, { "instruments.ways": example("shared/instruments.ways") });
      for (const installation of snapshot.installations)
        for (const place of installation.boards) {
          const view: GridView = gridView(place, networkOf(installation), []);
          const studies = studiesOn(place).filter(({ isSpare }) => !isSpare);
          const ids = keysOf(studies.map(({ way }) => way.id));
          for (const row of view.rows)
            for (const { column, on, text: stands } of row.cells) {
              const study =
                studies[ids.indexOf(row.point === undefined ? row.key : row.key.slice(0, -row.point.length - 1))];
              if (!study || on === "" || on === undefined) continue;
              const words = view.columns.find(({ key }) => key === column)?.words ?? [];
              const typed = words.find((word) => word !== stands) ?? "0.53";
              const point = row.point === undefined ? {} : { point: row.point };
              const result = written(study, { column, text: typed, day: on, why: "Misread", ...point });
              if (!("edit" in result) || result.edit.text === "") continue;
              const { start, end, text: put } = result.edit;
              const replaced = study.way.segment.text.slice(start, end).replace(/ "[^"]*"$/, "");
              expect([name, row.key, column, put]).toEqual([
                name,
                row.key,
                column,
                replaced === "" ? expect.any(String) : `${result.value} was ${replaced} "Misread"`,
              ]);
              // One figure, or one word in place of it.
              if (replaced !== "") expect(replaced).toMatch(/^(?:[<>]?[\d.]+\s?\S+|[a-zA-Z/-]+)$/);
              corrected++;
            }
        }
    }
    expect(corrected).toBeGreaterThan(500);
  });
});
