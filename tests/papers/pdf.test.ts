/** Papers as PDF, read back by another library than the one that wrote them. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { extractText, getDocumentProxy } from "unpdf";
import { describe, expect, test } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { pdfOf } from "../../server/papers/pdf.ts";
import { scheduleOf } from "../../server/reports/schedule/schedule.ts";
import type { Report } from "../../server/reports/setting/document.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import { worksheet } from "../../server/reports/worksheet/worksheet.ts";
import { gather } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const examples = resolve(import.meta.dirname, "../../examples");
const disk = {
  file: (path: string) => fileOfText(path, readFileSync(path, "utf8")),
  resolve: (from: string, use: string) => resolve(from, "..", use),
};
const installationIn = (name: string) => {
  const { files } = gather(disk.file(`${examples}/${name}.ways`), disk);
  const [installation] = installationsOf(files);
  if (!installation) throw new Error("There is no installation.");
  return installation;
};
const imprint = { file: "a.ways", revision: "1234abcd", printed: "2026-05-04" };

const squeezed = (text: string): string => text.replace(/\s+/g, "");
async function pagesOf(report: Report): Promise<string[]> {
  const { text } = await extractText(await getDocumentProxy(new Uint8Array(await pdfOf(report))));
  return text;
}

describe.each(["heron-wharf/boatyard", "tanner-row/shop"])("%s", (name) => {
  const report: Report = { ...scheduleOf(installationIn(name)), imprint };
  const set = pagesOf(report);

  test("every cell, note and name of the schedule is in the text of the page", async () => {
    const pages = await set;
    const text = squeezed(pages.join(""));
    for (const { title, blocks } of report.sections) {
      expect(text).toContain(squeezed(title));
      for (const block of blocks) {
        if (block.kind !== "grid") continue;
        for (const row of block.rows)
          expect(text).toContain(
            squeezed(
              row
                .map((one) => one.text)
                .slice(0, 1)
                .join(""),
            ),
          );
        const figures = block.rows
          .flat()
          .map((one) => one.text)
          .filter((one) => /\d/.test(one));
        for (const figure of figures) expect(text).toContain(squeezed(figure));
        for (const note of block.notes) expect(text).toContain(squeezed(note));
      }
    }
    expect(text).toContain("MΩ");
    expect(text).toContain("✓");
  });

  test("each page has its number, the file, the revision and the day", async () => {
    const pages = await set;
    pages.forEach((page, at) => {
      expect(squeezed(page)).toContain(squeezed(`page ${at + 1} of ${pages.length}`));
      expect(squeezed(page)).toContain(squeezed("a.ways, revision 1234abcd, printed 2026-05-04"));
    });
  });

  test("a board of up to eighteen circuits takes one page", async () => {
    const { boards } = installationIn(name);
    expect(boards.every(({ board }) => board.ways.length <= 18)).toBe(true);
    expect(await set).toHaveLength(boards.length);
  });
});

test("the same schedule gives the same bytes", async () => {
  const report: Report = { ...scheduleOf(installationIn("larkfield/cottage")), imprint };
  expect(Buffer.compare(Buffer.from(await pdfOf(report)), Buffer.from(await pdfOf(report)))).toBe(0);
});

test("a working of many pages loses no calculation", async () => {
  const installation = installationIn("larkfield/cottage");
  const [place] = installation.boards;
  const way = place?.board.ways[0];
  const report: Report = {
    ...workingOf(installation, { ...(place ? { place } : {}), ...(way ? { way } : {}) }),
    imprint,
  };
  const pages = await pagesOf(report);
  expect(pages.length).toBeGreaterThan(2);
  const text = squeezed(pages.join(""));
  const names = report.sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === "calculation" ? [block.name, block.result] : [])),
  );
  expect(names.length).toBeGreaterThan(20);
  for (const name of names) expect(text).toContain(squeezed(name));
});

test("a board of hundreds of ways, with names that are hostile or endless, goes on overleaf with its headings", async () => {
  const names = ["\u202egnihtemos", "x".repeat(400), "Ω ≤ ≥ √ → ✓", "a\tb\\n", "日本語", "<b>&amp;"];
  const ways = Array.from(
    { length: 90 },
    (_, at) => `    way ${at + 1} radial "${names[at % names.length]}" { device BS EN 60898 B16 6 kA }\n`,
  );
  const text = `wayfile 1\ninstallation "Big" {\n  standard BS 7671:2018+A2:2022\n  board A "Long" {\n${ways.join("")}  }\n}\n`;
  const [installation] = installationsOf([fileOfText("big.ways", text)]);
  if (!installation) throw new Error("There is no installation.");
  const pages = await pagesOf(scheduleOf(installation));
  expect(pages.length).toBeGreaterThan(2);
  for (const page of pages.slice(1, -1)) expect(squeezed(page)).toMatch(/continued.*serves/);
});

test("the last row of a table goes overleaf with the one before it, and with it whatever is signed", async () => {
  const alone: string[] = [];
  for (let count = 18; count <= 23; count++) {
    const ways = Array.from(
      { length: count },
      (_, at) => `    way ${at + 1} radial "Title${at + 1}." { device BS EN 60898 B16 6 kA }\n`,
    );
    const text = `wayfile 1\ninstallation "Big" {\n  standard BS 7671:2018+A2:2022\n  tested by "J.M." 2026-03-05\n  board A "Long" {\n${ways.join("")}  }\n}\n`;
    const [installation] = installationsOf([fileOfText("big.ways", text)]);
    if (!installation) throw new Error("There is no installation.");
    const rows = (await pagesOf(scheduleOf(installation))).map((page) => page.match(/Title\d+\./g)?.length ?? 0);
    if (rows.includes(1) || rows.includes(0)) alone.push(`${count}: ${rows.join(" + ")}`);
    expect(rows.reduce((sum, one) => sum + one, 0)).toBe(count);
  }
  expect(alone).toEqual([]);
});

test("no board begins at the foot of a page with fewer than three rows", async () => {
  const cut: string[] = [];
  for (let first = 1; first <= 14; first++) {
    const boards = [first, 3, 5, 9].map((count, at) => {
      const name = "ABCD"[at];
      const ways = Array.from(
        { length: count },
        (_, way) => `    way ${way + 1} radial "${name}${way + 1}." { device BS EN 60898 B16 6 kA }\n`,
      );
      return `  board ${name} "Board" {\n${ways.join("")}  }\n`;
    });
    const text = `wayfile 1\ninstallation "Row" {\n  standard BS 7671:2018+A2:2022\n  tested by "J.M." 2026-03-05\n${boards.join("")}}\n`;
    const [installation] = installationsOf([fileOfText("row.ways", text)]);
    if (!installation) throw new Error("There is no installation.");
    const pages = await pagesOf({ ...scheduleOf(installation), close: true });
    for (const [at, count] of [3, 5, 9].entries()) {
      const rows = pages.map((page) => page.match(new RegExp(`${"BCD"[at]}\\d+\\.`, "g"))?.length ?? 0);
      const begun = rows.find((one) => one > 0) ?? 0;
      if (begun < Math.min(3, count)) cut.push(`${first}, ${count}: ${rows.join(" + ")}`);
    }
  }
  expect(cut).toEqual([]);
});

test.each(["larkfield/cottage", "heron-wharf/boatyard"])(
  "%s: what a test is stands on the page its table begins on",
  async (name) => {
    const report = worksheet(installationIn(name), {});
    const pages = (await pagesOf(report)).map(squeezed);
    const apart = report.sections.flatMap(({ title, blocks }) => {
      const table = blocks.find((block) => block.kind === "table");
      const first = squeezed(table?.rows[0]?.[0] ?? "");
      const page = pages.find((one) => one.includes(squeezed(title))) ?? "";
      return table && !page.slice(page.indexOf(squeezed(title))).includes(first) ? [title] : [];
    });
    expect(apart).toEqual([]);
  },
);
