/** Circuits of three lines on paper: what was read on each, line to line, and the poles of the device. */
import { extractText, getDocumentProxy } from "unpdf";
import { describe, expect, test } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { pdfOf } from "../../server/papers/pdf.ts";
import type { Fill } from "../../server/reports/common/paper-kinds.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import type { Grid } from "../../server/reports/setting/document.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { find } from "../helpers/find.ts";

const saw = (dead: string, live: string, device = "C16 three-pole"): string => `wayfile 1
installation "Reed shed" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      existing
  supply {
    earthing  TN-S
    phases    three
    Ze        0.30 Ω
  }
  board A "Shed board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A four-pole
    Zdb          0.31 Ω
    way 1 radial "Light" { device BS EN 60898 B6 6 kA }
    way 2 radial "Saw" {
      device  BS EN 60898 ${device} 10 kA
      phase   three
      cable   multicore 70 °C line 2.5 mm² cpc 2.5 mm² cores 5
      route   tray method E
      length  18 m
      dead 2026-05-01 {
        ${dead}
      }
      live 2026-05-01 {
        ${live}
      }
    }
  }
}
`;
const read = saw(
  "R1+R2 0.28 Ω L1 0.27 Ω L2 0.28 Ω L3 0.26 Ω\n        insulation 500 V L1-L2 410 MΩ L2-L3 >999 MΩ L1-L3 520 MΩ L1-N 630 MΩ L2-N 640 MΩ L3-N 450 MΩ L1-E 210 MΩ L2-E 320 MΩ L3-E >999 MΩ N-E 830 MΩ",
  "Zs 0.53 Ω L1 0.51 Ω L2 0.53 Ω L3 0.52 Ω",
);

const reportOf = (text: string, fill: Fill = "filled") => {
  const [installation] = installationsOf([fileOfText("shed.ways", text)]);
  if (!installation) throw new Error("no installation");
  return scheduleOf(installation, { fill });
};

const rowsOf = (text: string, fill?: Fill): Readonly<Record<string, string>>[] => {
  const grid = reportOf(text, fill).sections[0]?.blocks.find((block): block is Grid => block.kind === "grid");
  const keys = grid?.bands.flatMap(({ columns }) => columns.map(({ key }) => key)) ?? [];
  return (grid?.rows ?? []).map((row) =>
    Object.fromEntries(
      row.map((cell, at) => [keys[at] ?? "", cell.kind === "blank" ? `_ ${cell.last ?? ""}` : cell.text]),
    ),
  );
};

describe("a circuit of three lines", () => {
  test("has its worst readings in its row, and under it what was read on each line", () => {
    const shown = rowsOf(read).map((row) => ["way", "R1+R2", "live-live", "live-earth", "Zs"].map((key) => row[key]));
    expect(shown.slice(1)).toEqual([
      ["2", "0.28", "410", "210", "0.53"],
      ["2 L1", "0.27", "410", "210", "0.51"],
      ["2 L2", "0.28", "640", "320", "0.53"],
      ["2 L3", "0.26", "450", ">999", "0.52"],
    ]);
  });

  test("has the poles of its device beside its rating", () => {
    expect(rowsOf(read)[1]?.device).toBe("C16 3P");
    expect(rowsOf(saw("R2 0.1 Ω", "Zs 0.5 Ω", "C16"))[1]?.device).toBe("C16");
  });

  test("has blanks for each line on a sheet to be filled in, with last time's beside them", () => {
    expect(
      rowsOf(read, "blank")
        .slice(2)
        .map(({ Zs }) => Zs),
    ).toEqual(["_ ", "_ ", "_ "]);
    expect(
      rowsOf(read, "last")
        .slice(2)
        .map(({ Zs }) => Zs),
    ).toEqual(["_ 0.51", "_ 0.53", "_ 0.52"]);
  });

  test("has no rows of lines where nothing was read by line, and neither has a circuit of one", () => {
    expect(rowsOf(saw("R1+R2 0.28 Ω", "Zs 0.53 Ω")).map(({ way }) => way)).toEqual(["1", "2"]);
  });

  test("is whole on one turned page, with every figure", async () => {
    const pdf = await getDocumentProxy(new Uint8Array(await pdfOf(reportOf(read))));
    const { totalPages, text } = await extractText(pdf, { mergePages: true });
    expect(totalPages).toBe(1);
    for (const figure of ["2 L1", "2 L2", "2 L3", "C16 3P", "0.26", "640", "450", "0.52"])
      expect(text).toContain(figure);
  });

  test.each([
    ["loop/highest-not-recorded", saw("R1+R2 0.28 Ω", "Zs 0.50 Ω L1 0.51 Ω L2 0.73 Ω L3 0.52 Ω"), 1],
    ["loop/highest-not-recorded", read, 0],
    ["continuity/highest-not-recorded", saw("R1+R2 0.28 Ω L1 0.27 Ω L2 0.48 Ω L3 0.26 Ω", "Zs 0.53 Ω"), 1],
    ["continuity/highest-not-recorded", read, 0],
    ["coordination/device-poles", saw("R2 0.1 Ω", "Zs 0.5 Ω", "C16 single-pole"), 1],
    ["coordination/device-poles", saw("R2 0.1 Ω", "Zs 0.5 Ω", "C16 four-pole"), 0],
  ])("%s: the highest line counts, and each is opened", (id, text, count) => {
    expect(find(id, text)).toHaveLength(count);
  });
});
