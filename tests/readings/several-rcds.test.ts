/** Several RCDs of one circuit: each with its own rating, tests and place on paper, and each asked for by itself. */
import { describe, expect, test } from "vitest";
import { enter } from "../../server/entry/enter.ts";
import { slotsOf } from "../../server/entry/slots.ts";
import { hover } from "../../server/features/hover.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { csvOf } from "../../server/papers/csv.ts";
import { incomingOf } from "../../server/papers/incoming.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import { valuesOf } from "../../server/reports/schedule/values.ts";
import { reportMarkdown } from "../../server/reports/setting/markdown.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { worksheet } from "../../server/reports/worksheet/worksheet.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { atCursor } from "../helpers/cursor.ts";
import { find } from "../helpers/find.ts";

const shed = (live: string, board = ""): string => `wayfile 1
instrument M1 "Tester"
installation "Reed shed" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      existing
  supply {
    earthing  TN-S
    Ze        0.30 Ω
  }
  board A "Shed board" {
    fed-from     supply
    main-switch  BS EN 61008 100 A 100 mA type A delayed
    live 2026-05-01 with M1 {
      Zdb          0.31 Ω
${board}
    }
    way 1 radial "Sockets" {
      device      BS EN 61009 B16 6 kA 30 mA type A
      cable       flat-twin line 2.5 mm² cpc 1.5 mm²
      route       clipped method C
      run         A 9 m S1 8 m S2
      outlet-rcd  S2 BS 7288 13 A 10 mA type A
      serves      sockets
      live 2026-05-01 with M1 {
        Zs  0.61 Ω
${live}
      }
    }
  }
}
`;
const of = (text: string) => {
  const [installation] = installationsOf([fileOfText("shed.ways", text)]);
  if (!installation) throw new Error("no installation");
  return installation;
};
const own = "rcd 30 mA 1x 24 ms test-button ok";
const outlet = "rcd at S2 10 mA 1x 31 ms test-button ok";
const shared = "rcd 100 mA 1x 210 ms\n test-button ok";

describe("an RCBO behind an RCD, with another in an outlet", () => {
  test.each([
    ["all three", own, outlet, shared, []],
    ["not the one in the outlet", own, "", shared, ["the RCD at S2"]],
    ["not the RCBO", "", outlet, shared, ["the RCBO"]],
    ["not the one upfront", own, outlet, "", ["the main switch"]],
  ])("tested: %s", (_, first, second, board, missing) => {
    const found = (id: string) => find(id, shed(`${first}\n${second}`, board)).map(({ message }) => message);
    for (const id of ["rcd/test-missing", "rcd/test-button-missing"]) {
      const messages = found(id);
      expect(messages).toHaveLength(missing.length);
      for (const [at, name] of missing.entries()) expect(messages[at]?.toLowerCase()).toContain(name.toLowerCase());
    }
  });

  test.each([
    ["rcd at S2 10 mA 1x 210 ms", "rcd/time-over-limit", 1],
    ["rcd at S2 10 mA 1x 190 ms", "rcd/time-over-limit", 0],
    // What an RCBO may take is too long for the outlet.
    ["rcd 30 mA 1x 210 ms", "rcd/time-over-limit", 0],
    ["rcd at S2 30 mA 1x 31 ms", "rcd/test-sensitivity", 1],
    ["trip-current at S2 7 mA", "rcd/test-trip-current", 0],
    ["trip-current 7 mA", "rcd/test-trip-current", 1],
    ["trip-current at S2 22 mA", "rcd/test-trip-current", 1],
    ["test-button at S2 failed\n test-button ok", "rcd/test-button-failed", 1],
    ["rcd at S1 10 mA 1x 31 ms", "rcd/test-no-device", 1],
  ])("%s: %s %i", (line, id, count) => {
    expect(find(id, shed(line))).toHaveLength(count);
  });

  test("an outlet does not stand for the RCD of a circuit", () => {
    const without = shed(own)
      .replace(" 30 mA type A\n      cable", "\n      cable")
      .replace("100 mA type A delayed", "");
    const bare = without
      .replace(/BS EN 61009 B16 6 kA/, "BS EN 60898 B16 6 kA")
      .replace("BS EN 61008 100 A", "BS EN 60947-3 100 A");
    expect(find("rcd/missing-for-sockets", bare)).toHaveLength(1);
  });

  test("each has its lines on the worksheet and its row in the schedule", () => {
    const installation = of(shed(`${own}\n${outlet}`, shared));
    // Set so that no name is broken between two lines of a column.
    const sheet = reportMarkdown(worksheet(installation, { again: true }));
    for (const name of [
      "30 mA type A BS EN 61009 at 1 × IΔn",
      "RCD at S2, 10 mA type A BS 7288 at 1 × IΔn",
      "100 mA type A delayed BS EN 61008",
    ])
      expect(sheet.replace(/\s+/g, " ")).toContain(name);
    const paper = reportText(scheduleOf(installation)).replace(/[ \u00a0]+/g, " ");
    expect(paper).toContain("way 1, the RCD at S2 10 mA type A BS 7288 13 A 31 ms ✓");
    expect(paper).toContain("the main switch 100 mA type A delayed BS EN 61008 100 A 210 ms ✓");
    expect(paper).toContain("also behind the main switch; also the RCD at S2");
  });

  test("what is written in a table comes back to the RCD it is of", async () => {
    const installation = of(shed(""));
    const csv = csvOf(valuesOf(installation, { fill: "blank" }));
    const [head = "", ...rows] = csv.trim().split(/\r?\n/);
    const columns = head.replace("\ufeff", "").split(",");
    const fill = (way: string, values: Readonly<Record<string, string>>): void => {
      const at = rows.findIndex((row) => row.split(",")[1] === way);
      const cells = (rows[at] ?? "").split(",");
      for (const [heading, value] of Object.entries(values)) cells[columns.indexOf(heading)] = value;
      rows[at] = cells.join(",");
    };
    fill("1", { "rcd-time (ms)": "24", "rcd-button": "ok" });
    fill("1 at S2", { "rcd-time (ms)": "31", "rcd-button": "ok" });
    fill("main-switch", { "rcd-time (ms)": "210", "rcd-button": "ok" });
    const read = await incomingOf({ text: [head, ...rows].join("\n") }, installation, { on: "2026-05-02" });
    if ("failure" in read) throw new Error(read.failure);
    const { blocks, misfits } = enter(installation, read.incoming);
    expect(misfits).toEqual([]);
    expect(blocks.flatMap(({ lines }) => lines.map((line) => line.trim()))).toEqual(
      expect.arrayContaining([
        "rcd 30 mA 1x 24 ms",
        "test-button ok",
        "rcd at S2 10 mA 1x 31 ms",
        "test-button at S2 ok",
        "rcd 100 mA 1x 210 ms",
      ]),
    );
  });

  test("every slot of a place is another", () => {
    const names = slotsOf(of(shed(""))).map(({ place, block, line, label }) =>
      [place.board, place.way, block, line, label].join(" "),
    );
    expect(new Set(names).size).toBe(names.length);
  });
});

test("a hover shows the tests of an RCD by the waveform of the test current", async () => {
  const { snapshot, cursor } = await atCursor(shed("").replace("10 mA type A", "10 mA ┆type A"));
  const { markdown = "" } = hover(snapshot, cursor) ?? {};
  expect(markdown).toContain("with a.c. at 1 × IΔn: at most 200 ms");
  expect(markdown).toContain("rising, with a.c.: trips between 5 mA and 10 mA");
  expect(markdown).toContain("rising, with pulsating d.c.");
  expect(markdown).not.toContain("smooth");
});
