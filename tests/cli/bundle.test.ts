/** The shipped file as a process of its own: what only a process can show. */
import { execFile, execFileSync, spawn } from "node:child_process";
import { closeSync, existsSync, openSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { generate } from "../helpers/generate.ts";
import { Folder, faultyWay, type Ran, schedule } from "./run.ts";

const bundle = join(import.meta.dirname, "../../dist/wayfile.cjs");

interface Started {
  readonly cwd: string;
  readonly input?: string;
  readonly env?: Readonly<Record<string, string>>;
}

function start({ cwd, input = "", env = {} }: Started, ...args: string[]): Promise<Ran> {
  return new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [bundle, ...args],
      { cwd, env: { ...process.env, ...env } },
      (error, out, err) => resolve({ code: error ? Number(error.code) : 0, out, err }),
    );
    child.stdin?.end(input);
  });
}

const faulty = () => new Folder({ "a.ways": schedule(faultyWay) });

test("says the same as the same code in this process", async () => {
  const folder = faulty();
  expect(await start({ cwd: folder.path }, "check")).toEqual(await folder.run("check"));
});

// What a table is for, and its notes, lie in another part of the program than its figures.
test.each(["table 64", "table 41.3", "settings"])(
  "explains %s as the same code in this process does",
  async (subject) => {
    const folder = faulty();
    expect(await start({ cwd: folder.path }, "explain", subject)).toEqual(await folder.run("explain", subject));
  },
);

test("reads standard input", async () => {
  const { out, code } = await start({ cwd: faulty().path, input: "wayfile 1\nnonsense\n" }, "check", "-");
  expect(out).toContain("--> (standard input):2:1");
  expect(code).toBe(1);
});

test("lays out from standard input to standard output", async () => {
  const { out, code } = await start({ cwd: faulty().path, input: "wayfile    1\n" }, "fmt", "-");
  expect({ out, code }).toEqual({ out: "wayfile 1\n", code: 0 });
});

test("ends with 2 where something could not be done", async () => {
  const { err, code } = await start({ cwd: faulty().path }, "check", "gone.ways");
  expect({ err, code }).toEqual({ err: "There is no file or folder “gone.ways”.\n", code: 2 });
});

test.each([
  [{ CI: "1" }, [], false],
  [{ CI: "1", FORCE_COLOR: "0" }, [], false],
  [{ CI: "1", FORCE_COLOR: "1" }, [], true],
  [{ FORCE_COLOR: "1", NO_COLOR: "1" }, [], false],
  [{ FORCE_COLOR: "1" }, ["--color", "never"], false],
  [{ NO_COLOR: "1" }, ["--color", "always"], true],
])("writes colour into a pipe with %o %o: %s", async (env, options, wanted) => {
  const plain = { FORCE_COLOR: "", NO_COLOR: "", CI: "" };
  const { out } = await start({ cwd: faulty().path, env: { ...plain, ...env } }, "check", ...options);
  expect(out.includes("\u001b")).toBe(wanted);
});

test.each(["cache", "cache/below"])(
  "where the folder of caches would be %s, and that is a file, all is checked",
  async (place) => {
    const folder = new Folder({ "a.ways": schedule(faultyWay), cache: "a file" });
    const found = await start({ cwd: folder.path, env: { WAYFILE_CACHE: folder.at(place) } }, "check");
    expect(found).toEqual(await folder.run("check"));
  },
);

test("shows its first findings long before the last, and Ctrl-C leaves what is known in order", async () => {
  const files = Array.from({ length: 600 }, (_, index) => [
    `${String(index).padStart(3, "0")}.ways`,
    index % 2 === 0 ? schedule(faultyWay) : generate({ ways: 12, seed: index }),
  ]);
  const folder = new Folder(Object.fromEntries(files));
  const args = [bundle, "check", "--no-cache", "--format", "concise"];
  const child = spawn(process.execPath, args, { cwd: folder.path, stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  let err = "";
  child.stderr.on("data", (chunk) => {
    err += chunk;
  });
  child.stdout.on("data", (chunk) => {
    // The person has seen a finding and wants to stop.
    if (out === "") child.kill("SIGINT");
    out += chunk;
  });
  const code = await new Promise((resolve) => child.once("close", resolve));
  expect(code).toBe(130);
  const [, done = "", left = ""] =
    /Interrupted: (\d+) files? checked, (\d+) left out\. This report is not whole\./.exec(err) ?? [];
  expect(Number(done)).toBeGreaterThan(0);
  expect(Number(done) + Number(left)).toBe(600);
  const reported = [...out.matchAll(/^(\d{3})\.ways:\d+:\d+: error loop\/zs-over-limit/gm)].map(([, name]) =>
    Number(name),
  );
  expect(reported).toEqual(Array.from({ length: Math.ceil(Number(done) / 2) }, (_, index) => index * 2));
});

test("is not upset by a reader that leaves early", async () => {
  const folder = new Folder({ "a.ways": `wayfile 1\n${"nonsense\n".repeat(20_000)}` });
  const child = spawn(process.execPath, [bundle, "check"], { cwd: folder.path, stdio: ["ignore", "pipe", "pipe"] });
  let err = "";
  child.stderr.on("data", (chunk) => {
    err += chunk;
  });
  child.stdout.once("data", () => child.stdout.destroy());
  const code = await new Promise((resolve) => child.once("close", resolve));
  expect({ code, err }).toEqual({ code: 1, err: "" });
});

test("writes all of a long report into a pipe", () => {
  const folder = new Folder({ "a.ways": `wayfile 1\n${"nonsense\n".repeat(20_000)}` });
  const out = execFileSync("sh", ["-c", `"${process.execPath}" "${bundle}" check --format json | cat`], {
    cwd: folder.path,
    encoding: "utf8",
    maxBuffer: 100_000_000,
  });
  expect(JSON.parse(out).summary.errors).toBe(20_000);
});

test.runIf(existsSync("/dev/full"))("ends with 2 and one sentence where what it found cannot be written", async () => {
  const folder = new Folder({ "ok.ways": "wayfile 1\n", "a.ways": schedule(faultyWay) });
  for (const args of [
    ["check", "ok.ways"],
    ["check", "a.ways"],
    ["check", "--format", "json", "a.ways"],
    ["fmt", "--check", "ok.ways"],
    ["explain"],
  ]) {
    const full = openSync("/dev/full", "w");
    const child = spawn(process.execPath, [bundle, ...args], { cwd: folder.path, stdio: ["ignore", full, "pipe"] });
    let err = "";
    child.stderr?.on("data", (chunk) => {
      err += chunk;
    });
    const code = await new Promise((resolve) => child.once("close", resolve));
    closeSync(full);
    expect({ args, code, err }).toEqual({ args, code: 2, err: "The output cannot be written: the disk is full.\n" });
  }
});
