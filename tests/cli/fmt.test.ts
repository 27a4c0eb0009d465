/** Laying files out: only what changes is written, and nothing is lost. */
import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync, utimesSync } from "node:fs";
import { describe, expect, test } from "vitest";
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
