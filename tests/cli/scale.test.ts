/** Many files: several threads, results that are kept, and work that is broken off. */
import { execFileSync } from "node:child_process";
import { hash } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { usesIn } from "../../server/cli/run/plan.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { useSummary } from "../../server/workspace/uses.ts";
import { generate } from "../helpers/generate.ts";
import { builtProgram } from "../helpers/program.ts";
import { random } from "../helpers/random.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

let threads: { program: string; count: number };
beforeAll(async () => {
  threads = { program: await builtProgram(), count: 2 };
});

const board = `wayfile 1
board B "Annexe" {
  fed-from     supply
  main-switch  BS EN 60947-3 100 A
${faultyWay}
}
`;

/** Sound and faulty schedules, some with a board that several of them use, enough of them for two threads. */
function manySchedules(count = 24): Record<string, string> {
  const files: Record<string, string> = { "shared/board.ways": board, "alone.ways": board };
  for (let index = 0; index < count; index++) {
    const before = 'use "../shared/board.ways"\n';
    files[`site-${index % 7}/${index}.ways`] =
      index % 3 === 0
        ? schedule(faultyWay, { before, stage: index % 2 ? "design" : "tested" })
        : generate({ ways: 3, seed: index });
  }
  return files;
}

const reading = ["text", "json"] as const;

describe("several threads", () => {
  test.each(reading)("report what one does, in the same order, as %s", async (format) => {
    const folder = new Folder(manySchedules());
    const alone = await folder.run("check", "--format", format);
    const together = await folder.runWith({ threads }, "check", "--threads", "2", "--format", format);
    expect(alone.out).toContain("loop/zs-over-limit");
    expect(together).toEqual(alone);
  });

  test("a file that many schedules use is reported once, when the last of them is checked", async () => {
    const folder = new Folder(manySchedules(12));
    const { out } = await folder.run("check", "--format", "json");
    const paths: string[] = JSON.parse(out).files.map(({ path }: { path: string }) => path);
    expect(paths.filter((path) => path === "shared/board.ways")).toHaveLength(1);
    expect(new Set(paths).size).toBe(14);
  });

  test("a thread that comes down takes one schedule with it, and the run says so", async () => {
    const folder = new Folder({
      ...manySchedules(),
      "crashing.mjs": `import { parentPort } from "node:worker_threads";
        parentPort.on("message", ({ id, tasks }) => {
          if (tasks.some(({ files: [root] }) => root.endsWith("/20.ways"))) throw new Error("broken");
          parentPort.postMessage({ id, results: tasks.map(() => ({ root: "", name: "", files: [], suppressed: [], unattached: false })) });
        });`,
    });
    const { code, err } = await folder.runWith(
      { threads: { program: folder.at("crashing.mjs"), count: 2 } },
      "check",
      "--threads",
      "2",
    );
    expect(err).toBe("“site-6/20.ways” could not be checked: broken.\n");
    expect(code).toBe(2);
  });
});

describe("results that are kept", () => {
  const kept = (folder: Folder) => ({ cache: { folder: folder.at("cache"), program: "one" } });
  const entries = (folder: Folder): string[] =>
    readdirSync(folder.at("cache/one"), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name));

  test("give the same report, and nothing is checked again", async () => {
    const folder = new Folder({ "a.ways": schedule(faultyWay) });
    const first = await folder.runWith(kept(folder), "check");
    const [entry = "", ...others] = entries(folder);
    expect(others).toEqual([]);
    expect(await folder.runWith(kept(folder), "check")).toEqual(first);
    // What the entry says is what is reported: so it was read.
    const said = readFileSync(entry, "utf8");
    expect(said).toContain("loop/zs-over-limit");
  });

  test("are not used for another text, another used text, another name or another program", async () => {
    const folder = new Folder({ "a.ways": schedule("", { before: 'use "b.ways"\n' }), "b.ways": board });
    const count = async (settings = kept(folder)): Promise<number> => {
      await folder.runWith(settings, "check", "a.ways");
      return entries(folder).length;
    };
    expect(await count()).toBe(1);
    expect(await count()).toBe(1);
    folder.write("b.ways", board.replace("1.52", "1.02"));
    expect(await count()).toBe(2);
    expect((await folder.runWith(kept(folder), "check", "a.ways")).code).toBe(0);
    folder.write("b.ways", board);
    expect((await folder.runWith(kept(folder), "check", "a.ways")).code).toBe(1);
    await folder.runWith({ cache: { folder: folder.at("cache"), program: "two" } }, "check", "a.ways");
    expect(readdirSync(folder.at("cache")).sort()).toEqual(["one", "tidied", "two"]);
    expect(await count()).toBe(2);
  });

  /** Registers and checks in any order, with what is kept by the one before. */
  test.each([
    ["check", "register"],
    ["register", "check"],
  ])("by %s serve %s, which says what it says without them", async (first, second) => {
    const several = `${schedule(faultyWay)}${schedule(faultyWay).replace("wayfile 1\n", "").replace("Wharf", "Quay")}`;
    const departed = schedule(faultyWay.replace("      live", '      departure 411.4.4 "Agreed"\n      live'));
    const folder = new Folder({ ...manySchedules(4), "several.ways": several, "departed.ways": departed });
    const fresh = await folder.run(second, "--format", "json");
    await folder.runWith(kept(folder), first);
    const before = entries(folder).length;
    expect(await folder.runWith(kept(folder), second, "--format", "json")).toEqual(fresh);
    // A register keeps both; what a check kept is added to.
    expect(entries(folder).length - before).toBe(first === "check" ? before : 0);
    expect(await folder.runWith(kept(folder), second, "--format", "json")).toEqual(fresh);
    expect(await folder.runWith(kept(folder), first, "--format", "json")).toEqual(
      await folder.run(first, "--format", "json"),
    );
  });

  test("by a check are what a register counts by", async () => {
    const folder = new Folder({ "a.ways": schedule(faultyWay) });
    await folder.runWith(kept(folder), "check");
    const [entry = ""] = entries(folder);
    const [sum = "", body = ""] = readFileSync(entry, "utf8").split("\n");
    const result = JSON.parse(body);
    const none = JSON.stringify({ ...result, files: result.files.map((file: object) => ({ ...file, findings: [] })) });
    const content = entry.slice(folder.at("cache/one").length + 1).replace("/", "");
    writeFileSync(entry, `${hash("sha256", `${content}\n${none}`, "hex")}\n${none}`);
    expect(sum).toBe(hash("sha256", `${content}\n${body}`, "hex"));
    const { out } = await folder.runWith(kept(folder), "register", "--format", "json");
    expect(JSON.parse(out).installations[0]).toMatchObject({ errors: 0, warnings: 0 });
  });

  test.each([
    ["cut off", (text: string) => text.slice(0, -40)],
    ["of another program", () => '{"files": []}'],
    ["changed by hand", (text: string) => text.replace("loop/zs-over-limit", "loop/zs-under-limit")],
    ["empty", () => ""],
  ])("are not believed where they are %s", async (_, damage) => {
    const folder = new Folder({ "a.ways": schedule(faultyWay) });
    const first = await folder.runWith(kept(folder), "check");
    for (const entry of entries(folder)) writeFileSync(entry, damage(readFileSync(entry, "utf8")));
    expect(await folder.runWith(kept(folder), "check")).toEqual(first);
  });

  test("are done without where they cannot be kept, and where that is asked", async () => {
    const folder = new Folder({ "a.ways": schedule(faultyWay), cache: "a file, not a folder" });
    expect((await folder.runWith(kept(folder), "check")).code).toBe(1);
    const other = new Folder({ "a.ways": schedule(faultyWay) });
    expect((await other.runWith(kept(other), "check", "--no-cache")).code).toBe(1);
    expect(readdirSync(other.path)).toEqual(["a.ways"]);
  });
});

describe("long work", () => {
  /** A clock on which every look takes a second. */
  const slow = (): (() => number) => {
    let now = 0;
    return () => {
      now += 1000;
      return now;
    };
  };

  test("says how far it is", async () => {
    const { err } = await new Folder(manySchedules(30)).runWith({ clock: slow() }, "check");
    expect(err).toMatch(/^\d+ files found, reading\n/);
    expect(err).toMatch(/\n\d+ of 32 files checked\n/);
  });

  test("that is interrupted reports what is known, says that it is not all, and has an exit code of its own", async () => {
    let asked = 0;
    const interrupted = () => ++asked > 45;
    const folder = new Folder(manySchedules(30));
    const whole = await folder.run("check");
    const { code, out, err } = await folder.runWith({ clock: slow(), interrupted }, "check");
    expect(code).toBe(130);
    expect(err).toMatch(/Interrupted: \d+ files checked, \d+ left out\. This report is not whole\.\n$/);
    expect(out.length).toBeLessThan(whole.out.length);
    expect(out).toMatch(/\d+ files, .*: \d+ errors?/);
  });

  test("that is interrupted leaves the file of its report as it was", async () => {
    let asked = 0;
    const folder = new Folder({ ...manySchedules(30), "report.json": "the last one" });
    const stopping = { clock: slow(), interrupted: () => ++asked > 45 };
    const { code, err } = await folder.runWith(stopping, "check", "--format", "json", "--output-file", "report.json");
    expect(code).toBe(130);
    expect(err).toMatch(/\n“report\.json” was not written\.\nInterrupted: \d+ files checked/);
    expect(readFileSync(folder.at("report.json"), "utf8")).toBe("the last one");
    expect(readdirSync(folder.path).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  test("that is interrupted while it reads says that nothing was checked", async () => {
    const interrupted = () => true;
    const { code, out, err } = await new Folder(manySchedules(30)).runWith({ clock: slow(), interrupted }, "check");
    expect(code).toBe(130);
    expect(err).toContain("Interrupted: 0 files checked, 32 left out. This report is not whole.\n");
    expect(out).toMatch(/^0 files/);
  });

  test("reports its first findings while the threads have not answered yet", async () => {
    let asked = 0;
    const folder = new Folder({ ...manySchedules(), "silent.mjs": "setInterval(() => {}, 1000);" });
    const silent = { program: folder.at("silent.mjs"), count: 2 };
    const stopping = { clock: slow(), interrupted: () => ++asked > 30, threads: silent };
    const { code, out, err } = await folder.runWith(stopping, "check", "--threads", "2", "--format", "concise");
    expect(out).toContain("loop/zs-over-limit");
    expect(err).toMatch(/Interrupted: [1-9]\d* files checked, [1-9]\d* left out/);
    expect(code).toBe(130);
  });

  test("with threads can be interrupted too", async () => {
    let asked = 0;
    const folder = new Folder(manySchedules(24));
    const stopping = { clock: slow(), interrupted: () => ++asked > 32, threads };
    const { code } = await folder.runWith(stopping, "check", "--threads", "2");
    expect(code).toBe(130);
  });
});

describe("files of every kind among many", () => {
  const bad: Record<string, string | Uint8Array> = {
    "bad/utf-16.ways": new Uint8Array([0xff, 0xfe, 0x77, 0x00]),
    "bad/latin-1.ways": new Uint8Array([0x77, 0x61, 0xb0, 0x0a]),
    "bad/nul.ways": "wayfile 1\n\0",
    "bad/large.ways": "#".repeat(8_000_001),
  };

  test("found in a folder are read as where they are named, and what cannot be read stops nothing", async () => {
    const marked = `\ufeff${schedule(faultyWay)}`;
    const folder = new Folder({ ...manySchedules(), ...bad, "bad/marked.ways": marked, "empty.ways": "" });
    symlinkSync(folder.at("bad/marked.ways"), folder.at("linked.ways"));
    symlinkSync(folder.at("nowhere"), folder.at("astray.ways"));
    execFileSync("mkfifo", [folder.at("bad/pipe.ways")]);
    mkdirSync(folder.at("bad/folder.ways"));
    const found = await folder.run("check", "--format", "json");
    expect(found.code).toBe(2);
    const names = Object.keys(bad).sort();
    for (const name of names) {
      const { err } = await folder.run("check", name);
      expect(err).toMatch(new RegExp(`^“${name}” cannot be read: `));
      expect(found.err).toContain(err);
    }
    expect(found.err.match(/ cannot be read: /g)).toHaveLength(names.length + 1);
    expect(found.err).toContain("“astray.ways” cannot be read: there is no such file.\n");
    const files: { path: string; findings: unknown[] }[] = JSON.parse(found.out).files;
    const of = (path: string) => files.find((file) => file.path === path);
    expect(files).toHaveLength(28);
    expect(of("empty.ways")?.findings).toEqual([]);
    const named = JSON.parse((await folder.run("check", "--format", "json", "bad/marked.ways")).out).files[0];
    expect(of("bad/marked.ways")).toEqual(named);
    expect(named.findings.map(({ check }: { check: string }) => check)).toContain("loop/zs-over-limit");
  });

  test("with results that are kept, a file is known again with its byte order mark and without", async () => {
    const folder = new Folder({ "a.ways": `\ufeff${schedule(faultyWay)}`, "b.ways": 'wayfile 1\nuse "a.ways"\n' });
    const kept = { cache: { folder: folder.at("cache"), program: "one" } };
    const first = await folder.runWith(kept, "check");
    expect(first.out).toContain("loop/zs-over-limit");
    expect(await folder.runWith(kept, "check")).toEqual(first);
    folder.write("a.ways", schedule(faultyWay));
    expect(await folder.runWith(kept, "check")).toEqual(first);
  });
});

/** A piece of a text taken out, doubled, or replaced by a sign that means something. */
function mutated(text: string, next: () => number): string {
  const at = Math.floor(next() * Math.min(text.length, 260));
  const to = at + Math.floor(next() * 12);
  const signs = ["", '"', "{", "}", "\n", "use", 'use "x.ways"', "#", " ", "\r"];
  const put = signs[Math.floor(next() * signs.length)] ?? "";
  return text.slice(0, at) + put + (next() < 0.5 ? text.slice(to) : text.slice(at));
}

test("what a text uses is told from its first lines as from the whole of it", () => {
  const next = random(5);
  const text = `# notes on use "of lines"\nwayfile 1\nuse "a.ways"\n\nuse "../b.ways"  # and "c"\ninstrument M1 "Tester" {\n  due 2026-11-03\n}\nuse "late.ways"\n${schedule(faultyWay).slice("wayfile 1\n".length)}`;
  const variants = [
    text,
    text.replace('use "late.ways"\n', ""),
    text.replace("\n}", "\n"),
    text.replaceAll("\n", "\r\n"),
  ];
  for (let round = 0; round < 200; round++) variants.push(mutated(variants[round % 4] ?? "", next));
  for (const variant of variants) {
    expect(usesIn(variant), variant).toEqual(useSummary(documentOf(variant).segments, (use) => use).uses);
  }
});
