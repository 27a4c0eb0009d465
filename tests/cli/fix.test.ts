/** What is put right without a person, and what is checked again as it changes. */
import { chmodSync, readFileSync, renameSync, rmSync, statSync } from "node:fs";
import { setTimeout as later } from "node:timers/promises";
import { describe, expect, test } from "vitest";
import { main } from "../../server/cli/main.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const sound = schedule("");
const noVersion = sound.replace("wayfile 1\n", "");
/** A departure by an id that a check had before. */
const formerId = schedule(faultyWay.replace("      live", '      departure record/no-use "agreed"\n      live'));
const crowded = sound.replace("  }\n\n  board A", "  } board A");

const read = (folder: Folder, name: string): string => readFileSync(folder.at(name), "utf8");

describe("--fix", () => {
  test("puts many files right at once, each in its own way, and says how much it did", async () => {
    const folder = new Folder({ "a.ways": noVersion, "b/b.ways": formerId, "c.ways": sound });
    const patch = await folder.run("check", "--diff");
    expect(patch.code).toBe(1);
    expect(patch.out).toMatch(/^\+wayfile 1$/m);
    expect(patch.out).toMatch(/^-.*record\/no-use.*\n\+.*record\/serves-not-stated/m);
    expect(read(folder, "a.ways")).toBe(noVersion);
    const { err } = await folder.run("check", "--fix");
    expect(err).toBe("2 findings put right in 2 files.\n");
    expect(read(folder, "a.ways")).toBe(`wayfile 1\n${noVersion}`);
    expect(read(folder, "b/b.ways")).toBe(formerId.replace("record/no-use", "record/serves-not-stated"));
    expect(read(folder, "c.ways")).toBe(sound);
    expect((await folder.run("check", "--fix")).err).toBe("Nothing here can be put right without a person.\n");
    expect(await folder.run("check", "--diff")).toMatchObject({ code: 0, out: "" });
  });

  test("makes of two changes at one place one after the other, and both are there at the end", async () => {
    const text = `${crowded.replace("wayfile 1\n", "")}`;
    const folder = new Folder({ "a.ways": text });
    await folder.run("check", "--fix");
    const after = read(folder, "a.ways");
    expect(after.startsWith("wayfile 1\n")).toBe(true);
    expect(after.replace(/\s+/g, " ")).toBe(`wayfile 1 ${text}`.replace(/\s+/g, " "));
    expect((await folder.run("check", "--format", "concise")).out).not.toContain("language/");
  });

  test("keeps the bytes of what it does not change", async () => {
    const text = noVersion.replaceAll("\n", "\r\n");
    const folder = new Folder({ "a.ways": `\ufeff${text}` });
    await folder.run("check", "--fix", "--quiet");
    expect(read(folder, "a.ways")).toMatch(/^\ufeffwayfile 1\r?\n/);
    expect(read(folder, "a.ways").endsWith(text)).toBe(true);
  });

  test("a file that may not be written is left, is named, and is no reason to leave the others", async () => {
    const folder = new Folder({ "a.ways": noVersion, "locked.ways": noVersion });
    chmodSync(folder.at("locked.ways"), 0o444);
    const before = statSync(folder.at("locked.ways")).ino;
    const { code, err } = await folder.run("check", "--fix");
    expect(read(folder, "a.ways")).toContain("wayfile 1");
    // Whoever may do everything may write it too.
    if (process.getuid?.() === 0) return expect(statSync(folder.at("locked.ways")).mode & 0o777).toBe(0o444);
    expect(err).toContain("“locked.ways” cannot be written: ");
    expect(code).toBe(2);
    expect(statSync(folder.at("locked.ways")).ino).toBe(before);
  });

  test("that is interrupted before all is known changes nothing", async () => {
    const files = Object.fromEntries(Array.from({ length: 12 }, (_, index) => [`${index}.ways`, noVersion]));
    const folder = new Folder(files);
    let now = 0;
    let asked = 0;
    const stopping = { clock: () => (now += 1000), interrupted: () => ++asked > 15 };
    const { code, err } = await folder.runWith(stopping, "check", "--fix");
    expect(code).toBe(130);
    expect(err).toContain("12 left out");
    for (const name of Object.keys(files)) expect(read(folder, name)).toBe(noVersion);
    asked = 0;
    expect((await folder.runWith(stopping, "check", "--diff")).err).toMatch(/Interrupted: there is no patch\.\n$/);
  });
});

describe("--watch", () => {
  /** Watches a folder, and gives what is reported after each step once it differs from what was there before. */
  async function watched(folder: Folder, ...args: readonly string[]) {
    let out = "";
    let err = "";
    let stop = (): void => {};
    const stops: (() => void)[] = [];
    const over = main(["check", "--watch", "--no-cache", "--format", "concise", ...args], {
      cwd: folder.path,
      colour: false,
      width: undefined,
      program: "wayfile",
      script: "",
      out: ({ text }) => {
        out += text;
      },
      err: ({ text }) => {
        err += text;
      },
      data: () => {},
      bytes: () => {},
      today: () => "2026-05-04",
      input: async () => new Uint8Array(),
      now: () => 0,
      interactive: false,
      status: () => {},
      onInterrupt: (callback) => {
        stops.push(callback);
        stop = () => {
          for (const one of stops) one();
        };
        return () => {};
      },
      breathe: async () => {},
      threads: undefined,
      cache: undefined,
    });
    let rounds = 0;
    const reported = async (): Promise<string> => {
      for (;;) {
        const now = err.split("Watching for changes").length - 1;
        if (now > rounds) break;
        await later(20);
      }
      rounds = err.split("Watching for changes").length - 1;
      const text = out;
      out = "";
      return text;
    };
    const end = async () => {
      stop();
      return await over;
    };
    return { reported, end };
  }

  const board = (Zs: string) => `wayfile 1
board B "Annexe" {
  fed-from     supply
  main-switch  BS EN 60947-3 100 A
${faultyWay.replace("1.52 Ω", Zs)}
}
`;

  test("sees a used file, a new one, one renamed and one gone, faults of the language, and ends when asked", async () => {
    const folder = new Folder({
      "house.ways": schedule("", { before: 'use "shared/b.ways"\n' }),
      "shared/b.ways": board("1.02 Ω"),
    });
    const { reported, end } = await watched(folder);
    expect(await reported()).toMatch(/^2 files, 2 boards, 1 way: 0 errors/m);
    folder.write("shared/b.ways", board("1.52 Ω"));
    expect(await reported()).toMatch(/shared\/b\.ways:\d+:\d+: error loop\/zs-over-limit/);
    folder.write("new.ways", schedule(faultyWay));
    expect(await reported()).toMatch(/new\.ways:\d+:\d+: error loop\/zs-over-limit/);
    renameSync(folder.at("new.ways"), folder.at("other.ways"));
    const renamed = await reported();
    expect(renamed).toMatch(/other\.ways:\d+/);
    expect(renamed).not.toMatch(/new\.ways/);
    rmSync(folder.at("other.ways"));
    expect(await reported()).toMatch(/^2 files/m);
    folder.write("house.ways", 'wayfile 1\ninstallation "House" {\n  board A {{{\n');
    expect(await reported()).toMatch(/house\.ways:\d+:\d+: error language\//);
    folder.write(".wayfile.json", '{ "skip": [');
    await reported();
    rmSync(folder.at(".wayfile.json"));
    rmSync(folder.at("house.ways"));
    expect(await reported()).toMatch(/1 file/);
    expect(await end()).toBe(0);
  });

  test("a file that is named is watched, and what is beside it is not checked", async () => {
    const folder = new Folder({ "a.ways": sound, "b.ways": sound });
    const { reported, end } = await watched(folder, "a.ways");
    expect(await reported()).toMatch(/^1 file, .*: 0 errors/m);
    folder.write("a.ways", schedule(faultyWay));
    expect(await reported()).toMatch(/^1 file, .*: 1 error/m);
    rmSync(folder.at("a.ways"));
    await reported();
    folder.write("a.ways", sound);
    expect(await reported()).toMatch(/^1 file, .*: 0 errors/m);
    expect(await end()).toBe(0);
  });
});
