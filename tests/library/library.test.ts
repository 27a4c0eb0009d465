/** The library as others import it: one file without Node in it, and declarations that say all it takes and gives. */
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";
import { check, compare, format } from "../../server/library/index.ts";
import { resolvePath } from "../../server/library/paths.ts";
import { Folder, faultyWay, schedule } from "../cli/run.ts";

const text = schedule(faultyWay, { before: 'use "shared/meters.ways"\n' });
const root = join(import.meta.dirname, "../..");

describe("check", () => {
  test("finds what the command line finds", async () => {
    const own = schedule(faultyWay);
    const { out } = await new Folder({ "schedule.ways": own }).run("check", "--format", "json");
    const report = JSON.parse(out);
    const { files, errors, warnings, ways } = check(own);
    const seen = (list: readonly { check: string; message: string }[]) =>
      list.map((one) => `${one.check} ${one.message}`);
    expect(seen(files[0]?.findings ?? [])).toEqual(seen(report.files[0].findings));
    expect({ errors, warnings, ways }).toMatchObject({
      errors: report.summary.errors,
      warnings: report.summary.warnings,
      ways: 1,
    });
  });

  test("follows what is used by what was given, and then by asking", () => {
    const missing = check({ path: "a.ways", text }).files[0]?.findings.map((finding) => finding.check);
    expect(missing).toContain("language/use-missing");
    const asked: string[] = [];
    const read = (path: string) => {
      asked.push(path);
      return "wayfile 1\n";
    };
    expect(check({ path: "site/a.ways", text }, { read }).files.map(({ path }) => path)).toEqual([
      "site/a.ways",
      "site/shared/meters.ways",
    ]);
    expect(new Set(asked)).toEqual(new Set(["site/shared/meters.ways"]));
  });

  test("answers any text", () => {
    for (const odd of ["", "\0", "}}}", 'use "', "wayfile 99\n"]) expect(check(odd).files).toHaveLength(1);
  });
});

test("format lays out, and leaves what it cannot read", () => {
  expect(format("wayfile    1\n")).toEqual({
    text: "wayfile 1\n",
    edits: [{ start: 0, end: 13, text: "wayfile 1\n" }],
  });
  expect(format("wayfile 1\n")).toEqual({ text: "wayfile 1\n", edits: [] });
});

test("compare gives each reading that differs, and nothing for the same text", () => {
  const own = schedule(faultyWay);
  expect(compare(own, own)[0]?.changes).toEqual([]);
  const changes = compare(own, own.replace("1.52 Ω", "0.52 Ω"))[0]?.changes;
  expect(changes).toMatchObject([
    { where: "A/1", name: "Zs", before: "1.52 Ω", after: "0.52 Ω", effect: "now passes" },
  ]);
});

test.each([
  ["a.ways", "b.ways", "b.ways"],
  ["x/a.ways", "../b.ways", "b.ways"],
  ["x/a.ways", "..\\y\\b.ways", "y/b.ways"],
  ["/x/a.ways", "../../b.ways", "/b.ways"],
  ["x/a.ways", "/b.ways", "/b.ways"],
])("from %s, %s is %s", (from, use, path) => {
  expect(resolvePath(from, use)).toBe(path);
});

test("the example of the guide runs with the package as others have it, without Node inside", async () => {
  const folder = mkdtempSync(join(tmpdir(), "wayfile-library-"));
  const own = join(folder, "node_modules/wayfile");
  mkdirSync(own, { recursive: true });
  const { exports } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
  writeFileSync(join(own, "package.json"), JSON.stringify({ name: "wayfile", type: "module", exports }));
  // Built for a browser, so that a module of Node would fail it.
  await build({
    entryPoints: [join(root, "server/library/index.ts")],
    outfile: join(own, "dist/library.mjs"),
    bundle: true,
    platform: "browser",
    format: "esm",
    logLevel: "silent",
  });
  const script = join(folder, "example.mjs");
  writeFileSync(script, readFileSync(join(import.meta.dirname, "example.mjs")));
  const out = JSON.parse(execFileSync(process.execPath, [script, format(text).text], { encoding: "utf8" }));
  expect(out).toMatchObject({
    paths: ["site/house.ways", "site/shared/meters.ways"],
    changes: [{ where: "A/1", name: "Zs" }],
    laidOut: true,
    errors: check([{ path: "site/house.ways", text: format(text).text }], { read: () => "wayfile 1\n" }).errors,
  });
});
