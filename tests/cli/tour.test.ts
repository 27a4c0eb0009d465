/** What somebody sees who starts Wayfile for the first time. */
import { expect, test } from "vitest";
import { inSetting } from "../helpers/sample.ts";
import { Folder } from "./run.ts";

const clean = 'wayfile 1\n\ninstallation "Orchard Row" {\n}\n';
const faulty = "wayfile 1\nnonsense\ncable-type t flat-twin line 2.5\nlength 18 m\nnonsense\n";

test("each file, the faults of the faulty one, and what to try next", async () => {
  const folder = new Folder({
    "examples/shared.ways": 'wayfile 1\ninstrument M1 "Tester" { due 2026-11-03 }\n',
    "examples/shop-faulty.ways": faulty,
  });
  const { code, out, err } = await folder.run("check", "--tour", "examples");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect(`\n${out}`).toMatchInlineSnapshot(`
    "
    Each schedule is read, what every reading ought to be is worked out, and each is compared with its limit.

    examples/shared.ways
      no boards of its own
      clean

    examples/shop-faulty.ways
      no boards of its own
      4 errors
        line 2  “nonsense” is not a word of the file itself.
        line 3  2.5 lacks its unit: a conductor size is written in mm².
        and 2 more

    What to try next
      wayfile check examples/shop-faulty.ways   every finding, with its working and source
      wayfile explain loop/zs-over-limit        why a check matters, and a sample that passes it
      wayfile explain Zs                        what a word of the language means
      wayfile fmt --check examples              whether the files are formatted
      wayfile --help                            all there is
    "
  `);
});

test("the title of an installation", async () => {
  const { out } = await new Folder({ "a.ways": clean }).run("check", "--tour");
  expect(out).toContain("a.ways\n  “Orchard Row”");
});

test("an error in any other file is shown whole and fails", async () => {
  const folder = new Folder({ "faulty.ways": faulty, "fine.ways": "wayfile 1\nnonsense\n" });
  const { code, out } = await folder.run("check", "--tour");
  expect(out).toContain("  --> fine.ways:2:1\n");
  expect(out).not.toContain("--> faulty.ways");
  expect(code).toBe(1);
});

test("a folder that says faulty does not excuse the files in it", async () => {
  expect((await new Folder({ "faulty/a.ways": faulty }).run("check", "--tour")).code).toBe(1);
});

test("one fault is shown whole: its line, its limit, its working and its source", async () => {
  const way = 'way 1 radial "Oven" {\ndevice BS EN 60898 B32 6 kA\nlive 2026-03-05 {\nZs 1.52 Ω\n}\n}';
  const folder = new Folder({ "oven-faulty.ways": inSetting(way, { stage: "tested" }).text });
  const { out } = await folder.run("check", "--tour", "oven-faulty.ways");
  const [, whole = ""] = out.split("One of the faults, as check shows it");
  expect(whole).toContain("error  loop/zs-over-limit");
  expect(whole).toContain("limit    1.37 Ω");
  expect(whole).toContain("Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω");
  expect(whole).toContain("Table 41.3");
});
