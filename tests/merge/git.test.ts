/** Merges by a real git with this program as its merge driver: what people in one repository do to one schedule. */
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it, vi } from "vitest";
import { format } from "../../server/format/format.ts";
import { entriesOfFile } from "../../server/readings/entries.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { TestRepository } from "../helpers/repository.ts";

const root = join(import.meta.dirname, "../..");
const workshop = readFileSync(join(root, "examples/heron-wharf/workshop.ways"), "utf8");
const program = `'${process.execPath}' '${join(root, "server/main.cli.ts")}'`;

// Each merge starts this program anew.
vi.setConfig({ testTimeout: 300_000 });

const repositories: TestRepository[] = [];
afterAll(() => {
  vi.resetConfig();
  for (const repository of repositories) repository.end();
});

function repository(files: Readonly<Record<string, string>>, ...flags: readonly string[]): TestRepository {
  const made = new TestRepository();
  repositories.push(made);
  made.git("config", "merge.wayfile.driver", `${program} merge %O %A %B --marker-size %L --path %P ${flags.join(" ")}`);
  made.commit("Base", { ".gitattributes": "*.ways merge=wayfile\n", ...files });
  return made;
}

interface Branch {
  readonly name: string;
  readonly who?: string;
  readonly files: Readonly<Record<string, string>>;
}

interface Ended {
  readonly clean: boolean;
  readonly text: string;
  readonly said: string;
}

/** Both branches from where the repository is, the second merged into the first. */
function mergeOf(made: TestRepository, ours: Branch, theirs: Branch, file = "board.ways"): Ended {
  made.git("branch", theirs.name);
  made.git("checkout", "-q", "-b", ours.name);
  made.commit("Ours", ours.files, ours.who);
  made.git("checkout", "-q", theirs.name);
  made.commit("Theirs", theirs.files, theirs.who);
  made.git("checkout", "-q", ours.name);
  const env = { ...process.env, GIT_CONFIG_GLOBAL: "/dev/null", GIT_CONFIG_SYSTEM: "/dev/null" };
  const { status, stderr, stdout } = spawnSync("git", ["merge", "--no-edit", theirs.name], {
    cwd: made.folder,
    env,
    encoding: "utf8",
  });
  return { clean: status === 0, text: readFileSync(join(made.folder, file), "utf8"), said: stdout + stderr };
}

const two = (ours: string, theirs: string, base = workshop): Ended =>
  mergeOf(
    repository({ "board.ways": base }),
    { name: "ours", files: { "board.ways": ours } },
    { name: "theirs", files: { "board.ways": theirs } },
  );

/** A text with one thing replaced, which must be there. */
function changed(text: string, from: string | RegExp, to: string): string {
  const after = text.replace(from, to);
  expect(after).not.toBe(text);
  return after;
}

/** Lines put at the end of a way. */
function inWay(text: string, way: number, lines: readonly string[]): string {
  return changed(
    text,
    new RegExp(`(\\n {2}way ${way} [\\s\\S]*?)(\\n {2}\\}\\n)`),
    `$1\n${lines.map((line) => `    ${line}`).join("\n")}$2`,
  );
}

const retest = (text: string, ways: readonly number[], day: string, zs: (way: number) => string): string =>
  ways.reduce((all, way) => inWay(all, way, [`live ${day} with M1 {`, `  Zs           ${zs(way)} Ω`, "}"]), text);

const facts = (text: string): Map<string, string> =>
  new Map(entriesOfFile(fileOfText("board.ways", text).model).map(({ at, shown }) => [at, shown]));

const marksIn = (text: string): string[] => text.match(/^<{7}[\s\S]*?^>{7}.*$/gm) ?? [];

describe("two people in one schedule", () => {
  it("one tests every way again, the other corrects a reading of last year: both are in", () => {
    const again = retest(workshop, [1, 2, 3, 4, 5, 6], "2027-03-10", (way) => `0.5${way}`);
    const fixed = changed(workshop, "Zs           0.43 Ω", "Zs           0.47 Ω");
    const { clean, text } = two(again, fixed);
    expect(clean).toBe(true);
    expect(text).toBe(changed(again, "Zs           0.43 Ω", "Zs           0.47 Ω"));
  });

  it("two testers meet in two ways: one conflict for each reading both took, and nothing else", () => {
    const a = retest(workshop, [1, 2, 3, 4, 5, 6], "2027-03-10", (way) => `0.5${way}`);
    const b = retest(workshop, [5, 6, 7, 8, 9], "2027-03-10", (way) => (way === 6 ? "0.56" : "0.61"));
    const { clean, text, said } = two(a, b);
    expect(clean).toBe(false);
    expect(marksIn(text)).toEqual([
      expect.stringMatching(
        /^<{7} HEAD \(A Tester, 2026-03-05\)\n +Zs +0\.55 Ω\n\|{7} base\n={7}\n +Zs +0\.61 Ω\n>{7} theirs \(A Tester, 2026-03-05\)$/,
      ),
    ]);
    expect(said).toContain("W/5 · live 2027-03-10 · Zs");
    expect([1, 4, 6, 7, 9].map((way) => facts(text).get(`W/${way} · live 2027-03-10 · Zs`))).toEqual([
      "0.51 Ω",
      "0.54 Ω",
      "0.56 Ω",
      "0.61 Ω",
      "0.61 Ω",
    ]);
  });

  it("different instruments on one day: whose reading stands is asked", () => {
    const a = retest(workshop, [3], "2027-03-10", () => "0.51");
    const b = retest(workshop, [3], "2027-03-10", () => "0.61").replace("2027-03-10 with M1", "2027-03-10 with M2");
    const { clean, text } = two(a, b);
    expect(clean).toBe(false);
    expect(marksIn(text)).toHaveLength(1);
    expect(marksIn(text)[0]).toMatch(/with M1 \{\n.*0\.51[\s\S]*with M2 \{\n.*0\.61/);
  });

  it("one renumbers the board, the other tests it: each reading follows its circuit", () => {
    const renumbered = workshop.replace(
      /^( {2}way )(\d+)( )/gm,
      (_, word, way, rest) => `${word}${{ 7: 3, 3: 4, 4: 5, 5: 6, 6: 7 }[Number(way)] ?? way}${rest}`,
    );
    const again = retest(workshop, [3, 4, 5, 6, 7], "2027-03-10", (way) => `0.5${way}`);
    const { clean, text } = two(renumbered, again);
    expect(clean).toBe(true);
    const now = facts(text);
    expect([4, 5, 6, 7, 3].map((way) => now.get(`W/${way} · live 2027-03-10 · Zs`))).toEqual([
      "0.53 Ω",
      "0.54 Ω",
      "0.55 Ω",
      "0.56 Ω",
      "0.57 Ω",
    ]);
    expect(now.get("W/4 · title")).toBe(facts(workshop).get("W/3 · title"));
  });

  it("one puts the ways in another order, the other fills them in", () => {
    const [head = "", ...ways] = workshop.split(/(?=^ {2}way )/m).map((part) => part.replace(/^\}\n?$/m, ""));
    const reordered = `${head}${ways.toReversed().join("")}}\n`;
    const neat = format(reordered)?.text ?? reordered;
    const again = retest(workshop, [1, 2, 3], "2027-03-10", (way) => `0.5${way}`);
    const { clean, text } = two(neat, again);
    expect(clean).toBe(true);
    expect(facts(text)).toEqual(facts(again));
    expect(text.indexOf("way 3 ")).toBeLessThan(text.indexOf("way 2 "));
  });

  it("one gives a number to another circuit, the other tests the one it had: that is asked", () => {
    const other = changed(
      changed(workshop, 'way 3 radial "Planer"', 'way 3 radial "Kiln"'),
      /(way 3 radial "Kiln" \{\n\s+device +BS EN 60898 )C20/,
      "$1D32",
    );
    const { clean, text } = two(
      other,
      retest(workshop, [3], "2027-03-10", () => "0.51"),
    );
    expect(clean).toBe(false);
    expect(marksIn(text)).toHaveLength(1);
    expect(marksIn(text)[0]).toMatch(/"Kiln"[\s\S]*"Planer"[\s\S]*0\.51/);
  });

  it("one line more beside one that the other side corrects: both merge, in the one style", () => {
    const neat = (text: string) => format(text)?.text ?? text;
    const base = neat(workshop);
    const warmer = neat(
      changed(base, /(dead 2026-03-04 with M1 \{\n)( +ends +r1 0\.30)/, "$1      temperature 14 °C\n$2"),
    );
    const fixed = changed(base, /R1\+R2( +)0\.20 Ω/, "R1+R2$10.21 Ω");
    const { clean, text } = two(warmer, fixed, base);
    expect(clean).toBe(true);
    expect(format(text)).toBeUndefined();
    expect(facts(text).get("W/1 · dead 2026-03-04 · R1+R2")).toBe("0.21 Ω");
    expect(facts(text).get("W/1 · dead 2026-03-04 · temperature")).toBe("14 °C");
  });

  it("one strikes tests out, the other adds a reading to them: that is asked", () => {
    const out = changed(
      workshop,
      /(live 2026-03-06 with M1 \{\n)( +Zs +0\.43)/,
      '$1      struck-out by "R.M." "Read on way 1"\n$2',
    );
    const more = changed(workshop, /( +)(Zs +0\.43 Ω\n)/, "$1$2$1voltage 236 V\n");
    const { clean, text } = two(out, more);
    expect(clean).toBe(false);
    expect(marksIn(text)[0]).toMatch(/struck-out[\s\S]*voltage 236 V/);
  });
});

describe("what git itself does beside it", () => {
  const a = retest(workshop, [1], "2027-03-10", () => "0.51");
  const b = retest(workshop, [1], "2027-03-11", () => "0.52");

  it("a file that was renamed on one side", () => {
    const made = repository({ "board.ways": workshop });
    made.git("branch", "theirs");
    made.git("checkout", "-q", "-b", "ours");
    made.git("mv", "board.ways", "west.ways");
    made.commit("Renamed", { "west.ways": a });
    made.git("checkout", "-q", "theirs");
    made.commit("Tested", { "board.ways": b });
    made.git("checkout", "-q", "ours");
    made.git("merge", "-q", "--no-edit", "theirs");
    const now = facts(readFileSync(join(made.folder, "west.ways"), "utf8"));
    expect(["10", "11"].map((day) => now.get(`W/1 · live 2027-03-${day} · Zs`))).toEqual(["0.51 Ω", "0.52 Ω"]);
  });

  it("a file that both sides added", () => {
    const made = repository({ "other.ways": "wayfile 1\n" });
    const { clean, text } = mergeOf(
      made,
      { name: "ours", files: { "board.ways": a } },
      { name: "theirs", files: { "board.ways": b } },
    );
    expect(clean).toBe(true);
    expect(["10", "11"].map((day) => facts(text).get(`W/1 · live 2027-03-${day} · Zs`))).toEqual(["0.51 Ω", "0.52 Ω"]);
  });

  it("a file that one side removed is left to git, which asks", () => {
    const made = repository({ "board.ways": workshop, "kept.ways": workshop });
    made.git("branch", "theirs");
    made.git("checkout", "-q", "-b", "ours");
    made.remove("board.ways");
    made.commit("Gone");
    made.git("checkout", "-q", "theirs");
    made.commit("Tested", { "board.ways": b });
    made.git("checkout", "-q", "ours");
    expect(() => made.git("merge", "-q", "--no-edit", "theirs")).toThrow();
    expect(readFileSync(join(made.folder, "board.ways"), "utf8")).toBe(b);
  });

  /** The driver of these repositories is handed no names, as by a git before 2.44. */
  const picking = (subjects: readonly string[]): TestRepository => {
    const made = repository({ "board.ways": workshop });
    made.git("checkout", "-q", "-b", "other");
    for (const [index, subject] of subjects.entries())
      made.commit(
        subject,
        { "board.ways": changed(workshop, "Zs           0.43 Ω", `Zs           0.4${index + 5} Ω`) },
        "B. Other",
      );
    made.git("checkout", "-q", "main");
    made.commit("Corrected here", { "board.ways": changed(workshop, "Zs           0.43 Ω", "Zs           0.41 Ω") });
    return made;
  };
  const markOf = (made: TestRepository): string =>
    /^>{7} (.*)$/m.exec(readFileSync(join(made.folder, "board.ways"), "utf8"))?.[1] ?? "";

  it("a conflict of a rebase, or of a series of picks, names the commit that is being applied", () => {
    const made = picking(["One (first)", "Two"]);
    made.git("checkout", "-q", "other");
    expect(() => made.git("rebase", "-q", "main")).toThrow();
    expect(markOf(made)).toMatch(/^[0-9a-f]{7,} \(One \(first\)\) \(B\. Other, 2026-03-05\)$/);
    made.write({ "board.ways": changed(workshop, "Zs           0.43 Ω", "Zs           0.45 Ω") });
    made.git("add", "-A");
    made.git("-c", "core.editor=true", "rebase", "--continue");
    expect(made.git("log", "--format=%s", "-3").trim().split("\n")).toEqual(["Two", "One (first)", "Corrected here"]);

    const other = picking(["One", "Two"]);
    expect(() => other.git("cherry-pick", "main~1..other")).toThrow();
    expect(markOf(other)).toMatch(/^[0-9a-f]{7,} \(One\) \(B\. Other, 2026-03-05\)$/);
  });

  it("a conflict in the middle of a rebase that is about something else is not given the name of its step", () => {
    const made = picking(["One", "Two"]);
    made.git("checkout", "-q", "-b", "third", "main~1");
    made.commit("Else", { "board.ways": changed(workshop, "Zs           0.43 Ω", "Zs           0.99 Ω") });
    made.git("checkout", "-q", "other");
    expect(() => made.git("rebase", "-q", "main")).toThrow();
    made.write({ "board.ways": changed(workshop, "Zs           0.43 Ω", "Zs           0.45 Ω") });
    made.git("add", "-A");
    made.git("commit", "-qm", "By hand");
    expect(() => made.git("cherry-pick", "third")).toThrow();
    expect(markOf(made)).toBe("theirs");
  });

  it("cherry-pick, rebase and stash merge in the same way", () => {
    const made = repository({ "board.ways": workshop });
    made.git("checkout", "-q", "-b", "other");
    const picked = made.commit("Tested", { "board.ways": b });
    made.git("checkout", "-q", "main");
    made.commit("Tested too", { "board.ways": a });
    made.git("cherry-pick", picked);
    expect(facts(readFileSync(join(made.folder, "board.ways"), "utf8")).get("W/1 · live 2027-03-11 · Zs")).toBe(
      "0.52 Ω",
    );
    made.git("checkout", "-q", "other");
    made.git("rebase", "-q", "main~1");
    expect(facts(readFileSync(join(made.folder, "board.ways"), "utf8")).get("W/1 · live 2027-03-10 · Zs")).toBe(
      "0.51 Ω",
    );
    const stashed = retest(workshop, [1], "2028-01-05", () => "0.53");
    made.git("checkout", "-q", "-b", "third", "main~2");
    made.write({ "board.ways": stashed });
    made.git("stash", "-q");
    made.git("checkout", "-q", "main");
    made.git("stash", "pop", "-q");
    const now = facts(readFileSync(join(made.folder, "board.ways"), "utf8"));
    expect(["2027-03-10", "2027-03-11", "2028-01-05"].map((day) => now.get(`W/1 · live ${day} · Zs`))).toEqual([
      "0.51 Ω",
      "0.52 Ω",
      "0.53 Ω",
    ]);
  });

  it("what cannot be read is merged line by line, and that is reported", () => {
    const broken = workshop.replace(/\}\s*$/, "");
    const { clean, text, said } = two(broken, changed(workshop, "Zs           0.43 Ω", "Zs           0.47 Ω"));
    expect(clean).toBe(true);
    expect(text).toContain("Zs           0.47 Ω");
    expect(said).toContain("cannot be merged by what its lines say: in our version a brace is lost or one too many");
  });

  it("names of branches and people stay on their line and steer nothing", () => {
    const name = "e\u009bvil-\u202e<<<<<<<";
    const made = repository({ "board.ways": workshop });
    const fixed = (zs: string) => ({ "board.ways": changed(workshop, "Zs           0.43 Ω", `Zs           ${zs} Ω`) });
    const { text, said } = mergeOf(
      made,
      { name: "ours", files: fixed("0.47"), who: "R\u001b[31m" },
      { name, files: fixed("0.48") },
    );
    const shown = `${text}${said
      .split("\n")
      .filter((line) => line.startsWith("    "))
      .join("")}`;
    expect(marksIn(text)).toHaveLength(1);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
    expect(shown).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });

  it.each(["merge", "diff3", "zdiff3"])("conflicts are marked in the style %s that is set", (style) => {
    const made = repository({ "board.ways": workshop });
    made.git("config", "merge.conflictStyle", style);
    const fixed = (zs: string) => ({ "board.ways": changed(workshop, "Zs           0.43 Ω", `Zs           ${zs} Ω`) });
    const { text } = mergeOf(made, { name: "ours", files: fixed("0.47") }, { name: "theirs", files: fixed("0.48") });
    expect(marksIn(text)[0]?.includes("||||||| base\n      Zs           0.43 Ω\n=======")).toBe(style !== "merge");
  });

  it("marks have the size that is set, and a file with marks fails check and fmt --check", () => {
    const made = repository({ "board.ways": workshop });
    made.write({ ".gitattributes": "*.ways merge=wayfile conflict-marker-size=12\n" });
    made.commit("Size");
    const fixed = (zs: string) => ({ "board.ways": changed(workshop, "Zs           0.43 Ω", `Zs           ${zs} Ω`) });
    const { text } = mergeOf(made, { name: "ours", files: fixed("0.47") }, { name: "theirs", files: fixed("0.48") });
    expect(text).toMatch(/^<{12} HEAD/m);
    writeFileSync(join(made.folder, "alone.ways"), text);
    const run = (...args: string[]) =>
      spawnSync(process.execPath, [join(root, "server/main.cli.ts"), ...args], { cwd: made.folder, encoding: "utf8" });
    expect(run("check", "alone.ways").status).toBe(1);
    expect(run("fmt", "--check", "alone.ways").status).toBe(1);
  });
});
