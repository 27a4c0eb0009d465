/** What another edition would change, and that looking at it changes nothing. */
import { describe, expect, test } from "vitest";
import { editionDifference } from "../../server/reports/editions/editions.ts";
import { editionsReport } from "../../server/reports/editions/report.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { type Edition, editionOf, editions } from "../../server/tables/editions.ts";
import { loft } from "../helpers/cursor.ts";
import { generate } from "../helpers/generate.ts";
import { installations } from "./samples.ts";

function only<T>(items: readonly T[]): T {
  const [item] = items;
  if (item === undefined || items.length !== 1) throw new Error(`${items.length} instead of one`);
  return item;
}

const edition = (id: string): Edition => only([editionOf(id)].flatMap((found) => found ?? []));
const current = "BS 7671:2018+A2:2022";

test("all editions beside one schedule", async () => {
  const report = editionsReport(only(installations(loft)));
  expect(report.sections.length).toBe(editions.length - 1);
  await expect(reportText(report)).toMatchFileSnapshot("working/editions.txt");
});

test("its own edition changes nothing", () => {
  const installation = only(installations(generate({ ways: 30, seed: 3 })));
  expect(editionDifference(installation, edition(current))).toMatchObject({ findings: [], limits: [] });
});

test("the factor for the lowest voltage came with the third amendment of the 17th", () => {
  const { limits } = editionDifference(only(installations(loft)), edition("BS 7671:2008"));
  expect(limits).toContainEqual({ where: "A/3", name: "greatest Zs, hot", before: "1.37 Ω", after: "1.44 Ω" });
});

test("a reading between the two limits is faulty by one of them only", () => {
  const between = loft.replace("Zs           0.64 Ω", "Zs           1.40 Ω");
  const there = editionDifference(only(installations(between)), edition("BS 7671:2008"));
  const back = editionDifference(
    only(installations(between.replace(current, "BS 7671:2008"))),
    edition("BS 7671:2018"),
  );
  const ofLimit = (found: typeof there) =>
    found.findings.filter(({ before, after }) => /zs-over-limit|relies-on-rcd/.test((before ?? after)?.check ?? ""));
  expect(ofLimit(there)).toMatchObject([{ where: "A/3", kind: "vanishes", after: undefined }]);
  expect(ofLimit(back)).toMatchObject([{ where: "A/3", kind: "appears", before: undefined }]);
});

test("a finding that stays with another limit moves", () => {
  const high = loft.replace("Zs           0.64 Ω", "Zs           1.90 Ω");
  const { findings } = editionDifference(only(installations(high)), edition("BS 7671:2008"));
  const moved = findings.filter(({ kind, where }) => kind === "differs" && where === "A/3");
  expect(moved.map(({ before, after }) => [before?.limit?.amount, after?.limit?.amount])).toContainEqual([1.37, 1.44]);
});

describe("an edition whose numbers nobody has seen", () => {
  const text = reportText(editionsReport(only(installations(loft)), edition("BS 7671:2018+A4:2026")));

  test("says so, and claims no more than its figures", () => {
    expect(text.replace(/\s+/g, " ")).toContain("What differs in it is not known here");
    expect(text).toContain("By those figures nothing would change.");
  });
});

test("a schedule without an edition is told what each would judge", () => {
  const bare = only(installations(loft.replace(`  standard  ${current}\n`, "")));
  const { limits } = editionDifference(bare, edition(current));
  expect(limits).toContainEqual({ where: "A/3", name: "greatest Zs, hot", before: "none known", after: "1.37 Ω" });
});

test("what was found before is found after", () => {
  const installation = only(installations(loft));
  const before = checkInstallation(installation).findings;
  for (const one of editions) editionDifference(installation, one);
  expect(checkInstallation(installation).findings).toEqual(before);
});
