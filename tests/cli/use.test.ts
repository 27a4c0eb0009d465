/** A `use` on the command line: what it refuses, and that nothing of a file outside is printed. */
import { execFileSync } from "node:child_process";
import { symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { refusals, strangeFolder, using, welcome } from "../helpers/strange-files.ts";
import { Folder, runIn } from "./run.ts";

const folder = strangeFolder();
afterAll(() => folder.remove());

it.each(refusals)("does not use %s, and says why on its line", async (use, reason) => {
  writeFileSync(join(folder.path, "main.ways"), using(use));
  const { code, out, err } = await runIn(folder.path, "check", "main.ways");
  expect(out).toContain(`“${use}” cannot be used: ${reason} What it defines is not known here.\n  --> main.ways:2:5`);
  expect(out).not.toMatch(/hidden|secret$|root:/m);
  expect({ code, err }).toEqual({ code: 1, err: "" });
});

it.each(welcome)("uses %s", async (use) => {
  writeFileSync(join(folder.path, "main.ways"), using(use));
  expect(await runIn(folder.path, "check", "main.ways")).toMatchObject({ code: 0, err: "" });
});

it("uses what lies beside it below the folder that was asked for, wherever the command stands", async () => {
  const asked = new Folder({ "a/main.ways": using("../b/other.ways"), "b/other.ways": "wayfile 1\n" });
  const { code, out } = await new Folder({}).run("check", asked.path);
  expect({ code, out }).toEqual({ code: 0, out: expect.stringContaining("2 files") });
});

it("follows no link out of a folder that is searched, nor one that is named", async () => {
  const project = new Folder({ "good.ways": "wayfile 1\n" });
  const other = new Folder({ "hidden.ways": "hidden line\n" });
  symlinkSync(other.at("hidden.ways"), project.at("link.ways"));
  for (const args of [["check"], ["check", "link.ways"], ["fmt", "link.ways"]]) {
    const { code, out, err } = await project.run(...args);
    expect(out).not.toContain("hidden");
    expect(err).toContain("“link.ways” cannot be read: it is a link out of the folder of this schedule.");
    expect(code).toBe(2);
  }
});

it("reads no device, whatever it is called", async () => {
  const { code, err } = await new Folder({}).run("check", "/dev/zero");
  expect(err).toMatch(/cannot be read: it is not a regular file\.\n$/);
  expect(code).toBe(2);
});

it("gives up a pipe that nobody writes to", async () => {
  const project = new Folder({});
  execFileSync("mkfifo", [project.at("pipe.ways")]);
  for (const command of ["check", "fmt", "working"]) {
    const { code, err } = await project.run(command, "pipe.ways");
    expect(err).toBe("“pipe.ways” cannot be read: nothing came through this pipe for 2 s.\n");
    expect(code).toBe(2);
  }
});

it("is not held up by a pipe or a device that says what git leaves out", async () => {
  for (const make of ["mkfifo .gitignore", "ln -s /dev/zero .gitignore"]) {
    const project = new Folder({ "a.ways": "wayfile 1\n" });
    execFileSync("sh", ["-c", make], { cwd: project.path });
    expect(await project.run("check")).toMatchObject({ code: 0, err: "" });
  }
});
