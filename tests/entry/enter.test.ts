/** Readings that come back: what is written, that nothing is overwritten, and what is listed instead. */
import { readFileSync } from "node:fs";
import { read, utils, write } from "@e965/xlsx";
import { describe, expect, test } from "vitest";
import { enter as enterInto } from "../../server/entry/enter.ts";
import { readValue } from "../../server/entry/value.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { csvOf } from "../../server/papers/csv.ts";
import { incomingOf } from "../../server/papers/incoming.ts";
import { workbookOf } from "../../server/papers/workbook.ts";
import { entriesOfFile } from "../../server/readings/entries.ts";
import { valuesOf } from "../../server/reports/schedule/values.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { Folder } from "../cli/run.ts";

const shed = `wayfile 1
instrument M1 "Tester" {
  range        insulation 999 MΩ
}
installation "Peat shed" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Shed board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    rcd east     BS EN 61008 63 A 30 mA type A

    # The sockets.
    way 1 ring "Sockets" {
      device       BS EN 60898 B32 6 kA
      behind       east
      cable        flat-twin line 2.5 mm² cpc 1.5 mm²
      route        clipped method C
      run          A 9 m S1 8 m S2 12 m A
      live 2026-05-01 with M1 {
        Zs           0.61 Ω
      }
    }
    way 2 radial "Heater" { device BS EN 61009 B16 6 kA 30 mA type A }
    way 3 radial "Light"
    way 4 spare
  }
}
`;

const enter = async (readings: string | Uint8Array, name: string, ...options: string[]) => {
  const folder = new Folder({ "shed.ways": shed, [name]: readings });
  const ran = await folder.run("enter", "shed.ways", name, ...options);
  const text = readFileSync(folder.at("shed.ways"), "utf8");
  return { ...ran, text, folder };
};

const sheet = (...readings: (readonly [at: string, test: string, value: string])[]): string =>
  JSON.stringify({
    wayfile: "readings",
    version: 1,
    file: "shed.ways",
    base: "",
    by: "C.D.",
    readings: readings.map(([at, what, value]) => ({ at, test: what, value, on: "2026-06-02", with: ["M1"] })),
  });

describe("a filled worksheet", () => {
  test("becomes dated blocks, dead before live, in the order of the trade", async () => {
    const { code, out, text } = await enter(
      sheet(
        ["A/1", "live Zs", "0.63"],
        ["A/1", "dead ends r1", "0.29"],
        ["A/1", "dead ends rn", "0.29"],
        ["A/1", "dead ends r2", "0.48"],
        ["A/1", "dead at S1 L-N", "0.15"],
        ["A/1", "dead insulation L-E", "OL"],
        ["A/1", "dead polarity", "ok"],
        ["A/2", "live rcd 30 mA 1x", "24.1 ms"],
        ["A/2", "live test-button", "ok"],
        ["A/3", "dead R1+R2", "410 mΩ"],
        ["A", "live rcd east 30 mA 1x", "22"],
        ["A", "live Zdb", "0.31"],
        ["supply", "live Ze", "0.29"],
      ),
      "shed.json",
    );
    expect(out).toBe(
      "13 readings in 6 new blocks written to shed.ways.\nInsulation was tested at 500 V where no voltage is given.\n",
    );
    expect(code).toBe(0);
    expect(text).toContain(`      dead 2026-06-02 with M1 by "C.D." {
        ends         r1 0.29 Ω  rn 0.29 Ω  r2 0.48 Ω
        at S1        L-N 0.15 Ω
        insulation   500 V  L-E >999 MΩ
        polarity     ok
      }
`);
    expect(text).toContain(`    live 2026-06-02 with M1 by "C.D." {
      Zdb          0.31 Ω
      rcd east     30 mA 1x 22 ms
    }
`);
    expect(text).toContain("        R1+R2        410 mΩ\n");
    // All that was there is still there.
    const after = new Set(entriesOfFile(fileOfText("s", text).model).map(({ at, meaning }) => `${at}|${meaning}`));
    for (const { at, meaning } of entriesOfFile(fileOfText("s", shed).model))
      expect(after).toContain(`${at}|${meaning}`);
    expect([...fileOfText("s", text).model.problems.values()].flat()).toEqual([]);
  });

  test("twice is once", async () => {
    const { folder, text } = await enter(sheet(["A/3", "dead R1+R2", "0.41"]), "shed.json");
    const again = await folder.run("enter", "shed.ways", "shed.json");
    expect(again).toMatchObject({ code: 0, out: "No new reading is entered.\n1 reading is recorded already.\n" });
    expect(readFileSync(folder.at("shed.ways"), "utf8")).toBe(text);
  });

  test.each([
    ["A/9", "dead R1+R2", "0.4", "the schedule has no way A/9"],
    ["B", "live Zdb", "0.4", "the schedule has no board B"],
    ["A/1", "dead R1+R2 } way 7 {", "0.4", "A/1 has no such test"],
    ["A/4", "dead R1+R2", "0.4", "A/4 has no such test"],
    ["A/3", "dead R1+R2", '0.4 Ω } note "x"', "is no figure"],
    ["A/3", "dead R1+R2", "0.4 MΩ more", "is no figure"],
    ["A/3", "dead R1+R2", "0.4 A", "is in A, and the reading is one in Ω"],
    ["A/3", "live Zs", "OL", "the schedule does not state that range"],
    ["A/3", "dead R1+R2", "LIM", "LIM needs its reason"],
    ["A/1", "dead ends r1", "0.3", "r1 and rn are both needed"],
    ["A/3", "dead polarity", "perhaps", "is no result of this test: it is ok or wrong"],
  ])("%s %s %s is listed and not written", async (at, what, value, why) => {
    const { code, out, text } = await enter(sheet([at, what, value]), "shed.json");
    expect(code).toBe(1);
    expect(out).toContain(why);
    expect(text).toBe(shed);
  });

  test("a reading of one day is not overwritten by another of that day", async () => {
    const other = sheet(["A/1", "live Zs", "0.43"]).replace("2026-06-02", "2026-05-01");
    const { out, text } = await enter(other, "shed.json");
    expect(out).toContain("0.61 Ω is recorded for 2026-05-01 already, and is not overwritten");
    expect(text).toBe(shed);
  });

  test.each([
    '{"wayfile": "readings"',
    "{}",
    '{"wayfile":"readings","version":9,"readings":[]}',
    '{"wayfile":"readings","version":1,"readings":[7]}',
  ])("%s is refused in one sentence", async (text) => {
    const ran = await enter(text, "shed.json");
    expect(ran).toMatchObject({ code: 2, out: "", text: shed });
    expect(ran.err).toMatch(/^“shed\.json”: [A-Z].*\.\n$/);
  });

  test("a dry run shows the blocks and writes nothing", async () => {
    const { out, text } = await enter(sheet(["A/3", "dead R1+R2", "0.41"]), "shed.json", "--dry-run");
    expect(out).toContain('A/3:\n  dead 2026-06-02 with M1 by "C.D." {\n    R1+R2 0.41 Ω\n  }\n');
    expect(text).toBe(shed);
  });
});

describe("a table", () => {
  const table = valuesOf(installationsOf([fileOfText("s", shed)])[0] as never, {});

  test("as it was given out holds nothing new", async () => {
    for (const [name, content] of [
      ["s.csv", csvOf(table)],
      ["s.xlsx", await workbookOf(table, { file: "shed.ways" })],
    ] as const) {
      const { code, out, text } = await enter(content, name);
      expect({ code, out, text }).toEqual({
        code: 0,
        out: "No new reading is entered.\n1 reading is recorded already.\n",
        text: shed,
      });
    }
  });

  test("with readings of another day is entered under that day", async () => {
    const keys = table.columns.map(({ key }) => key);
    const rows = table.rows.map((row) => [...row]);
    const row = rows.find(([, way]) => way === "1") as string[];
    row[keys.indexOf("Zs")] = "0.64";
    row[keys.indexOf("live-on")] = "2027-01-09";
    row[keys.indexOf("L-E")] = ">200";
    for (const [name, content] of [
      ["s.csv", csvOf({ ...table, rows })],
      ["s.xlsx", await workbookOf({ ...table, rows }, { file: "s" })],
    ] as const) {
      const { out, text } = await enter(content, name);
      expect(out).toContain("line 4, L-E: the day of the test is not given");
      expect(text).toContain("live 2027-01-09 with M1 {\n        Zs           0.64 Ω\n");
      expect(text).toContain("live 2026-05-01 with M1 {\n        Zs           0.61 Ω\n");
    }
  });

  test("of a meter is read by the names given for its columns, in its own spelling", async () => {
    const meter =
      "Circuit;When;Type;Result\r\n3;02/06/2026;R LOW;0,41 ohm\r\n3;02/06/2026;ISO L-PE;>999 Mohm\r\n2;02/06/2026;LOOP;0,52\r\n2;02/06/2026;VOLTS;231\r\n";
    const named = ["Circuit=way", "When=on", "Type=test", "Result=result", "R LOW=R1+R2", "ISO L-PE=L-E", "LOOP=Zs"];
    const options = [...named.flatMap((one) => ["--column", one]), "--dates", "dd/mm/yyyy", "--with", "M1"];
    const { code, out, text } = await enter(meter, "m.csv", ...options, "--decimal", "comma");
    expect(text).toContain(
      "dead 2026-06-02 with M1 {\n        R1+R2        0.41 Ω\n        insulation   500 V  L-E >999 MΩ\n",
    );
    expect(text).toContain("Zs           0.52 Ω");
    expect(out).toContain("line 5, VOLTS: A/2 has no such test");
    expect(code).toBe(1);
    const doubtful = await enter(meter, "m.csv", ...options);
    expect(doubtful.out).toContain("“0,52” has a comma: say that it is the decimal sign");
    expect(doubtful.text).not.toContain("0.52");
  });

  test.each([
    ["way;Zs, Ω\n3;0,4\n", "does not show what separates its columns"],
    ["Circuit,Zs\n3,0.4\n", "No column is headed “way”"],
    ["way,Zs,Zs (Ω)\n3,0.4,0.5\n", "Two columns are headed Zs"],
    ["", "Its first line does not show what separates its columns"],
    ['way,Zs\n3,"0.4\n', "cannot be read as CSV"],
  ])("%j is refused", async (text, why) => {
    const ran = await enter(text, "m.csv");
    expect(ran.err).toContain(why);
    expect(ran).toMatchObject({ code: 2, text: shed });
  });

  test("a file that only calls itself a workbook is refused", async () => {
    const ran = await enter("PK\u0003\u0004", "m.xlsx");
    expect(ran).toMatchObject({ code: 2, text: shed, err: "“m.xlsx”: It cannot be read as a workbook (.xlsx).\n" });
  });
});

test.each([
  ["> 999", "Ω", ">999 Ω"],
  ["+999 MΩ", "MΩ", ">999 MΩ"],
  ["1.2 G", "MΩ", "1.2 GΩ"],
  ["0.410", "Ω", "0.410 Ω"],
  ["0.62 calculated", "Ω", "0.62 Ω calculated"],
  ["LIM no access", "Ω", 'LIM "no access"'],
  ["N/A", "Ω", "N/A"],
] as const)("%s in %s is %s", (text, unit, expected) => {
  expect(readValue(text, { unit, words: [] })).toEqual({ text: expected });
});

test("headings in capitals are ours, others are offered, and a row that has no way is one line", async () => {
  const house = readFileSync(`${import.meta.dirname}/../../examples/larkfield/cottage.ways`, "utf8")
    .replace(/^use .*\n/m, "")
    .replace(/^ {6}(?:dead|live) \d.*\{\n(?: {8}.*\n)*? {6}\}\n/gm, "");
  const meter = "Way,ZS (ohm),POLARITY,R2,IR L-N\n4,0.26,ok,,\n99,0.3,ok,0.2,200\n";
  const folder = new Folder({ "house.ways": house, "meter.csv": meter });
  const { out } = await folder.run(
    "enter",
    "house.ways",
    "meter.csv",
    "--board",
    "A",
    "--on",
    "2026-04-15",
    "--dry-run",
  );
  expect(out).toContain("Zs 0.26 Ω");
  expect(out).toContain("polarity ok");
  expect(out).toContain("  line 3, Zs, polarity, R2: the schedule has no way A/99.\n");
  expect(out).toContain("Columns that no reading was taken from: IR L-N.");
  expect(out).toContain('If these columns hold readings, add --column "IR L-N=L-N"\n');
});

/** What went out and came back into a schedule without its tests is the same schedule of results. */
test.each(["larkfield/cottage", "tanner-row/shop"])("there and back: %s", async (name) => {
  const examples = `${import.meta.dirname}/../../examples`;
  const text = readFileSync(`${examples}/${name}.ways`, "utf8");
  const instruments = readFileSync(`${examples}/shared/instruments.ways`, "utf8");
  const bare = text.replace(/^ {6}(?:dead|live) \d.*\{\n(?: {8}.*\n)*? {6}\}\n/gm, "");
  expect(bare.length).toBeLessThan(text.length * 0.8);
  const folder = new Folder({ "a/full.ways": text, "a/bare.ways": bare, "shared/instruments.ways": instruments });
  await folder.run("schedule", "a/full.ways", "-o", "full.csv");
  const { out } = await folder.run("enter", "a/bare.ways", "full.csv");
  expect(out).not.toContain("Not entered");
  await folder.run("schedule", "a/bare.ways", "-o", "back.csv");
  expect(readFileSync(folder.at("back.csv"), "utf8")).toBe(readFileSync(folder.at("full.csv"), "utf8"));
});

test("a blank workbook that another library filled in comes back as new tests", async () => {
  const [installation] = installationsOf([fileOfText("shed.ways", shed)]);
  if (!installation) throw new Error("The sample has no installation.");
  const blank = await workbookOf(valuesOf(installation, { fill: "blank" }), { file: "shed.ways" });
  const book = read(blank, { type: "array" });
  const sheet = book.Sheets[book.SheetNames[0] ?? ""];
  if (!sheet) throw new Error("The workbook has no sheet.");
  const rows = utils.sheet_to_json<(string | number)[]>(sheet, { header: 1, defval: "" });
  const head = rows.findIndex((row) => row.includes("way"));
  const column = (name: string): number => (rows[head] ?? []).findIndex((title) => String(title).startsWith(name));
  const at = rows.findIndex((row, index) => index > head && String(row[column("way")]) === "2");
  const entered = { "R1+R2": 0.38, Zs: 0.7, "dead-on": "2026-05-09", "live-on": "2026-05-09", "live-with": "M1" };
  for (const [name, value] of Object.entries(entered))
    utils.sheet_add_aoa(sheet, [[value]], { origin: { r: at, c: column(name) } });
  const filled = new Uint8Array(write(book, { type: "array", bookType: "xlsx" }));
  const incoming = await incomingOf({ workbook: filled }, installation, { board: "A" });
  if ("failure" in incoming) throw new Error(incoming.failure);
  const { blocks, misfits, fresh } = enterInto(installation, incoming.incoming);
  expect(misfits).toEqual([]);
  expect(fresh).toBe(2);
  expect(blocks.map(({ lines }) => lines.join(" ").replace(/ +/g, " ").trim())).toEqual([
    "dead 2026-05-09 { R1+R2 0.38 Ω }",
    "live 2026-05-09 with M1 { Zs 0.7 Ω }",
  ]);
});
