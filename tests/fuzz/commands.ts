/**
 * Every command over the files of a folder that nobody would write: it ends with one of its codes, says why where it
 * cannot do something, and changes no file that it only reads.
 */
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { workbookOf } from "../../server/papers/workbook.ts";
import { type Ran, runAt } from "../helpers/run-command.ts";
import type { Dice } from "./dice.ts";
import { anyText, damaged, figures, smallExample } from "./texts.ts";
import { isSaid, type Trial } from "./trials.ts";

const places = ["A", "A/1", "A/3", "B", "", "x/y/z", "\u202e"];
const formats = ["text", "concise", "json", "jsonl", "sarif", "junit", "github", "gitlab", "markdown"];
const settings = ["text", "markdown", "html"];
const revisions = ["HEAD", "HEAD~1", "HEAD~9", "HEAD^2", "side", "side~1", "MERGE_HEAD"];

/** Commands that read, each with what may be asked of it. */
function reading(dice: Dice): readonly string[] {
  const pick = <T>(items: readonly T[]): T => dice.pick(items);
  const way = dice.chance(0.5) ? ["--way", pick(places)] : [];
  return pick<() => readonly string[]>([
    () => [
      "check",
      "--format",
      pick(formats),
      "--no-cache",
      ...pick([[], ["--statistics"], ["--only", "loop"], ["--no-info"]]),
      ".",
    ],
    () => ["check", "--shard", pick(["1/2", "2/2", "3/2", "0/0"]), "--format", "jsonl", "."],
    () => ["check", "--tour", "a.ways"],
    () => ["check", "--diff", "a.ways"],
    () => ["fmt", pick(["--check", "--diff"]), "a.ways", "b.ways"],
    () => ["explain", pick(["loop", "way", "411.3.3", "table 41.3", "x", ""])],
    () => ["worksheet", "a.ways", ...way, ...pick([[], ["--again"], ["--fill"]]), "--format", pick(settings)],
    () => ["schedule", "a.ways", ...pick([[], ["--blank"], ["--last"]]), "--format", pick([...settings, "csv"])],
    () => ["inspection", "a.ways", "--format", pick(settings)],
    () => [
      pick(["schedule", "worksheet", "inspection", "working", "summary"]),
      "a.ways",
      "-o",
      pick(["out.pdf", "out.xlsx", "out.html", "out.csv", "out.md", "out.txt", "sub", "a.ways", "link.html"]),
    ],
    () => [pick(["schedule", "register", "working"]), "a.ways", "-o", "b.ways", "--format", pick(["html", "text"])],
    () => [
      "editions",
      "a.ways",
      ...pick([[], ["--to", pick(["BS 7671:2008", "BS 1", ""])]]),
      "--format",
      pick(settings),
    ],
    () => ["git", "textconv", pick(["a.ways", "gone.ways", "sub"])],
    () => ["fmt", "--upgrade", "--check", "a.ways"],
    () => ["compare", pick([...revisions, "-x", "HEAD:a.ways"]), pick(["HEAD", "a.ways", ".", "side"])],
    () => ["check", "--since", pick([...revisions, "gone"]), "--format", pick(formats)],
    () => ["schema", pick(["settings", "results", "x"])],
    () => ["completion", pick(["bash", "zsh", "x"])],
    () => ["working", "a.ways", ...way, "--format", pick(settings)],
    () => ["size", "a.ways", ...way, "--format", pick(["text", "json"])],
    () => ["summary", "a.ways", "--format", pick(settings)],
    () => [
      "compare",
      pick(["a.ways", "HEAD", "sub"]),
      pick(["b.ways", "a.ways", "sub/c.ways"]),
      "--format",
      pick([...settings, "json"]),
    ],
    () => ["history", "a.ways", ...pick([[], ["A/3 Zs"], ["A"], ["x · y"]]), "--format", pick(settings)],
    () => ["merge", "--stdout", "a.ways", "b.ways", "sub/c.ways"],
    () => ["register", "--no-cache", "--format", pick([...settings, "csv", "json"]), "."],
    () => ["register", "--no-cache", "-o", pick(["all.xlsx", "all.html"]), "sub", "a.ways"],
    () => [
      "enter",
      "a.ways",
      pick(["r.csv", "r.csv", "r.xlsx", "r.json"]),
      "--dry-run",
      ...pick([[], ["--on", "2026-04-01"], ["--board", "A"], ["--column", "x=Zs"]]),
    ],
    () => ["gather", "part1.jsonl", pick(["part2.jsonl", "a.ways"]), "--format", pick(formats)],
    () => ["settings", ...pick([[], ["--why", "a.ways"]])],
    () => ["check", "--history", "a.ways", ...pick([[], ["b.ways"]])],
    () => ["check", "--staged"],
  ])();
}

/** Commands that write, with what may become of the file. */
const writing = (dice: Dice): readonly string[] =>
  dice.pick([
    ["fmt", "a.ways"],
    ["check", "--fix", "--no-cache", "a.ways"],
    ["enter", "a.ways", "r.csv", "--on", "2026-04-01", "--with", "M1"],
    ["size", "a.ways", "--way", dice.pick(places), "--write"],
    ["merge", "a.ways", "b.ways", "sub/c.ways"],
  ]);

export async function commanding({ dice, at }: Trial): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), "wayfile-fuzz-"));
  try {
    const text = anyText(dice);
    const second = dice.chance(0.6) ? damaged(text, dice) : smallExample(dice);
    const files: Record<string, string> = {
      "a.ways": text,
      "b.ways": second,
      "sub/c.ways": dice.chance(0.5) ? damaged(text, dice) : `wayfile 1\nuse "../a.ways"\n`,
      "r.csv": table(dice),
      "r.json": sheet(dice),
      ...(dice.chance(0.4) ? { ".wayfile.json": dice.pick(houses) } : {}),
    };
    mkdirSync(join(folder, "sub"));
    for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
    writeFileSync(join(folder, "r.xlsx"), await someWorkbook(dice));
    symlinkSync("a.ways", join(folder, "link.html"));
    const earlier = dice.chance(0.5) ? withHistory(folder, dice) : [];
    for (const number of [1, 2]) {
      const part = await runAt(folder, {}, ["check", "--shard", `${number}/2`, "--format", "jsonl", "--no-cache", "."]);
      writeFileSync(join(folder, `part${number}.jsonl`), dice.chance(0.8) ? part.out : damaged(part.out, dice));
    }
    const before = contentsOf(folder);
    const source = [...Object.values(before), ...earlier].join("\n");
    const count = 6;
    for (let left = count; left > 0; left--) {
      const words = reading(dice);
      at(`${words.join(" ")}\n${source}`);
      isOrderly(words, await runAt(folder, {}, words), source);
      assert.deepEqual(contentsOf(folder), before, `${words.join(" ")} changes a schedule`);
    }
    const words = writing(dice);
    at(`${words.join(" ")}\n${source}`);
    const ran = await runAt(folder, {}, words);
    isOrderly(words, ran, source);
    if (words[0] === "enter") isKept(before["a.ways"] ?? "", readFileSync(join(folder, "a.ways"), "utf8"));
    return count + 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function isOrderly(words: readonly string[], { code, out, err }: Ran, source: string): void {
  const command = words.join(" ");
  assert.ok([0, 1, 2].includes(code), `${command} ends with ${code}`);
  assert.doesNotMatch(err, /^\s+at .*[/\\]\w+\.[tm]s:\d+/m, `${command} shows its insides`);
  if (code === 2) assert.notEqual(err + out, "", `${command} does not say what it could not do`);
  const said = source + command;
  if (!words.includes("jsonl") && words[0] !== "fmt" && words[0] !== "merge")
    isSaid(command, out.replace(/<script>.*?<\/script>/gs, ""), said);
  isSaid(command, err, said);
  if (code !== 2 && (words.includes("json") || words.includes("sarif"))) JSON.parse(out);
}

/** Lines of a schedule stand in what was made of it, in their order. */
function isKept(before: string, after: string): void {
  const lines = after.split(/\r\n|\r|\n/).map((line) => line.trim());
  let from = 0;
  for (const line of before.split(/\r\n|\r|\n/).map((one) => one.trim())) {
    const found = lines.indexOf(line, from);
    assert.ok(found >= 0, `“${line}” is lost`);
    from = found + 1;
  }
}

function table(dice: Dice): string {
  const heads = ["way", "board", "Zs (Ω)", "R1+R2", "on", "with", "test", "result", "x", "=1+1", '"'];
  const cells = ["1", "A", "A/3", "3", ...figures, "LIM", "ok", "2026-03-05", "M1", "Zs", "", '"', "\u0000", "a;b"];
  const row = (of: readonly string[]) =>
    dice.times(1 + dice.below(7), () => dice.pick(of)).join(dice.pick([",", ",", ";"]));
  return [row(heads), ...dice.times(dice.below(6), () => row(cells))].join(dice.pick(["\n", "\r\n"]));
}

const houses = [
  '{"skip": ["loop"], "raise": {"ring": "error"}}',
  '{"suppress": [{"check": "demand", "reason": "\u202e", "files": ["**/*a*a*.ways"]}], "columns": ["x=Zs"]}',
  '{"leaveOut": ["sub"], "failLevel": "warning"}',
  '{"only": 1, "__proto__": {}}',
  "[".repeat(3_000),
];

/** What a sheet that was filled in gives back, and what it does not. */
function sheet(dice: Dice): string {
  const reading = () => ({
    ...{
      at: dice.pick(["A/3", "A", "supply", "x", ""]),
      test: dice.pick(["Zs", "r1", "x"]),
      value: dice.pick(figures),
    },
    ...dice.pick([{ on: "2026-04-01" }, { on: "x" }, {}, { on: "2026-04-01", with: ["M1", 1] }]),
  });
  const file = { wayfile: "readings", version: 1, readings: dice.times(dice.below(4), reading), by: "T. Ash" };
  const text = JSON.stringify(file);
  return dice.chance(0.8) ? text : damaged(text, dice);
}

/** A workbook that holds a table, or did before an accident. */
async function someWorkbook(dice: Dice): Promise<Uint8Array> {
  const rows = table(dice)
    .split(/\r?\n/)
    .map((line) => line.split(","));
  const [columns = [], ...others] = rows;
  const bytes = await workbookOf({ columns: columns.map((word) => ({ key: word, unit: "" })), rows: others } as never, {
    file: "a.ways",
  });
  if (dice.chance(0.5)) return bytes;
  const now = Uint8Array.from(bytes);
  for (let left = 1 + dice.below(8); left > 0; left--) now[dice.below(now.length)] = dice.below(256);
  return dice.chance(0.7) ? now : now.slice(0, dice.below(now.length));
}

/** One or several commits, some by people whose names and words are hostile, one of them a merge. */
/** Commits of a folder, and what its file said in each of them. */
function withHistory(folder: string, dice: Dice): readonly string[] {
  const texts: string[] = [];
  const git = (...words: string[]) =>
    execFileSync("git", ["-c", "user.name=Site", "-c", "user.email=site@invalid", ...words], {
      cwd: folder,
      stdio: "ignore",
    });
  const commit = (text: string) => {
    texts.push(text);
    writeFileSync(join(folder, "a.ways"), text);
    git("add", ".");
    git(
      "commit",
      "-qm",
      dice.pick(["As found", "\u202e", "-x", "\x01"]),
      "--allow-empty",
      "--author",
      dice.pick(authors),
    );
  };
  const now = readFileSync(join(folder, "a.ways"), "utf8");
  git("init", "-q", "-b", "main");
  for (let left = dice.below(3); left > 0; left--) commit(damaged(now, dice));
  commit(now);
  if (dice.chance(0.6)) withBranch(git, commit, now, dice);
  return texts;
}

/** A branch that went another way, joined or being joined: what stands in the file then may be neither side's. */
function withBranch(git: (...words: string[]) => void, commit: (text: string) => void, now: string, dice: Dice): void {
  git("checkout", "-qb", "side");
  commit(damaged(now, dice));
  git("checkout", "-q", "main");
  commit(dice.chance(0.5) ? now : damaged(now, dice));
  git("merge", "-q", "--no-ff", "--no-commit", "-s", "ours", "side");
  if (dice.chance(0.7)) commit(dice.chance(0.5) ? now : damaged(now, dice));
}

const authors = ["T. Ash <t@invalid>", "\u202e <t@invalid>", "\x01\x1b[31m <t@invalid>"];

/** What was there before a command: what it was asked to write is called `out`. */
const contentsOf = (folder: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    (readdirSync(folder, { recursive: true }) as string[])
      .filter((name) => /\.(?:ways|csv|jsonl)$/.test(name) && name !== "out.csv")
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), "utf8")]),
  );
