/** What strangers write is shown by every command, and obeyed by no terminal. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { hostileSchedule, hostileText, obeyed } from "../helpers/hostile.ts";
import { Folder } from "./run.ts";

const commands = [
  ["check"],
  ["check", "--format", "json"],
  ["check", "--tour"],
  ["fmt", "--check"],
  ["fmt"],
  ...["worksheet", "working", "summary", "editions", "schedule", "inspection"].flatMap((command) =>
    ["text", "markdown", "html"].map((format) => [command, "--format", format]),
  ),
  ["schedule", "--format", "csv"],
  ["schedule", "--last"],
  ["worksheet", "--fill"],
  ...["text", "html", "csv"].map((format) => ["register", "--no-cache", "--format", format]),
  ...["concise", "github", "gitlab", "junit", "sarif", "jsonl", "markdown"].map((format) => [
    "check",
    "--format",
    format,
  ]),
  ["enter", "--dry-run"],
  ["size", "--way", "A/3"],
  ["size", "--way", "A/3", "--format", "json"],
  ["size", "--way", "\u001b[31m/1"],
  ["working", "--way", "\u001b[31m"],
  ["explain"],
];

// biome-ignore lint/suspicious/noControlCharactersInRegex: these are the very signs that are looked for
const steering = /[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f]/;

/** The colours this program puts round a text. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: a colour begins with one
const ours = /\x1b\[\d+m/g;

it("no command prints a sign that a terminal would obey", async () => {
  const run = fc.asyncProperty(hostileText, async (text) => {
    const name = `${text.replaceAll("/", "").replaceAll("\0", "")}.ways`;
    const folder = new Folder({ [name]: hostileSchedule(text), "use.ways": `wayfile 1\nuse "\u001b[31m.ways"\n` });
    folder.write("base.ways", hostileSchedule("Loft"));
    folder.write(
      "read.csv",
      `way,board,Zs (Ω),on,with\n3,A,0.5,2026-04-01,M1\n"${text.replaceAll('"', '""')}",A,x,y,z\n`,
    );
    for (const command of commands) {
      const { out, err } = await folder.run(...command, `./${name}`, ...(command[0] === "enter" ? ["read.csv"] : []));
      // A table is read by a program: its names keep the signs that only turn their direction.
      const signs = command.includes("csv") ? steering : obeyed;
      expect({ command, out, err }).toEqual({
        command,
        out: expect.not.stringMatching(signs),
        err: expect.not.stringMatching(obeyed),
      });
    }
    for (const args of [
      ...["text", "markdown", "html", "json"].map((format) => [
        "compare",
        "--format",
        format,
        "base.ways",
        `./${name}`,
      ]),
      ["merge", "--stdout", "base.ways", "base.ways", `./${name}`],
      ["history", `./${name}`],
      ["compare", `./${name}`, "no\u001b[31mwhere.ways"],
    ]) {
      const { out, err } = await folder.run(...args);
      // What is merged is a schedule, to be read by a program.
      expect(args[0] === "merge" ? err : out + err).not.toMatch(obeyed);
    }
    for (const command of [["check"], ["working"], ["worksheet"], ["compare", "use.ways"]]) {
      const { out, err } = await folder.run(...command, "use.ways");
      expect(out + err).not.toMatch(obeyed);
    }
  });
  await fc.assert(run, { numRuns: 6, examples: [["\u001b[2J\u202e![x](https://nowhere.invalid)"]] });
});

it("nor one in colour, but for the colours themselves", async () => {
  const text = "\u001b[31mred\u001b[0m\u202e";
  const folder = new Folder({ [`${text}.ways`]: hostileSchedule(text).replace("0.64 Ω", "1.64 Ω") });
  for (const command of [["check"], ["check", "--tour"], ["size", "--way", "A/3", `${text}.ways`]]) {
    const { out, err } = await folder.runWith({ colour: true }, ...command);
    expect(out + err).toMatch(ours);
    expect((out + err).replace(ours, "")).not.toMatch(obeyed);
    expect(out).toContain("␛");
  }
});

it("a file of unknown name, a command and a word that do not exist are shown, not obeyed", async () => {
  const folder = new Folder({});
  const text = "\u001b[31m\u202e\nall well";
  for (const args of [
    ["check", text],
    ["fmt", text],
    [text],
    ["explain", text],
    ["working", text],
    ["check", `--${text}`],
  ]) {
    const { code, out, err } = await folder.run(...args);
    expect(code).toBe(2);
    expect(err).not.toBe("");
    expect(out + err).not.toMatch(obeyed);
    expect(err.trim()).not.toContain("\n");
  }
});

it("what is read by a program is the text itself", async () => {
  const text = "\u009b\u202e\u001b";
  const folder = new Folder({ "a.ways": `wayfile 1\nuse "${text}.ways"\n` });
  const { out } = await folder.run("check", "--format", "json");
  expect(out).not.toMatch(obeyed);
  expect(JSON.parse(out).files[0].findings[0].message).toContain(text);
  const laid = await folder.runWith({ input: hostileSchedule(text) }, "fmt", "-");
  expect(laid.out).toContain(text);
});
