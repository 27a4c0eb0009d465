/** Which files are checked, what is counted, and the exit codes. */
import { symlinkSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { wantsColour } from "../../server/cli/terminal.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const sound = 'wayfile 1\ninstrument M1 "Tester" {\n  due  2026-11-03\n}\n';
const unsound = "wayfile 1\nnonsense\n";
const paths = (out: string): string[] => JSON.parse(out).files.map((file: { path: string }) => file.path);

describe("exit codes", () => {
  test("0 where there are no errors", async () => {
    expect(await new Folder({ "a.ways": sound }).run("check")).toEqual({
      code: 0,
      out: "1 file, 0 boards, 0 ways: 0 errors, 0 warnings, 0 for information\n",
      err: "",
    });
  });

  test("0 where there are only warnings", async () => {
    const { code, out } = await new Folder({ "a.ways": sound.replace("wayfile 1\n", "") }).run("check");
    expect(out).toContain("0 errors, 1 warning");
    expect(code).toBe(0);
  });

  test("1 where there are errors", async () => {
    expect((await new Folder({ "a.ways": unsound }).run("check")).code).toBe(1);
  });

  test("2 where a file could not be read, though others have errors", async () => {
    const { code, out, err } = await new Folder({ "a.ways": unsound }).run("check", "a.ways", "gone.ways");
    expect(code).toBe(2);
    expect(out).toContain("1 error,");
    expect(err).toBe("There is no file or folder “gone.ways”.\n");
  });
});

describe("what is checked", () => {
  test("folders with all below them, without what git ignores and what is installed", async () => {
    const folder = new Folder({
      ".gitignore": "/drafts/\n*.tmp.ways\n",
      "a.ways": sound,
      "b.WAYS": sound,
      "c.txt": "not ours",
      "d.tmp.ways": sound,
      "drafts/e.ways": sound,
      "node_modules/f.ways": sound,
      ".git/g.ways": sound,
      "site/.gitignore": "*.ways\n!keep.ways\n",
      "site/h.ways": sound,
      "site/keep.ways": sound,
      "site/deep/keep.ways": sound,
    });
    const { out } = await folder.run("check", "--format", "json");
    expect(paths(out)).toEqual(["a.ways", "b.WAYS", "site/deep/keep.ways", "site/keep.ways"]);
  });

  test("a folder that was asked for, though git ignores it, and a file likewise", async () => {
    const folder = new Folder({ ".git/HEAD": "", ".gitignore": "drafts\n", "drafts/a.ways": sound });
    expect(paths((await folder.run("check", "--format", "json", "drafts")).out)).toEqual(["drafts/a.ways"]);
    expect(paths((await folder.run("check", "--format", "json", "drafts/a.ways")).out)).toEqual(["drafts/a.ways"]);
  });

  test("patterns, which leave out the same", async () => {
    const folder = new Folder({
      ".gitignore": "drafts\n",
      "a.ways": sound,
      "x/b.ways": sound,
      "x/c.txt": "",
      "x/drafts/d.ways": sound,
      "node_modules/e.ways": sound,
    });
    expect(paths((await folder.run("check", "--format", "json", "**/*")).out)).toEqual(["a.ways", "x/b.ways"]);
  });

  test("a file with signs of a pattern in its name", async () => {
    const folder = new Folder({ "a[1].ways": sound });
    expect(paths((await folder.run("check", "--format", "json", "a[1].ways")).out)).toEqual(["a[1].ways"]);
  });

  test("each file once, however it is named", async () => {
    const folder = new Folder({ "a.ways": unsound });
    symlinkSync("a.ways", folder.at("b.ways"));
    const { out } = await folder.run(
      "check",
      "--format",
      "json",
      ".",
      "a.ways",
      "./a.ways",
      folder.at("a.ways"),
      "*.ways",
    );
    expect(paths(out)).toEqual(["a.ways"]);
  });

  test("folders that lead back to themselves through a link", async () => {
    const folder = new Folder({ "x/a.ways": sound });
    symlinkSync("..", folder.at("x/back"));
    expect(paths((await folder.run("check", "--format", "json")).out)).toEqual(["x/a.ways"]);
  });

  test("standard input, under the path it stands for", async () => {
    const folder = new Folder({ "site/shared.ways": unsound, "site/a.ways": sound });
    const input = 'wayfile 1\nuse "shared.ways"\nlength 18\n';
    const { code, out } = await folder.runWith(
      { input },
      "check",
      "--format",
      "json",
      "--stdin-path",
      "site/a.ways",
      "-",
    );
    expect(paths(out)).toEqual(["site/a.ways", "site/shared.ways"]);
    expect(JSON.parse(out).summary.errors).toBe(2);
    expect(code).toBe(1);
  });

  test("standard input stands for its file wherever that is used", async () => {
    const folder = new Folder({ "a.ways": 'wayfile 1\nuse "b.ways"\n', "b.ways": unsound });
    const { code, out } = await folder.runWith({ input: sound }, "check", "--stdin-path", "b.ways", "-", "a.ways");
    expect(out).toContain("2 files");
    expect(code).toBe(0);
  });

  test("standard input without a path", async () => {
    const { out, code } = await new Folder({}).runWith({ input: unsound }, "check", "-");
    expect(out).toContain("--> (standard input):2:1");
    expect(code).toBe(1);
  });
});

describe("files that use others", () => {
  const board = `wayfile 1
board B "Annexe" {
  fed-from     supply
  main-switch  BS EN 60947-3 100 A
${faultyWay}
}
`;
  const judged = (out: string) => out.match(/loop\/zs-over-limit/g)?.length ?? 0;

  test("a board in a file of its own is judged by the installation that uses it, and found once", async () => {
    const folder = new Folder({
      "a-board.ways": board,
      "one.ways": schedule("", { before: 'use "a-board.ways"\n' }),
      "two.ways": schedule("", { before: 'use "a-board.ways"\n' }),
    });
    const { out } = await folder.run("check");
    expect(judged(out)).toBe(1);
    expect(out).toContain("--> a-board.ways:8:13");
    expect(out).toContain("3 files, 3 boards, 1 way:");
  });

  test("what is used is checked though only the user was named", async () => {
    const folder = new Folder({ "b.ways": board, "one.ways": schedule("", { before: 'use "b.ways"\n' }) });
    const { out } = await folder.run("check", "one.ways");
    expect(judged(out)).toBe(1);
  });

  test("boards that nothing judges are said, not passed as clean", async () => {
    const folder = new Folder({ "b.ways": board });
    const note = "“b.ways” has boards but no installation, and no file given here uses it: nothing judges it.\n";
    const text = await folder.run("check");
    expect(text.out).toContain(note);
    expect((await folder.run("check", "--format", "json")).err).toBe(note);
  });

  test("a file that is used and has an installation of its own is checked by itself too", async () => {
    const folder = new Folder({
      "a.ways": schedule("", { before: 'use "b.ways"\n' }),
      "b.ways": schedule(faultyWay),
    });
    expect(judged((await folder.run("check")).out)).toBe(1);
  });

  test("files that use each other in a circle are a finding, and both are read", async () => {
    const folder = new Folder({ "a.ways": 'wayfile 1\nuse "b.ways"\n', "b.ways": 'wayfile 1\nuse "a.ways"\n' });
    const { code, out } = await folder.run("check");
    expect(out).toContain("language/use-cycle");
    expect(out).toContain("2 files");
    expect(code).toBe(1);
  });

  test("a link that makes a file use itself under ever longer paths ends", async () => {
    const folder = new Folder({ "a.ways": 'wayfile 1\nuse "loop/a.ways"\n' });
    symlinkSync(".", folder.at("loop"));
    const { code, out } = await folder.run("check", "a.ways");
    expect(out).toContain("language/use-cycle");
    expect(code).toBe(1);
  });

  test("a file that is used and is missing is a finding on its line", async () => {
    const { code, out, err } = await new Folder({ "a.ways": 'wayfile 1\nuse "gone.ways"\n' }).run("check");
    expect(out).toContain(
      "“gone.ways” cannot be used: there is no such file. What it defines is not known here.\n  --> a.ways:2:5",
    );
    expect(err).toBe("");
    expect(code).toBe(1);
  });
});

describe("what is counted", () => {
  test("information may be left out and is counted all the same", async () => {
    const folder = new Folder({ "a.ways": schedule(faultyWay) });
    const all = JSON.parse((await folder.run("check", "--format", "json")).out);
    const less = JSON.parse((await folder.run("check", "--format", "json", "--no-info")).out);
    const severities = (report: typeof all) =>
      report.files.flatMap((file: { findings: { severity: string }[] }) => file.findings.map((one) => one.severity));
    expect(less.summary).toEqual(all.summary);
    expect(severities(all)).toContain("information");
    expect(severities(less)).not.toContain("information");
    const { out } = await folder.run("check", "--no-info");
    expect(out).not.toMatch(/^information/m);
    expect(out).toMatch(/\d+ for information \(not shown\)$/m);
  });

  test("limitations", async () => {
    const way = '    way 1 radial "Pump" {\n      live 2026-03-05 {\n        Zs  LIM "in use"\n      }\n    }';
    expect((await new Folder({ "a.ways": schedule(way) }).run("check")).out).toMatch(/; 1 limitation$/m);
  });
});

test("colour needs a terminal that can show it, and yields to NO_COLOR", () => {
  expect(wantsColour({ isTTY: true }, {})).toBe(true);
  expect(wantsColour({ isTTY: true }, { NO_COLOR: "1" })).toBe(false);
  expect(wantsColour({ isTTY: true }, { NO_COLOR: "" })).toBe(true);
  expect(wantsColour({ isTTY: true }, { TERM: "dumb" })).toBe(false);
  expect(wantsColour({}, {})).toBe(false);
});

test.each([
  [{ FORCE_COLOR: "1" }, true],
  [{ FORCE_COLOR: "3", TERM: "dumb" }, true],
  [{ FORCE_COLOR: "true" }, true],
  [{ FORCE_COLOR: "0" }, false],
  [{ FORCE_COLOR: "false" }, false],
  [{ FORCE_COLOR: "" }, false],
  [{ FORCE_COLOR: "1", NO_COLOR: "1" }, false],
])("a pipe with %o has colours: %s", (env, wanted) => {
  expect(wantsColour({}, env)).toBe(wanted);
  expect(wantsColour({ isTTY: true }, { ...env, FORCE_COLOR: "0" })).toBe(false);
});

test("timing goes to standard error", async () => {
  const { out, err } = await new Folder({ "a.ways": sound }).run("check", "--timing", "--format", "json");
  expect(JSON.parse(out).files).toEqual([{ path: "a.ways", findings: [] }]);
  expect(err.split("\n").map((line) => line.split(/ +/)[0])).toEqual(["read", "check", "total", ""]);
});
