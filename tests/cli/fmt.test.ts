/** Laying files out: only what changes is written, and nothing is lost. */
import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync, utimesSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { generate } from "../helpers/generate.ts";
import { builtProgram } from "../helpers/program.ts";
import { Folder } from "./run.ts";

const untidy = 'wayfile   1\ninstrument M1 "Tester" {\n due 2026-11-03\n}\n';
const tidy = 'wayfile 1\ninstrument M1 "Tester" {\n  due          2026-11-03\n}\n';
const read = (folder: Folder, name: string) => readFileSync(folder.at(name), "utf8");

describe("files", () => {
  test("get the present names of checks where an upgrade is asked for", async () => {
    const departure = (id: string) => `wayfile 1\ndeparture ${id} "Agreed"\n`;
    const folder = new Folder({ "a.ways": departure("live/function-wrong") });
    expect((await folder.run("fmt", "a.ways")).out).toContain("already formatted");
    expect((await folder.run("fmt", "--upgrade", "--check", "a.ways")).code).toBe(1);
    expect((await folder.run("fmt", "--upgrade", "a.ways")).out).toContain("line 2");
    expect(read(folder, "a.ways")).toBe(departure("live/function-failed"));
  });

  test("are laid out where they stand, and what changed is said", async () => {
    const folder = new Folder({ "a.ways": untidy, "b.ways": tidy });
    expect(await folder.run("fmt", ".")).toEqual({
      code: 0,
      out: "a.ways  lines 1, 3\n2 files, 1 reformatted.\n",
      err: "",
    });
    expect(read(folder, "a.ways")).toBe(tidy);
    expect((await folder.run("fmt", ".")).out).toBe("2 files, already formatted.\n");
  });

  test("clear what a run that was killed left beside them, and nothing that a run may still be writing", async () => {
    // No process has a number as large.
    const [stale, fresh, running, foreign] = [
      ".wayfile-99999998.tmp",
      ".wayfile-99999999.tmp",
      `.wayfile-${process.ppid}.tmp`,
      "notes-99999998.tmp",
    ];
    const folder = new Folder({ "a.ways": untidy, [stale]: "", [fresh]: "", [running]: "", [foreign]: "" });
    for (const name of [stale, running, foreign]) utimesSync(folder.at(name), 1000, 1000);
    await folder.run("fmt", "--check", ".");
    expect(readdirSync(folder.path)).toContain(stale);
    await folder.run("fmt", ".");
    expect(readdirSync(folder.path).toSorted()).toEqual([fresh, running, foreign, "a.ways"].toSorted());
  });

  test("are not touched where nothing changes", async () => {
    const folder = new Folder({ "a.ways": tidy });
    utimesSync(folder.at("a.ways"), 1000, 1000);
    await folder.run("fmt", "a.ways");
    expect(statSync(folder.at("a.ways")).mtimeMs).toBe(1_000_000);
  });

  test("are only looked at with --check", async () => {
    const folder = new Folder({ "a.ways": untidy });
    const { code, out } = await folder.run("fmt", "--check", ".");
    expect({ code, out }).toEqual({ code: 1, out: "a.ways  lines 1, 3\n1 file, 1 not formatted.\n" });
    expect(read(folder, "a.ways")).toBe(untidy);
    await folder.run("fmt", ".");
    expect((await folder.run("fmt", "--check", ".")).code).toBe(0);
  });

  test("keep their Windows line ends and their byte order mark", async () => {
    const folder = new Folder({ "a.ways": `\ufeff${untidy.replaceAll("\n", "\r\n")}` });
    await folder.run("fmt", ".");
    expect(read(folder, "a.ways")).toBe(`\ufeff${tidy.replaceAll("\n", "\r\n")}`);
  });

  test("keep their permissions, and links stay links", async () => {
    const folder = new Folder({ "real/a.ways": untidy });
    chmodSync(folder.at("real/a.ways"), 0o640);
    symlinkSync("real/a.ways", folder.at("link.ways"));
    await folder.run("fmt", "link.ways");
    expect(read(folder, "real/a.ways")).toBe(tidy);
    expect(lstatSync(folder.at("link.ways")).isSymbolicLink()).toBe(true);
    expect(statSync(folder.at("real/a.ways")).mode & 0o777).toBe(0o640);
    expect(readdirSync(folder.at("real"))).toEqual(["a.ways"]);
  });

  test("that are no text are left alone, and the others laid out", async () => {
    const bytes = Buffer.from('wayfile   1\nnote "\xb5"\n', "latin1");
    const folder = new Folder({ "a.ways": bytes, "b.ways": untidy });
    const { code, err } = await folder.run("fmt", ".");
    expect(code).toBe(2);
    expect(err).toMatch(/^“a.ways” cannot be read: it is not UTF-8 text/);
    expect(readFileSync(folder.at("a.ways"))).toEqual(bytes);
    expect(read(folder, "b.ways")).toBe(tidy);
  });

  test("with lines that cannot be read keep those as they stand, and it is said", async () => {
    const folder = new Folder({ "a.ways": `${tidy}\nlength       18   18\n` });
    const { code, err } = await folder.run("fmt", ".");
    expect(read(folder, "a.ways")).toContain("length       18   18\n");
    expect(err).toMatch(/^“a.ways” has lines that cannot be read/);
    expect(code).toBe(0);
  });

  test("in a newer version of the language are left as they stand", async () => {
    const text = untidy.replace("1", "99");
    const folder = new Folder({ "a.ways": text });
    const sentence = "is in a newer version of the language and is left as it is.\n";
    expect(await folder.run("fmt", ".")).toMatchObject({ code: 2, err: `“a.ways” ${sentence}` });
    expect(read(folder, "a.ways")).toBe(text);
    expect(await folder.runWith({ input: text }, "fmt", "-")).toEqual({
      code: 2,
      out: text,
      err: `Standard input ${sentence}`,
    });
  });

  test("that do not exist", async () => {
    expect(await new Folder({}).run("fmt", "gone.ways")).toEqual({
      code: 2,
      out: "",
      err: "There is no file or folder “gone.ways”.\n",
    });
  });
});

describe("many files", () => {
  /** Enough for two threads, some of them laid out, with lines that cannot be read, or in a newer version. */
  const many = () =>
    Object.fromEntries(
      Array.from({ length: 60 }, (_, index) => [
        `site-${index % 7}/${index}.ways`,
        index % 20 === 3
          ? `${untidy.replace("1", "99")}`
          : `${index % 3 ? "" : "\ufeff"}${index % 5 ? untidy : tidy}${index % 11 ? "" : "length       18   18\n"}${generate({ ways: 2, seed: index }).replace("wayfile 1\n", "")}`,
      ]),
    );
  const texts = (folder: Folder, names: readonly string[]) => names.map((name) => read(folder, name));

  test("are laid out by several threads as by one, in the same order", async () => {
    const files = many();
    const names = Object.keys(files);
    const threads = { program: await builtProgram(), count: 2 };
    for (const args of [["--check"], ["--diff"], ["--upgrade"], []]) {
      const [alone, together] = [new Folder(files), new Folder(files)];
      const expected = await alone.run("fmt", ...args, ".");
      expect(expected.out.length).toBeGreaterThan(200);
      expect(await together.runWith({ threads }, "fmt", "--threads", "2", ...args, ".")).toEqual(expected);
      expect(texts(together, names)).toEqual(texts(alone, names));
    }
  });

  test("are not looked at again where nothing has changed, and not taken for another text", async () => {
    const folder = new Folder({ "a.ways": untidy, "b.ways": tidy });
    const cache = { folder: folder.at("cache"), program: "p" };
    const first = await folder.runWith({ cache }, "fmt", "--check", ".");
    expect(await folder.runWith({ cache }, "fmt", "--check", ".")).toEqual(first);
    const upgraded = await folder.runWith({ cache }, "fmt", "--check", "--upgrade", ".");
    expect(upgraded.out).toBe(first.out);
    expect((await folder.runWith({ cache }, "fmt", ".")).out).toContain("1 reformatted");
    expect(read(folder, "a.ways")).toBe(tidy);
    folder.write("b.ways", untidy);
    expect((await folder.runWith({ cache }, "fmt", ".")).out).toBe("b.ways  lines 1, 3\n2 files, 1 reformatted.\n");
    expect(read(folder, "b.ways")).toBe(tidy);
  });

  test("that cannot be written leave the others to be done", async () => {
    const folder = new Folder({ "a/a.ways": untidy, "b/b.ways": untidy, "c/c.ways": untidy });
    // What is written beside it first cannot be: its name is taken.
    folder.write(`b/.wayfile-${process.pid}.tmp`, "");
    const { code, out, err } = await folder.run("fmt", ".");
    expect({ code, out }).toEqual({
      code: 2,
      out: "a/a.ways  lines 1, 3\nc/c.ways  lines 1, 3\n3 files, 2 reformatted.\n",
    });
    expect(err).toMatch(/^“b\/b.ways” cannot be written: [^\n]+\n$/);
    expect(texts(folder, ["a/a.ways", "b/b.ways", "c/c.ways"])).toEqual([tidy, untidy, tidy]);
  });

  /** Does something once a number of files have been read or laid out. */
  const upon = (breaths: number, act: () => boolean) => {
    let [now, breath] = [0, 0];
    return { clock: () => (now += 1000), interrupted: () => ++breath === breaths && act() };
  };

  test("that somebody writes meanwhile are not overwritten", async () => {
    const folder = new Folder({ "a.ways": untidy, "b.ways": untidy, "c.ways": untidy });
    const cache = { folder: folder.at("cache"), program: "p" };
    await folder.runWith({ cache }, "fmt", "--check", ".");
    const others = `${untidy}note "Written meanwhile"\n`;
    const writing = upon(4, () => {
      folder.write("b.ways", others);
      return false;
    });
    const { code, err } = await folder.runWith({ cache, ...writing }, "fmt", ".");
    expect(err).toMatch(/“b.ways” cannot be written: it was changed meanwhile. Run this again.\n$/);
    expect(code).toBe(2);
    expect(texts(folder, ["a.ways", "b.ways", "c.ways"])).toEqual([tidy, others, tidy]);
  });

  test("that are interrupted leave the rest as they were, and it is said how many", async () => {
    const folder = new Folder({ "a.ways": untidy, "b.ways": untidy, "c.ways": untidy });
    const { code, out, err } = await folder.runWith(
      upon(5, () => true),
      "fmt",
      ".",
    );
    expect({ code, out }).toEqual({ code: 130, out: "a.ways  lines 1, 3\nb.ways  lines 1, 3\n" });
    expect(err).toMatch(/\nInterrupted: 2 files looked at, 1 left as they were.\n$/);
    expect(texts(folder, ["a.ways", "b.ways", "c.ways"])).toEqual([tidy, tidy, untidy]);
    const early = await folder.runWith(
      upon(1, () => true),
      "fmt",
      ".",
    );
    expect(early).toMatchObject({ code: 130, out: "" });
  });

  test("below settings with a fault are left as they are", async () => {
    const folder = new Folder({ "a.ways": untidy, ".wayfile.json": '{ "leavOut": ["a.ways"] }' });
    const { code, out, err } = await folder.run("fmt", ".");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/leaveOut[^\n]*\nThe settings are to be put right first; nothing was formatted.\n$/);
    expect(read(folder, "a.ways")).toBe(untidy);
  });
});

describe("standard input", () => {
  test("is laid out to standard output", async () => {
    expect(await new Folder({}).runWith({ input: untidy }, "fmt", "-")).toEqual({ code: 0, out: tidy, err: "" });
  });

  test("comes out as it is where nothing changes, byte order mark and all", async () => {
    expect((await new Folder({}).runWith({ input: `\ufeff${tidy}` }, "fmt", "-")).out).toBe(`\ufeff${tidy}`);
  });

  test("is only looked at with --check", async () => {
    const folder = new Folder({});
    expect(await folder.runWith({ input: untidy }, "fmt", "--check", "-")).toEqual({ code: 1, out: "", err: "" });
    expect(await folder.runWith({ input: tidy }, "fmt", "--check", "-")).toEqual({ code: 0, out: "", err: "" });
  });

  test("gives nothing where it is no text", async () => {
    const { code, out } = await new Folder({}).runWith({ input: new Uint8Array([0xff, 0x20]) }, "fmt", "-");
    expect({ code, out }).toEqual({ code: 2, out: "" });
  });

  test("stands alone", async () => {
    const folder = new Folder({ "a.ways": untidy });
    expect((await folder.run("fmt", "-", "a.ways")).code).toBe(2);
    expect(read(folder, "a.ways")).toBe(untidy);
  });
});
