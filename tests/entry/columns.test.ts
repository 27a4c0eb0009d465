/** Tables with headings that are none of ours: what is asked, what is guessed and only offered, and what is kept. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { foreignColumns, guessOf } from "../../server/entry/columns.ts";
import { officeWith } from "../../server/office.node.ts";
import { readSettings } from "../../server/settings/read.ts";
import { withColumns } from "../../server/settings/remember.ts";
import { Folder } from "../cli/run.ts";
import { openSample } from "../helpers/cursor.ts";

const hut = `wayfile 1
installation "Peat hut" {
  standard  BS 7671:2018+A2:2022
  supply {
    earthing  TN-S
  }
  board A "Hut board" {
    fed-from  supply
    way 1 radial "Heater" {
      device  BS EN 61009 B16 6 kA 30 mA type A
    }
  }
}
`;
const meter = "Circuit No.,Loop L-E (ohm),Trip time,Remarks\n1,0.51,24,dusty\n";

describe("a heading", () => {
  test.each([
    ["Circuit No.", "way"],
    ["Loop L-E", "Zs"],
    ["Zs [ohm]", "Zs"],
    ["R1+R2 / ohm", "R1+R2"],
    ["IR L-N MOhm", "L-N"],
    ["IR L/PE", "L-E"],
    ["Insulation N-PE", "N-E"],
    ["RCD trip time ms", "rcd-time"],
    ["RCD x1", "rcd-time"],
    ["RCD 1 x IΔn", "rcd-time"],
    ["Ramp current", "trip-current"],
    ["PSC kA", "PSCC"],
    ["Polarity", "polarity"],
    ["Date", "on"],
    ["Board", "board"],
    ["Tested by", "by"],
    ["Colour of the wall", undefined],
  ])("%s points to %s", (heading, guess) => {
    expect(guessOf(heading)).toBe(guess);
  });
});

test("one of ours is offered for one column only, and what is empty or known is not asked about", () => {
  const row = (line: number, ...cells: string[]) => ({ line, cells });
  const table = {
    head: row(1, "way", "Loop A", "Loop B", "Empty", "Told"),
    rows: [row(2, "1", "0.4", "0.5", "", "x")],
  };
  const columns = foreignColumns(table, new Map([["Told", "-"]]), (key) => key === "way");
  expect(columns).toEqual([
    { heading: "Loop A", samples: ["0.4"], guess: "Zs" },
    { heading: "Loop B", samples: ["0.5"] },
  ]);
});

test("the editor is asked before anything is written, and then only by what was said", async () => {
  const office = officeWith(() => undefined);
  const { snapshot } = await openSample(hut);
  const question = { uri: "file:///schedules/sample.ways", name: "meter.csv", base64: btoa(meter) };
  const first = await office.entered(question, snapshot);
  if ("failure" in first) throw new Error(first.failure);
  expect(first.files).toEqual([]);
  expect(first.asks?.day).toBe(true);
  expect(first.asks?.columns.map(({ heading, guess }) => [heading, guess])).toEqual([
    ["Circuit No.", "way"],
    ["Loop L-E (ohm)", "Zs"],
    ["Trip time", "rcd-time"],
    ["Remarks", undefined],
  ]);
  const column = ["Circuit No.=way", "Loop L-E (ohm)=Zs", "Trip time=-", "Remarks=-"];
  const second = await office.entered({ ...question, column, on: "2026-05-01" }, snapshot);
  if ("failure" in second) throw new Error(second.failure);
  expect(second.asks).toBeUndefined();
  const text = [...(second.files[0]?.segments.values() ?? [])].join("");
  expect(text).toMatch(/live 2026-05-01 \{\s+Zs\s+0\.51 Ω\s+\}/);
  expect(text).not.toContain("rcd ");
});

describe("what was said of headings", () => {
  test("is written beside the other settings, the newer word for the older", () => {
    const text = withColumns('{"failLevel": "warning", "columns": ["Loop=R1+R2", "Nr=way"]}', ["Loop=Zs"]);
    expect(JSON.parse(text ?? "")).toEqual({ failLevel: "warning", columns: ["Nr=way", "Loop=Zs"] });
    expect(readSettings(text ?? "").problems).toEqual([]);
    expect(JSON.parse(withColumns(undefined, ["Nr=way"]) ?? "")).toEqual({ columns: ["Nr=way"] });
  });

  test.each(["{ not JSON", '{"colums": []}', '{ // a remark\n"columns": [] }'])("leaves %s alone", (text) => {
    expect(withColumns(text, ["Nr=way"])).toBeUndefined();
  });

  test("holds for the command line, which may say otherwise", async () => {
    const columns = ["Circuit No.=way", "Loop L-E (ohm)=Zs", "Trip time=rcd-time", "Remarks=-"];
    const folder = new Folder({ "hut.ways": hut, "meter.csv": meter, ".wayfile.json": JSON.stringify({ columns }) });
    const ran = await folder.run("enter", "hut.ways", "meter.csv", "--on", "2026-05-01", "--column", "Trip time=-");
    expect(ran.code).toBe(0);
    const text = readFileSync(folder.at("hut.ways"), "utf8");
    expect(text).toMatch(/Zs\s+0\.51 Ω/);
    expect(text).not.toMatch(/1x/);
  });
});
