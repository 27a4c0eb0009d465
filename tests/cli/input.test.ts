/** What is no schedule: one clear sentence each, the right exit code, and the others are still checked. */
import { execFile, execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync } from "node:fs";
import { writeFile } from "node:fs/promises";
import { promisify } from "node:util";
import { expect, test } from "vitest";
import { ceiling } from "../../server/text/decode.ts";
import { builtProgram } from "../helpers/program.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const good = "wayfile 1\n";

async function refusal(name: string, content: string | Uint8Array): Promise<string> {
  const { code, out, err } = await new Folder({ [name]: content, "good.ways": good }).run("check");
  expect(code).toBe(2);
  expect(out).toContain("1 file,");
  return err;
}

test("bytes that are not UTF-8, with the place of the first bad one", async () => {
  expect(await refusal("a.ways", Buffer.from('wayfile 1\nnote "5 \xb5A"\n', "latin1"))).toBe(
    "“a.ways” cannot be read: it is not UTF-8 text: the first bad byte (B5) stands at line 2, column 9.\n",
  );
});

test("bytes that end within a sign", async () => {
  expect(await refusal("a.ways", Buffer.from("wayfile 1\n# Ω").subarray(0, -1))).toBe(
    "“a.ways” cannot be read: it is not UTF-8 text: the first bad byte (CE) stands at line 2, column 3.\n",
  );
});

test("a sign that begins well and goes on wrongly", async () => {
  expect(await refusal("a.ways", Buffer.from([0x23, 0xe2, 0x84, 0x28]))).toBe(
    "“a.ways” cannot be read: it is not UTF-8 text: the first bad byte (E2) stands at line 1, column 2.\n",
  );
});

test("UTF-16", async () => {
  expect(await refusal("a.ways", Buffer.from("\ufeffwayfile 1\n", "utf16le"))).toBe(
    "“a.ways” cannot be read: it is UTF-16 text; save it as UTF-8.\n",
  );
});

test("NUL bytes", async () => {
  expect(await refusal("a.ways", "wayfile 1\n\n\0\0\n")).toBe(
    "“a.ways” cannot be read: it is no text file: line 3 holds a NUL byte.\n",
  );
});

test("a file that is far too large", async () => {
  expect(await refusal("a.ways", Buffer.alloc(50_000_000, "# \n"))).toBe(
    "“a.ways” cannot be read: it is larger than 8 MB (50.0 MB), the most that is read of one file.\n",
  );
});

test("standard input that is far too large", async () => {
  const { code, err } = await new Folder({}).runWith({ input: Buffer.alloc(ceiling + 1, "# \n") }, "check", "-");
  expect(err).toMatch(/^Standard input cannot be read: it is larger than 8 MB/);
  expect(code).toBe(2);
});

test("a large file below the ceiling is read", async () => {
  const { code, out } = await new Folder({ "a.ways": Buffer.alloc(5_000_000, "# \n") }).run("check");
  expect(out).toContain("1 file,");
  expect(code).toBe(0);
});

test("a link that leads nowhere", async () => {
  const folder = new Folder({ "good.ways": good });
  symlinkSync("gone", folder.at("a.ways"));
  const { code, err } = await folder.run("check");
  expect(err).toBe("“a.ways” cannot be read: there is no such file.\n");
  expect(code).toBe(2);
});

test("a link that leads in a circle", async () => {
  const folder = new Folder({});
  symlinkSync("b.ways", folder.at("a.ways"));
  symlinkSync("a.ways", folder.at("b.ways"));
  const { code, err } = await folder.run("check", "a.ways");
  expect(err).toBe("“a.ways” cannot be read: its links lead in a circle.\n");
  expect(code).toBe(2);
});

test("a folder that is named like a file", async () => {
  const folder = new Folder({ "good.ways": 'wayfile 1\nuse "a.ways"\n' });
  mkdirSync(folder.at("a.ways"));
  const { code, out } = await folder.run("check", "good.ways");
  expect(out).toContain("“a.ways” cannot be used: it is a folder.");
  expect(code).toBe(1);
  expect(await folder.run("check", "a.ways")).toEqual({ code: 2, out: "", err: "No .ways files in “a.ways”.\n" });
});

test("a folder without schedules", async () => {
  const folder = new Folder({ "docs/readme.txt": "" });
  expect(await folder.run("check")).toEqual({ code: 2, out: "", err: "No .ways files in this folder.\n" });
  expect(await folder.run("check", "docs")).toEqual({ code: 2, out: "", err: "No .ways files in “docs”.\n" });
});

test("a pattern that nothing matches", async () => {
  expect(await new Folder({ "a.txt": "" }).run("check", "*.txt")).toEqual({
    code: 2,
    out: "",
    err: "No .ways files match “*.txt”.\n",
  });
});

test.each([
  [`${"*a".repeat(12)}*c.ways`, "a part of it has more than 3 stars."],
  ["**/a/**/a/**/a/**/a/**/*.ways", "it has ** more than 4 times."],
  ["+(a|aa)+(a|aa)c.ways", "a group that may be repeated is no part of a pattern here."],
])("a pattern that would be looked for until morning: %s", async (pattern, why) => {
  const folder = new Folder({ [`${"a".repeat(120)}.ways`]: "wayfile 1\n" });
  for (const command of ["check", "fmt"]) {
    const { code, err } = await folder.run(command, pattern);
    expect({ code, err }).toEqual({ code: 2, err: `“${pattern}” is not looked for: ${why}\n` });
  }
});

test("a pattern with a few stars is looked for", async () => {
  const folder = new Folder({ "sites/north-2026-a.ways": "wayfile 1\n", "sites/south.ways": "wayfile 1\n" });
  expect((await folder.run("fmt", "**/*-2026-*.ways")).out).toBe("1 file, already formatted.\n");
  expect((await folder.run("fmt", "sites/{north,south}*.ways")).out).toBe("2 files, already formatted.\n");
});

/** 500 rules of a stranger's repository, over a name that matches all of each but its end. */
test("patterns of a stranger's repository take no longer, however many stars they have", async () => {
  const rules = Array.from({ length: 500 }, (_, index) => `${"*a".repeat(12)}*${index}c`);
  const folder = new Folder({
    [`${"a".repeat(120)}.ways`]: "wayfile 1\n",
    ".gitignore": rules.join("\n"),
    ".wayfile.json": JSON.stringify({
      leaveOut: rules,
      suppress: [{ check: "surge", files: rules, reason: "As agreed" }],
    }),
  });
  expect((await folder.run("check")).code).toBe(0);
});

test("a pipe is read to its end", async () => {
  const folder = new Folder({});
  execFileSync("mkfifo", [folder.at("pipe")]);
  // The program in a process of its own, which reads without a pause: a writer here then has its turn, however busy the machine.
  const program = await builtProgram();
  const written = writeFile(folder.at("pipe"), "wayfile 1\nnonsense\n");
  const ran = promisify(execFile)(process.execPath, [program, "check", "pipe"], { cwd: folder.path });
  const { stdout } = await ran.catch((error) => error);
  expect(stdout).toContain("--> pipe:2:1");
  await written;
});

test("an empty file is no fault, and is said", async () => {
  const { code, out, err } = await new Folder({ "a.ways": "" }).run("check");
  expect(out).toContain("“a.ways” is empty.\n");
  expect({ code, err }).toEqual({ code: 0, err: "" });
});

test("a file in a version of the language that is to come is not judged, nor is what uses it", async () => {
  const newer = schedule(`${faultyWay}\n    new-word 3`).replace("wayfile 1", "wayfile 99");
  const folder = new Folder({ "a.ways": newer, "b.ways": schedule(faultyWay, { before: 'use "a.ways"\n' }) });
  const { code, out } = await folder.run("check");
  expect(out.match(/^(?:error|warning|information) {2}.*$/gm)).toEqual(["error  language/newer-version"]);
  expect(code).toBe(1);
});

test("merge conflicts, doubled braces and rubbish are findings", async () => {
  for (const text of [
    "wayfile 1\n<<<<<<< ours\n=======\n>>>>>>> theirs\n",
    "wayfile 1\n}}}}{{{{\n",
    "\u0001\u0002((((",
  ]) {
    const { code, err } = await new Folder({ "a.ways": text }).run("check");
    expect({ code, err }).toEqual({ code: 1, err: "" });
  }
});

test("more faults than a call takes arguments", async () => {
  const { code, out } = await new Folder({ "a.ways": `wayfile 1\n${"xx\n".repeat(150_000)}` }).run(
    "check",
    "--format",
    "json",
  );
  expect(JSON.parse(out).summary.errors).toBe(150_000);
  expect(code).toBe(1);
});

test("a thousand faults of one kind are shown, and how many more there are", async () => {
  const folder = new Folder({ "a.ways": `wayfile 1\n${"xx\n".repeat(2_500)}yy }\n` });
  const { code, out } = await folder.run("check");
  expect(out.match(/^error {2}language\/unknown-word$/gm)).toHaveLength(1_000);
  expect(out).toContain("\n1501 more findings of language/unknown-word in a.ways; --format json lists more.\n");
  expect(out).toMatch(/^1 file, .*: 2502 errors/m);
  expect(code).toBe(1);
});
