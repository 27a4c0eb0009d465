/** A check divided among machines, and one of what changed in git. */
import { execFile, execFileSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, utimesSync } from "node:fs";
import { promisify } from "node:util";
import { describe, expect, test } from "vitest";
import { generate } from "../helpers/generate.ts";
import { builtProgram } from "../helpers/program.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const board = `wayfile 1\nboard B "Annexe" {\n  fed-from     supply\n  main-switch  BS EN 60947-3 100 A\n${faultyWay}\n}\n`;

function files(): Record<string, string> {
  const all: Record<string, string> = { "shared/board.ways": board };
  for (let index = 0; index < 9; index++) {
    const before = index % 2 ? 'use "../shared/board.ways"\n' : "";
    const own = index % 4 === 3 ? `${faultyWay}\n` : "";
    all[`site-${index}/a.ways`] = index === 4 ? generate({ ways: 5, seed: 3 }) : schedule(own, { before });
  }
  return all;
}

const parts = async (folder: Folder, of: number): Promise<string[]> => {
  const names: string[] = [];
  for (let index = 1; index <= of; index++) {
    const name = `part-${index}.jsonl`;
    const { code, err } = await folder.run("check", "--shard", `${index}/${of}`, "--output-file", name);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    names.push(name);
  }
  return names;
};

describe("shards", () => {
  test.each(["text", "json", "sarif"])("gathered give the report of one run, as %s", async (format) => {
    const folder = new Folder(files());
    const whole = await folder.run("check", "--format", format, "--fail-level", "warning");
    expect(whole.out).toContain("loop/zs-over-limit");
    const names = await parts(folder, 3);
    expect(await folder.run("gather", "--format", format, "--fail-level", "warning", ...names.toReversed())).toEqual(
      whole,
    );
  });

  test("that are empty are no failure", async () => {
    const folder = new Folder({ "a.ways": schedule(faultyWay) });
    const names = await parts(folder, 4);
    expect(await folder.run("gather", ...names)).toEqual(await folder.run("check", "a.ways"));
  });

  test("are refused where one is missing, twice here, cut off, of another run or nothing of the kind", async () => {
    const folder = new Folder(files());
    const [one = "", two = ""] = await parts(folder, 2);
    const refusal = async (...names: string[]): Promise<string> => {
      const { code, out, err } = await folder.run("gather", ...names);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      return err;
    };
    expect(await refusal(one)).toBe("1 shard of 2 missing: 2.\n");
    expect(await refusal(one, two, two)).toBe("Shard 2/2 is here twice.\n");
    folder.write("cut.jsonl", readFileSync(folder.at(two), "utf8").split("\n").slice(0, -2).join("\n"));
    expect(await refusal(one, "cut.jsonl")).toBe(
      "“cut.jsonl” cannot be gathered: it was cut off: run that shard again.\n",
    );
    folder.write("damaged.jsonl", readFileSync(folder.at(two), "utf8").replace("loop/zs-over", "loop/zs-under"));
    expect(await refusal(one, "damaged.jsonl")).toBe(
      "“damaged.jsonl” cannot be gathered: it is damaged: run that shard again.\n",
    );
    expect(await refusal(one, "gone.jsonl")).toBe("“gone.jsonl” cannot be gathered: there is no such file.\n");
    expect(await refusal(one, "site-0/a.ways")).toContain("it is not a part of a run");
    folder.write("site-0/a.ways", schedule(faultyWay));
    await folder.run("check", "--shard", "2/2", "--output-file", "other.jsonl");
    expect(await refusal(one, "other.jsonl")).toMatch(/^These are parts of different runs/);
  });

  /** It is broken off once it has let others in so many times. */
  const stopped = (after: number) => {
    let [now, breath] = [0, 0];
    return { clock: () => (now += 1000), interrupted: () => ++breath >= after };
  };

  test("that are interrupted leave their files as they were, and so does what gathers them", async () => {
    const folder = new Folder({ ...files(), "all.json": "the last one" });
    const names = await parts(folder, 2);
    const before = readFileSync(folder.at("part-1.jsonl"), "utf8");
    const shard = ["check", "--shard", "1/2", "--output-file", "part-1.jsonl"];
    expect(await folder.runWith(stopped(11), ...shard)).toMatchObject({
      code: 130,
      out: "",
      err: expect.stringMatching(/“part-1\.jsonl” was not written\.\nInterrupted: this part is not whole\.\n$/),
    });
    expect(readFileSync(folder.at("part-1.jsonl"), "utf8")).toBe(before);
    const gathered = await folder.runWith(stopped(2), "gather", "--output-file", "all.json", ...names);
    expect(gathered).toMatchObject({
      code: 130,
      err: expect.stringMatching(/“all\.json” was not written\.\nInterrupted: \d+ files? checked, [1-9]\d* left out\./),
    });
    expect(readFileSync(folder.at("all.json"), "utf8")).toBe("the last one");
    expect(readdirSync(folder.path).filter((name) => name.endsWith(".tmp"))).toEqual([]);
    // On standard output it says of itself that it is none.
    const { out } = await folder.runWith(stopped(11), "check", "--shard", "1/2");
    folder.write("part-1.jsonl", out);
    expect(await folder.run("gather", ...names)).toEqual({
      code: 2,
      out: "",
      err: "Shard 1/2 was interrupted: run it again.\n",
    });
  });

  test("run side by side by an engine that is there already, as the guide shows it", async () => {
    const folder = new Folder(files());
    const program = `'${process.execPath}' '${await builtProgram()}'`;
    const line = `seq 2 | xargs -P 2 -I{} ${program} check --shard {}/2 --output-file part-{}.jsonl . && ${program} gather --format json part-*.jsonl`;
    const ran = await promisify(execFile)("sh", ["-c", line], { cwd: folder.path }).catch((error) => error);
    expect(ran.code).toBe(1);
    for (const name of ["part-1.jsonl", "part-2.jsonl"]) rmSync(folder.at(name));
    expect(ran.stdout).toBe((await folder.run("check", "--format", "json")).out);
  });
});

describe("since a revision", () => {
  const git = (folder: Folder, ...args: string[]) =>
    execFileSync("git", ["-c", "user.name=T", "-c", "user.email=t@localhost", ...args], {
      cwd: folder.path,
      stdio: "pipe",
    });

  test("what changed is checked, what is new, and all that uses it", async () => {
    const folder = new Folder(files());
    git(folder, "init", "-q", "-b", "main");
    git(folder, "add", "-A");
    git(folder, "commit", "-qm", "First");
    const checked = async (revision = "HEAD"): Promise<string[]> => {
      const { out, err } = await folder.run("check", "--since", revision, "--format", "json");
      expect(err).toBe("");
      return JSON.parse(out)
        .files.map(({ path }: { path: string }) => path)
        .sort();
    };
    expect(await checked()).toEqual([]);
    folder.write("site-2/a.ways", readFileSync(folder.at("site-2/a.ways"), "utf8"));
    utimesSync(folder.at("site-2/a.ways"), 1, 1);
    expect(await checked()).toEqual([]);
    folder.write("site-0/a.ways", schedule(faultyWay));
    folder.write("new.ways", schedule(""));
    expect(await checked()).toEqual(["new.ways", "site-0/a.ways"]);
    git(folder, "add", "-A");
    git(folder, "commit", "-qm", "Second");
    expect(await checked()).toEqual([]);
    expect(await checked("HEAD~1")).toEqual(["new.ways", "site-0/a.ways"]);
    folder.write("shared/board.ways", board.replace("1.52", "1.62"));
    const users = [1, 3, 5, 7].map((index) => `site-${index}/a.ways`);
    expect(await checked()).toEqual(["shared/board.ways", ...users]);
  });

  test("that is not there, or where there is no git, is refused", async () => {
    const folder = new Folder({ "a.ways": schedule("") });
    expect((await folder.run("check", "--since", "HEAD")).code).toBe(2);
    git(folder, "init", "-q");
    const { code, err } = await folder.run("check", "--since", "gone");
    expect({ code, err }).toEqual({ code: 2, err: "There is no revision “gone” in this repository.\n" });
  });
});
