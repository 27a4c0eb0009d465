/** A repository set up for schedules, by the program as it is started from a shell, and proved with a real git. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it, vi } from "vitest";
import { TestRepository } from "../helpers/repository.ts";
import { faultyWay, runIn as run, schedule } from "./run.ts";

const sound = schedule("    way 1 spare");
const faulty = schedule(faultyWay);

// Each merge starts this program anew.
vi.setConfig({ testTimeout: 300_000 });

const repositories: TestRepository[] = [];
afterAll(() => {
  vi.resetConfig();
  for (const repository of repositories) repository.end();
});

function repository(files: Readonly<Record<string, string>>): TestRepository {
  const made = new TestRepository();
  repositories.push(made);
  made.commit("Base", files);
  return made;
}

const stateOf = (made: TestRepository): string[] => [
  readFileSync(join(made.folder, ".git/config"), "utf8"),
  ...["info/attributes", "hooks/pre-commit", "hooks/pre-merge-commit"].map((name) => {
    const path = join(made.folder, ".git", name);
    return existsSync(path) ? readFileSync(path, "utf8") : "none";
  }),
];

describe("wayfile git setup", () => {
  it("writes nothing on a dry run, is proved by doctor, does nothing twice and is undone without a trace", async () => {
    const made = repository({ "it's here/house.ways": sound });
    const folder = join(made.folder, "it's here");
    const before = stateOf(made);
    expect((await run(folder, "git", "setup", "--dry-run")).out).toContain(
      "Would be written: git config merge.wayfile.driver",
    );
    expect(stateOf(made)).toEqual(before);
    expect((await run(folder, "git", "doctor")).code).toBe(1);
    expect((await run(folder, "git", "setup")).code).toBe(0);
    const doctor = await run(folder, "git", "doctor");
    expect(doctor.out.replace(/^(ok|fault) .*/gm, "$1")).toBe("ok\nok\nok\nok\nok\n");
    expect(doctor.code).toBe(0);
    expect((await run(folder, "git", "setup")).out).toBe("All is set up already.\n");
    expect((await run(folder, "git", "setup", "--undo")).code).toBe(0);
    const emptied = (text: string | undefined) => text?.replace(/^\[(merge|diff) "wayfile"\]\n/gm, "");
    expect(stateOf(made).map(emptied)).toEqual(before);
  });

  it("leaves hooks and attributes of others alone, and says what to add", async () => {
    const made = repository({ "house.ways": sound });
    mkdirSync(join(made.folder, ".git/info"), { recursive: true });
    mkdirSync(join(made.folder, ".git/hooks"), { recursive: true });
    writeFileSync(join(made.folder, ".git/info/attributes"), "*.ways merge=union\n");
    writeFileSync(join(made.folder, ".git/hooks/pre-commit"), "#!/bin/sh\nexit 0\n");
    const { code, out } = await run(made.folder, "git", "setup");
    expect(code).toBe(1);
    expect(out).toContain("It has a line for schedules already: “*.ways merge=union”.");
    expect(out).toContain("Add this line to it: wayfile check --staged --no-info");
    expect(stateOf(made).slice(1, 3)).toEqual(["*.ways merge=union\n", "#!/bin/sh\nexit 0\n"]);
    expect((await run(made.folder, "git", "doctor")).out).toContain("do not name Wayfile for merges and diffs.");
  });

  it("holds in a worktree, and where a driver is gone git merges by lines and neither side is lost", async () => {
    const made = repository({ "house.ways": schedule('    way 1 radial "First" {\n      length  18 m\n    }') });
    await run(made.folder, "git", "setup", "--no-hooks");
    made.git("worktree", "add", "-q", join(made.folder, "beside"), "-b", "beside");
    expect((await run(join(made.folder, "beside"), "git", "doctor")).out.match(/^ok /gm)).toHaveLength(4);
    const driver = made.git("config", "merge.wayfile.driver").trim();
    made.git("config", "merge.wayfile.driver", driver.replaceAll("main.cli.ts", "gone.ts"));
    const text = readFileSync(join(made.folder, "house.ways"), "utf8");
    made.git("checkout", "-q", "-b", "theirs");
    made.commit("Theirs", { "house.ways": text.replace("18 m", "21 m") });
    made.git("checkout", "-q", "main");
    made.commit("Ours", { "house.ways": text.replace("18 m", "23 m") });
    expect(() => made.git("merge", "theirs")).toThrow();
    expect(readFileSync(join(made.folder, "house.ways"), "utf8")).toMatch(
      /<{7} ours\n.*23 m\n={7}\n.*21 m\n>{7} theirs/,
    );
  });

  it("is refused where a repository has no files", async () => {
    const made = repository({ "house.ways": sound });
    made.git("clone", "-q", "--bare", ".", "bare.git");
    const { code, err } = await run(join(made.folder, "bare.git"), "git", "setup");
    expect({ code, err }).toEqual({
      code: 2,
      err: "This repository is bare and has no files: run it in a clone, or in a worktree of it.\n",
    });
  });

  it("is refused outside a repository", async () => {
    expect(await run("/", "git", "setup")).toMatchObject({
      code: 2,
      err: "This folder is in no git repository: change to one, or make one with “git init”.\n",
    });
  });
});

describe("wayfile check --staged", () => {
  const board = (zs: string): string =>
    `wayfile 1\nboard B "Loft" {\n  fed-from  A\n  way 1 radial "Heater" {\n    device  BS EN 60898 B32 6 kA\n    live 2026-03-05 {\n      Zs  ${zs} Ω\n    }\n  }\n}\n`;
  const user = schedule('    way 1 feeder "Loft" { feeds B }', { before: 'use "loft.ways"\n' });

  it("checks the index and not the disk, used files included, with what uses them", async () => {
    const made = repository({ "house.ways": user, "loft.ways": board("0.62"), "other.ways": faulty });
    expect(await run(made.folder, "check", "--staged")).toMatchObject({
      code: 0,
      err: "No schedules are staged: none was checked.\n",
    });
    made.write({ "loft.ways": board("1.99") });
    expect((await run(made.folder, "check", "--staged")).code).toBe(0);
    made.git("add", "loft.ways");
    made.write({ "loft.ways": board("0.62") });
    const { code, out } = await run(made.folder, "check", "--staged");
    expect(code).toBe(1);
    expect(out).toContain("Zs 1.99 Ω");
    expect(out).not.toContain("other.ways");
    expect((await run(made.folder, "check", "house.ways")).out).not.toContain("1.99");
  });

  it("says of a file outside the repository that it lies there, and of another that it is not staged", async () => {
    const made = repository({ "house.ways": sound });
    const using = (path: string) => sound.replace("wayfile 1\n", `wayfile 1\nuse "${path}"\n`);
    made.write({ "one.ways": using("../other.ways"), "two.ways": using("other.ways"), "other.ways": "wayfile 1\n" });
    made.git("add", "one.ways", "two.ways");
    const { out } = await run(made.folder, "check", "--staged", "--format", "concise");
    expect(out).toMatch(/one\.ways.*“\.\.\/other\.ways” cannot be used: it lies outside/);
    expect(out).toMatch(/two\.ways.*“other\.ways” cannot be used: it is not staged/);
  });

  it("says of a file in conflict that nothing of it is staged, and so does a comparison with the index", async () => {
    const made = repository({ "house.ways": sound });
    made.git("checkout", "-q", "-b", "side");
    made.commit("Theirs", { "house.ways": sound.replace("1.2 kA", "1.3 kA") });
    made.git("checkout", "-q", "main");
    made.commit("Ours", { "house.ways": sound.replace("1.2 kA", "1.4 kA") });
    expect(() => made.git("merge", "side")).toThrow();
    expect(await run(made.folder, "check", "--staged", "--quiet")).toMatchObject({
      code: 2,
      err: "“house.ways” is in conflict, so that nothing of it is staged: put it right and stage it.\n",
    });
    expect(await run(made.folder, "compare", "HEAD", ":house.ways")).toMatchObject({
      code: 2,
      err: "“:house.ways” cannot be read: it is not staged, or in conflict.\n",
    });
  });

  it("keeps a commit from being made by the hook, and a merge that git found clean", async () => {
    const made = repository({ "house.ways": sound });
    await run(made.folder, "git", "setup");
    made.write({ "house.ways": faulty });
    made.git("add", "-A");
    expect(() => made.git("commit", "-qm", "Faulty")).toThrow(/loop\/zs-over-limit/);
    made.git("commit", "-qnm", "Faulty");
    made.git("checkout", "-q", "-b", "side", "HEAD~1");
    made.commit("Beside", { "notes.txt": "-\n" });
    expect(() => made.git("merge", "-q", "--no-edit", "main")).toThrow(/loop\/zs-over-limit/);
  });
});

describe("wayfile git textconv", () => {
  it("shows facts under their addresses, so that layout is no change and lines that cannot be read stay in sight", async () => {
    const made = repository({ "house.ways": faulty });
    await run(made.folder, "git", "setup", "--textconv", "--no-hooks");
    made.write({
      "house.ways": faulty.replace("Zs  1.52 Ω", "Zs     1.49 Ω").replace("device  BS", "device       BS"),
    });
    const lines = made
      .git("diff")
      .split("\n")
      .filter((line) => /^[-+](?![-+])/.test(line));
    expect(lines).toEqual(["-A/1 · live 2026-03-05 · Zs: 1.52 Ω", "+A/1 · live 2026-03-05 · Zs: 1.49 Ω"]);
    made.write({ "house.ways": faulty.replace("Zs  1.52 Ω", "Zs  1.52") });
    expect(made.git("diff")).toContain("+not understood: Zs  1.52");
  });
});
