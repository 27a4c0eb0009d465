/** One page to sign off against: what it counts, what it lists and why, and that no text breaks it. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reportHtml } from "../../server/reports/setting/html.ts";
import { reportMarkdown } from "../../server/reports/setting/markdown.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { summaryOf } from "../../server/reports/summary/summary.ts";
import { missingTests } from "../../server/rules/common/missing-tests.ts";
import { pageOf } from "../../server/rules/frame/catalogue.ts";
import { failures } from "../../server/rules/frame/run-rules.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { damaged, soundSchedule } from "../helpers/schedules.ts";
import { electrode as untested } from "./samples.ts";
import { wellFormed } from "./well-formed.ts";

failures.thrown = true;

/** The byre with the test of its main switch. */
const electrode = untested.replace(
  "    way 1 radial",
  "    live 2026-03-05 {\n      rcd          100 mA 1x 210 ms\n      test-button  ok\n    }\n    way 1 radial",
);

const examples = resolve(import.meta.dirname, "../../examples");
const disk: Sources = {
  file: (path: string) => fileOfText(path, readFileSync(path, "utf8")),
  resolve: (from: string, use: string) => resolve(from, "..", use),
};
const alone: Sources = { ...disk, file: () => ({ failure: "it is not here." }) };

function summaries(text: string, path = "sample.ways", sources = alone) {
  const { files, installations, suppressed } = checkProject(fileOfText(path, text), sources);
  const findings = files.flatMap((file) => [...file.findings]);
  return installations.map((installation) => summaryOf(installation, { findings, suppressed }));
}

const textOf = (text: string): string =>
  summaries(text)
    .map((report) => reportText(report))
    .join("\n");

/** Rows of a table in the report, by the title of the part it stands in. */
const rowsOf = (text: string, title: string): (readonly string[])[] =>
  summaries(text)
    .flatMap(({ sections }) => sections.filter((section) => section.title === title))
    .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === "table" ? [...block.rows] : [])));

const stageOf = (text: string) =>
  summaries(text)[0]?.sections[0]?.blocks.flatMap((block) =>
    block.kind === "judgement" ? [`${block.verdict}: ${block.remark}`] : [],
  );

describe("worth reading", () => {
  test.each(["heron-wharf/boatyard", "copper-lane/hall-faulty"])("%s", async (name) => {
    const path = `${examples}/${name}.ways`;
    const text = summaries(readFileSync(path, "utf8"), path, disk)
      .map((report) => reportText(report))
      .join("\n");
    expect(text).not.toMatch(/undefined|NaN/);
    await expect(text).toMatchFileSnapshot(`summary/${name.replace(/.*\//, "")}.txt`);
  });

  test("a file that broke off half way", async () => {
    const text = readFileSync(`${examples}/copper-lane/hall-faulty.ways`, "utf8");
    const torn = textOf(`${text.slice(0, text.length / 2)}\n  %%% {{ way\n`);
    expect(torn).not.toMatch(/undefined|NaN/);
    await expect(torn).toMatchFileSnapshot("summary/torn.txt");
  });

  test("with a departure and a limitation, in its three settings", async () => {
    const [report] = summaries(electrode);
    if (!report) throw new Error("no installation");
    await expect(reportText(report)).toMatchFileSnapshot("summary/byre.txt");
    await expect(reportMarkdown(report)).toMatchFileSnapshot("summary/byre.md");
    wellFormed(reportHtml(report));
  });
});

describe("lists", () => {
  test("a limitation with its reason, and the departure that covers it with what it suppresses", () => {
    expect(rowsOf(electrode, "Limited")).toEqual([
      ["A/1", "insulation N-E", "The pump controller could not be isolated"],
    ]);
    const [departure] = rowsOf(electrode, "Departed from");
    expect(departure?.slice(0, 3)).toEqual([
      "A/1",
      "record/limitation-on-new",
      "The pump runs until May; to be tested then",
    ]);
    expect(departure?.[3]).toMatch(/N-E|insulation|limit/i);
  });

  test("a departure that suppresses nothing says so", () => {
    const text = electrode.replace("departure record/limitation-on-new", "departure rcd/time-over-limit");
    expect(rowsOf(text, "Departed from")[0]?.[3]).toBe("nothing");
  });

  test("a departure in the supply", () => {
    const text = electrode.replace("electrode  rod 84 Ω", 'electrode  rod 84 Ω\n    departure 542.2 "Dry sand"');
    expect(rowsOf(text, "Departed from").map((row) => row[1])).toContain("542.2");
  });

  test("an open query, and none that is answered", () => {
    const asked = electrode.replace("Ib      14 A", 'Ib      14 A\n      query "Who agreed?"');
    expect(rowsOf(asked, "Open queries")).toEqual([["A/1", "Who agreed?"]]);
    expect(rowsOf(asked.replace('"Who agreed?"', '"Who agreed?"\n      answer "The owner"'), "Open queries")).toEqual(
      [],
    );
  });

  test("the least margin of a kind", () => {
    const rcd = rowsOf(electrode, "Least margin").find(([kind]) => kind === "RCD and AFDD");
    expect(rcd?.slice(1)).toEqual([
      "board A",
      "100 mA type A delayed BS EN 61008 at 1 × IΔn",
      "210 ms",
      "at most 500 ms",
      "58 % left",
    ]);
  });

  test("what is calculated is no test", () => {
    const read = (text: string) => rowsOf(text, "Tests made").filter(([kind]) => kind === "loop impedance");
    expect(read(electrode).map((row) => row.slice(1, 3))).toEqual([
      ["1 of 1", "no day stated"],
      ["1 of 1", "2026-03-05"],
    ]);
    expect(read(electrode.replace("84.3 Ω", "84.3 Ω calculated")).map((row) => row[2])).toEqual(["no day stated"]);
  });
});

describe("the stage", () => {
  test("is honest where nothing it asks for is missing", () => {
    expect(stageOf(electrode)).toEqual(["holds: all required tests are recorded, or left out with a reason"]);
  });

  test("is not where a test is missing", () => {
    expect(stageOf(electrode.replace("        polarity    ok\n", ""))).toEqual(["fails: one required test is missing"]);
  });

  test("of a departure for a missing test, the departure is named", () => {
    const text = electrode
      .replace("        polarity    ok\n", "")
      .replace("      dead 2026", '      departure polarity/missing "Later"\n      dead 2026');
    expect(stageOf(text)).toEqual(["holds: one test is omitted by a departure"]);
  });

  test("below what was tested", () => {
    expect(stageOf(electrode.replace("stage     tested", "stage     design"))).toEqual([
      "advises: tests are recorded beyond this stage, so missing tests are not reported",
    ]);
  });

  test("that nobody stated", () => {
    expect(stageOf(electrode.replace("  stage     tested\n", ""))?.[0]).toMatch(/^advises: none is stated/);
  });

  test("where a line could not be read, nobody can tell", () => {
    expect(stageOf(electrode.replace("Ib      14 A", "Ib      14"))?.[0]).toMatch(
      /^advises: one line could not be understood/,
    );
  });
});

test("every check of a missing test exists", () => {
  expect(missingTests.length).toBeGreaterThan(5);
  expect(missingTests.filter((id) => pageOf(id) === undefined)).toEqual([]);
});

test.each([
  ["sound", soundSchedule],
  ["damaged", damaged],
] as const)("%s schedules: nothing is thrown and nothing of the program shows", (_, schedules) => {
  fc.assert(
    fc.property(schedules, (text) => {
      for (const report of summaries(text)) {
        const plain = reportText(report);
        expect(`${plain}${reportMarkdown(report)}`).not.toMatch(/undefined|NaN|\[object/);
        for (const line of plain.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
        wellFormed(reportHtml(report));
      }
    }),
    { numRuns: 120 },
  );
});
