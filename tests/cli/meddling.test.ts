/** What happens to files while a command works with them, step by step: it is killed, or a file is another one now. */
import { spawn } from "node:child_process";
import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { builtProgram } from "../helpers/program.ts";
import { Folder, faultyWay, type Ran, schedule } from "./run.ts";

let program = "";
beforeAll(async () => {
  program = await builtProgram();
});

const hook = join(import.meta.dirname, "../helpers/meddling.cjs");

type Ended = Ran & { readonly signal: NodeJS.Signals | null };

/** Runs the program as a process of its own. `meddle`: what happens to it meanwhile. */
function run(folder: Folder, args: readonly string[], meddle?: object, cache = "cache"): Promise<Ended> {
  const env = { ...process.env, WAYFILE_CACHE: folder.at(cache), MEDDLE: JSON.stringify(meddle) };
  const child = spawn(process.execPath, [...(meddle ? ["--require", hook] : []), program, ...args], {
    cwd: folder.path,
    env,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let [out, err] = ["", ""];
  child.stdout.on("data", (text) => {
    out += text;
  });
  child.stderr.on("data", (text) => {
    err += text;
  });
  return new Promise((resolve) =>
    child.on("close", (code, signal) => resolve({ code: code ?? -1, signal, out, err: withoutProgress(err) })),
  );
}

/** How far it is, it says by the clock, and without a full stop. */
const withoutProgress = (err: string): string => err.replace(/^.*[^.\n]\n/gm, "");

const untidy = schedule(faultyWay).replaceAll("      ", "   ");
const noVersion = schedule(faultyWay).replace("wayfile 1\n", "");

/** What lies in a folder, but for what the program keeps for itself. */
const contents = (folder: Folder): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder.at("work")).map((name) => [name, readFileSync(folder.at(`work/${name}`), "utf8")]),
  );

const isLeftover = (name: string): boolean => /\.tmp$/.test(name);

describe("a command that is killed at any step of its writing", () => {
  const commands = [
    ["fmt", ["fmt", "--no-cache", "work"], untidy],
    ["check --fix", ["check", "--fix", "--no-cache", "work/a.ways"], noVersion],
    ["check --shard", ["check", "--shard", "1/1", "--no-cache", "--output-file", "work/part.jsonl", "work"], untidy],
    ["register", ["register", "--no-cache", "-o", "work/list.html", "work"], untidy],
  ] as const;

  test.each(commands)(
    "%s leaves each file as it was or as it is to be, and can be run again",
    async (_, args, text) => {
      const before = { "work/a.ways": text, "work/b.ways": text.replace("Wharf", "Quay") };
      const whole = new Folder(before);
      const { code } = await run(whole, args);
      const after = contents(whole);
      const torn: string[] = [];
      const killed: Folder[] = [];
      for (let step = 1; ; step++) {
        const folder = new Folder(before);
        const { signal } = await run(folder, args, { kill: step, under: folder.at("work") });
        if (signal === null) break;
        killed.push(folder);
        for (const [name, now] of Object.entries(contents(folder))) {
          const was = (before as Record<string, string>)[`work/${name}`];
          if (!isLeftover(name) && now !== was && now !== after[name]) torn.push(`${name} at step ${step}`);
        }
      }
      expect(torn).toEqual([]);
      expect(killed.length).toBeGreaterThanOrEqual(2);
      const folder = killed[Math.floor(killed.length / 2)] as Folder;
      expect((await run(folder, args)).code).toBe(code);
      expect(Object.entries(contents(folder)).filter(([name]) => !isLeftover(name))).toEqual(Object.entries(after));
    },
  );

  test("check leaves nothing among what it keeps that a later run believes and that is not whole", async () => {
    const folder = new Folder({ "work/a.ways": untidy });
    const args = ["check", "work"];
    const whole = await run(folder, args, undefined, "other");
    for (let step = 1; ; step++) {
      rmSync(folder.at("cache"), { recursive: true, force: true });
      const { signal } = await run(folder, args, { kill: step, under: folder.at("cache") });
      expect(await run(folder, args)).toEqual(whole);
      if (signal === null) return;
    }
  });
});

describe("a file that is another one just as it is opened", () => {
  const kinds = ["nothing", "folder", "pipe", "link", "\u0000"];
  const commands: readonly (readonly string[])[] = [
    ["check", "--no-cache", "--format", "concise", "work"],
    ["fmt", "--no-cache", "--check", "work"],
    ["register", "--no-cache", "work"],
    ["compare", "--no-cache", "other", "work"],
  ];
  const cases = commands.flatMap((args) => kinds.map((into) => [args[0] ?? "", into, args] as const));

  test.each(cases)(
    "%s, which finds %j there, ends in good order and tells of the other files",
    async (_, into, args) => {
      const files = { "work/a.ways": untidy, "work/b.ways": untidy.replace("Wharf", "Quay"), "work/c.ways": noVersion };
      const folder = new Folder({ ...files, "other/a.ways": schedule(""), "other/c.ways": noVersion });
      const { code, signal, out, err } = await run(folder, args, { at: 2, path: folder.at("work/b.ways"), into });
      expect({ signal, isCode: [0, 1, 2].includes(code) }).toEqual({ signal: null, isCode: true });
      expect(`${out}${err}`).not.toMatch(/\n\s+at |node:internal|undefined/);
      expect(out).not.toBe("");
      expect(err.split("\n").filter((line) => !/^(?:“work\/b\.ways” .*\.)?$/.test(line))).toEqual([]);
    },
  );
});

test("two runs at once over one folder and one cache say what one says, and leave what a third can use", async () => {
  const files = Object.fromEntries(Array.from({ length: 6 }, (_, index) => [`work/${index}.ways`, untidy]));
  const folder = new Folder(files);
  const args = ["check", "--format", "json", "work"];
  const alone = await run(folder, args, undefined, "other");
  const [one, two] = await Promise.all([run(folder, args), run(folder, args)]);
  expect([one, two]).toEqual([alone, alone]);
  expect(await run(folder, args)).toEqual(alone);
  expect(readdirSync(folder.at("cache"), { recursive: true }).filter((name) => isLeftover(String(name)))).toEqual([]);
});

test("what was written anew while it was laid out stays, and is not called formatted", async () => {
  const folder = new Folder({ "work/a.ways": untidy, "work/b.ways": "wayfile 1\n" });
  const path = folder.at("work/a.ways");
  const { code, out, err } = await run(folder, ["fmt", "--no-cache", "work"], { at: 3, path, into: "wayfile 1\n" });
  expect(err).toBe("“work/a.ways” cannot be written: it was changed meanwhile. Run this again.\n");
  expect({ code, out }).toEqual({ code: 2, out: "2 files, 1 not laid out, the rest already formatted.\n" });
  expect(contents(folder)["a.ways"]).toBe("wayfile 1\n");
});
