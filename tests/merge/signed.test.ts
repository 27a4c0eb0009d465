/** What a merge brings along of a record is said, even where nothing conflicts. */
import { expect, test } from "vitest";
import { labelsFor } from "../../server/cli/merge-labels.ts";
import { Folder } from "../cli/run.ts";
import { TestRepository } from "../helpers/repository.ts";

const base = `wayfile 1
installation "Peat shed" {
  standard     BS 7671:2018+A2:2022
  tested       by "R.M." 2026-03-06
  board A "Shed" {
    way 1 radial "Light" {
      live 2026-03-05 {
        Zs           0.42 Ω
      }
      live 2026-04-01 {
        Zs           0.44 Ω
      }
    }
  }
}
`;
const merging = (ours: string, theirs: string) =>
  new Folder({ "base.ways": base, "ours.ways": ours, "theirs.ways": theirs }).run(
    "merge",
    "base.ways",
    "ours.ways",
    "theirs.ways",
    "--stdout",
  );
const noted = base.replace('"Light" {', '"Light" {\n      note         "Seen"');

test("a signed reading that one side altered merges, and is named with its figure, signatory and day", async () => {
  const { code, out, err } = await merging(noted, base.replace("0.42 Ω", "0.47 Ω"));
  expect(code).toBe(0);
  expect(out).toContain("0.47 Ω");
  expect(err).toBe(
    "theirs: A/1 · live 2026-03-05 · Zs is 0.47 Ω; it was recorded as 0.42 Ω, for which R.M. signed on 2026-03-06. If it was wrong, correct it with “was” and the reason.\n",
  );
});

test("one that nobody signed for is named without a signature", async () => {
  const { err } = await merging(base.replace("0.44 Ω", "0.41 Ω"), noted);
  expect(err).toMatch(/^ours: A\/1 · live 2026-04-01 · Zs is 0\.41 Ω; it was recorded as 0\.44 Ω\. If/);
});

test("a correction with its reason, and a new test, need no word", async () => {
  const corrected = base.replace("0.42 Ω", '0.47 Ω was 0.42 Ω "Figures turned round"');
  expect((await merging(noted, corrected)).err).toBe("");
  const again = base.replace(
    "      live 2026-04-01",
    "      live 2027-04-01 {\n        Zs           0.5 Ω\n      }\n      live 2026-04-01",
  );
  expect((await merging(noted, again)).err).toBe("");
});

test("a git that knows no labels leaves its placeholders, and none of them is shown", async () => {
  const folder = new Folder({ "base.ways": base, "ours.ways": noted, "theirs.ways": base.replace("0.42 Ω", "0.47 Ω") });
  const labels = ["--base", "%S", "--ours", "%X", "--theirs", "%Y"];
  const { err } = await folder.run("merge", "base.ways", "ours.ways", "theirs.ways", "--stdout", ...labels);
  expect(err).toMatch(/^theirs: A\/1 · live 2026-03-05 · Zs is 0\.47 Ω/);
});

test("a side is named by who wrote it, and not by who merged it", async () => {
  const one = new TestRepository();
  try {
    one.commit("First", { "shed.ways": base });
    one.git("checkout", "-q", "-b", "site");
    one.commit("Re-test", { "shed.ways": base.replace("0.44 Ω", "0.45 Ω") }, "C. Holt");
    one.git("checkout", "-q", "-b", "title", "main");
    one.commit("Title", { "shed.ways": base.replace("Peat shed", "Peat store") }, "B. Reeve");
    one.git("checkout", "-q", "site");
    one.git("merge", "-q", "--no-ff", "-m", "Both", "title");
    one.day = "2026-04-02";
    one.commit("Other file", { "notes.txt": "none" });
    const { theirs } = await labelsFor({ path: "shed.ways", theirs: "site" }, undefined, one.folder);
    expect(theirs).toMatch(/^site \((?:C\. Holt|B\. Reeve), 2026-03-05\)$/);
  } finally {
    one.end();
  }
});
