/** The register: the most urgent comes first, and nothing that a schedule says leaves its cell. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import readWorkbook from "read-excel-file/node";
import { describe, expect, test } from "vitest";
import { faultsAgainst, type Schema } from "../helpers/schema.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const M1 = 'instrument M1 "Tester" {\n  due  2026-11-03\n}\n';
const tested = (title: string, due = "2031-03-05"): string =>
  schedule(`${faultyWay.replace("1.52", "0.52").replace("2026-03-05", "2026-03-05 with M1")}\n`, {
    before: M1,
    stage: "tested",
  })
    .replace('"Heron Wharf"', `"${title}"`)
    .replace(
      "  supply {",
      `  inspection periodic 2026-03-05 {\n    outcome          satisfactory\n    next-inspection  ${due} "Five years"\n  }\n\n  supply {`,
    );

const files = {
  "sound.ways": schedule("").replace('"Heron Wharf"', '"Quiet"'),
  "late.ways": tested("Late", "2026-09-01"),
  "later.ways": tested("In time"),
  "faulty.ways": schedule(faultyWay).replace('"Heron Wharf"', '"=HYPERLINK(1) <b>&"'),
  "asked.ways": schedule("")
    .replace("  stage ", '  query "Which board?"\n  stage ')
    .replace('"Heron Wharf"', '"Asked"'),
};

interface Row {
  readonly title: string;
  readonly file: string;
  readonly attention: readonly string[];
  readonly margin?: { share: number };
}

async function rows(...args: string[]): Promise<readonly Row[]> {
  const { out, err, code } = await new Folder(files).run("register", "--format", "json", ...args);
  expect({ err, code }).toEqual({ err: "", code: 0 });
  return JSON.parse(out).installations;
}
const of = (list: readonly Row[], file: string): Row => list.find((row) => row.file === file) as Row;

test("the most urgent comes first, and says why", async () => {
  const list = await rows("--on", "2026-10-20");
  expect(list).toHaveLength(5);
  // Errors are more urgent than an overdue inspection with all that is missing, and this more than a question.
  expect(list[0]?.file).toBe("faulty.ways");
  expect(list[0]?.attention[0]).toMatch(/^\d+ errors?$/);
  expect(of(list, "late.ways").attention).toContain("inspection due since 2026-09-01");
  expect(of(list, "late.ways").attention).toContain("calibration of M1 lapses 2026-11-03");
  expect(of(list, "asked.ways").attention).toContain("1 open query");
  const place = (file: string): number => list.findIndex((row) => row.file === file);
  expect(place("late.ways")).toBeLessThan(place("later.ways"));
  expect(place("faulty.ways")).toBeLessThan(place("asked.ways"));
  expect(place("asked.ways")).toBeLessThan(place("sound.ways"));
});

test("as Markdown each row leads to its schedule, and nothing of a schedule is a mark of ours", async () => {
  const { out, code } = await new Folder(files).run("register", "--format", "markdown", "--on", "2026-10-20");
  expect(code).toBe(0);
  const table = out.split("\n").filter((line) => line.startsWith("| "));
  expect(table).toHaveLength(7);
  expect(table[1]).toBe("| --- | --- | --- | --- | --- | --- | --- |");
  expect(table[2]).toContain("| [=HYPERLINK(1) &lt;b&gt;&amp;](<faulty.ways>)<br>faulty.ways | ");
});

test("the register for programs is as its schema says, and every key is there", async () => {
  const folder = new Folder(files);
  const schema = JSON.parse((await folder.run("schema", "register")).out) as Schema;
  const report = JSON.parse((await folder.run("register", "--format", "json", "--on", "2026-10-20")).out);
  expect(await faultsAgainst(schema, report)).toEqual([]);
  expect(of(report.installations, "sound.ways")).toMatchObject({ title: "Quiet", tested: null, margin: null });
  expect(report.day).toBe("2026-10-20");
});

test("a register that is interrupted is not written into a file", async () => {
  const folder = new Folder({ ...files, "register.json": "the last one" });
  let now = 0;
  let asked = 0;
  const stopping = { clock: () => (now += 1000), interrupted: () => ++asked > 7 };
  const { code, err } = await folder.runWith(stopping, "register", "-o", "register.json");
  expect(code).toBe(130);
  expect(err).toMatch(/“register\.json” was not written\.\nInterrupted: this register is not whole\.\n$/);
  expect(readFileSync(folder.at("register.json"), "utf8")).toBe("the last one");
});

test("days are compared with the one that is given", async () => {
  const before = of(await rows("--on", "2026-06-01"), "late.ways").attention;
  expect(before.filter((words) => /inspection|calibration/.test(words))).toEqual([]);
  const after = of(await rows("--on", "2026-11-04"), "later.ways").attention;
  expect(after).toContain("calibration of M1 lapsed 2026-11-03");
});

test("an instrument that lapsed since is no fault of what was tested with it, and is named once", async () => {
  const sound = readFileSync(resolve(import.meta.dirname, "../../examples/larkfield/cottage.ways"), "utf8");
  const instruments = readFileSync(resolve(import.meta.dirname, "../../examples/shared/instruments.ways"), "utf8");
  const folder = new Folder({
    "a/one.ways": sound,
    "a/two.ways": sound.replace('"Larkfield Cottage"', '"Larkfield Barn"'),
    "shared/instruments.ways": instruments,
  });
  const { out } = await folder.run("register", "a", "--on", "2026-12-01");
  expect(out.match(/calibration/g)).toEqual(["calibration"]);
  expect(out).toContain("calibration of M1 lapsed 2026-11-03 (last used at 2 installations)\n");
  expect(out).toContain("2 installations, 0 need attention");
});

test("the least margin is that of the tightest limit: cold, 0.8 × 1.37 Ω for a B32", async () => {
  // BS 7671:2018+A2:2022, Table 41.3: 1.37 Ω; Appendix 3: Zs measured cold is compared with 0.8 of it, 1.09 Ω.
  expect(of(await rows(), "later.ways").margin?.share).toBeCloseTo(1 - 0.52 / 1.09, 2);
  expect(of(await rows(), "faulty.ways").margin?.share).toBeCloseTo(1 - 1.52 / 1.09, 2);
});

describe("in other settings", () => {
  test("as a page that runs its own script alone and shows what a schedule says as text", async () => {
    const folder = new Folder(files);
    expect((await folder.run("register", "-o", "r.html")).code).toBe(0);
    const page = readFileSync(folder.at("r.html"), "utf8");
    const [, script = ""] = /<script>(.*?)<\/script>/s.exec(page) ?? [];
    const digest = createHash("sha256").update(script).digest("base64");
    expect(page).toContain(`default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${digest}'`);
    expect(page).toContain("=HYPERLINK(1) &lt;b&gt;&amp;");
    expect(page).not.toMatch(/<b>|(?:src|href)=/);
    expect(page.match(/<tr(?: class="urgent")?>/g)).toHaveLength(6);
  });

  test("as CSV that no spreadsheet takes for a formula, and as a workbook", async () => {
    const folder = new Folder(files);
    const { out } = await folder.run("register", "--format", "csv");
    expect(out).toMatch(/,'=HYPERLINK\(1\) <b>&,/);
    expect(out.trimEnd().split("\r\n")).toHaveLength(6);
    await folder.run("register", "-o", "r.xlsx");
    const [sheet] = await readWorkbook(folder.at("r.xlsx"));
    expect(sheet?.data).toHaveLength(6);
  });

  test("as text, and a day that is none is refused", async () => {
    const folder = new Folder(files);
    const { out } = await folder.run("register");
    expect(out).toMatch(/\n5 installations, \d needs? attention\n$/);
    expect(await folder.run("register", "--on", "soon")).toEqual({
      code: 2,
      out: "",
      err: "A day is written as 2026-03-05; “soon” is none.\n",
    });
    expect((await folder.run("register", "--on", "2026-02-30")).code).toBe(2);
  });

  test("is no wider than the window, and text fills no file of another ending", async () => {
    const folder = new Folder(files);
    const { out } = await folder.runWith({ width: 60 }, "register");
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(60);
    const { code, err } = await folder.run("register", "-o", "r.pdf");
    expect({ code, err }).toEqual({
      code: 2,
      err: "“r.pdf” ends in none of .txt, .md, .html, .htm, .csv, .xlsx and .json: choose one of these, or state a --format.\n",
    });
    expect((await folder.run("schedule", "late.ways", "-o", "r.doc")).err).toContain("ends in none of .txt, .md,");
  });
});

test("kept results of a check are not taken for those of a register", async () => {
  const folder = new Folder({ "later.ways": tested("In time") });
  const cache = { cache: { folder: folder.at("cache"), program: "one" } };
  await folder.runWith(cache, "check", "later.ways");
  for (let round = 0; round < 2; round++) {
    const { out } = await folder.runWith(cache, "register", "--format", "json", "later.ways");
    expect(JSON.parse(out).installations).toHaveLength(1);
  }
});

test("what is found in the supply of one installation is not counted for the next one in its file", async () => {
  const wrong = 'installation "Wrong" {\n  supply {\n    earthing  TN-S\n    Ze        0.30\n  }\n}\n';
  const folder = new Folder({ "two.ways": `${tested("Sound")}${wrong}` });
  const { out } = await folder.run("register", "--format", "json", "two.ways");
  const counts = JSON.parse(out).installations.map(({ title, errors }: { title: string; errors: number }) => [
    title,
    errors > 0,
  ]);
  expect(counts).toEqual([
    ["Wrong", true],
    ["Sound", false],
  ]);
});
