/** Commands, their help, and arguments that make no sense. */
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { pages } from "../../server/rules/frame/catalogue.ts";
import { Folder } from "./run.ts";

const run = (...args: string[]) => new Folder({ "a.ways": "wayfile 1\n" }).run(...args);

describe("help", () => {
  test.each([
    ["--help"],
    ["check", "--help"],
    ["fmt", "--help"],
    ["explain", "--help"],
    ["size", "--help"],
    ["working", "--help"],
    ["editions", "--help"],
  ])("%s %s", async (...args) => {
    const { code, out, err } = await run(...args);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("Examples:");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  test("the version", async () => {
    expect(await run("--version")).toEqual({ code: 0, out: `${manifest.version}\n`, err: "" });
  });

  test("as a command", async () => {
    expect(await run("help")).toEqual(await run("--help"));
    expect(await run("help", "git", "setup")).toEqual(await run("git", "setup", "--help"));
    expect((await run("help", "git")).out).not.toContain("display help");
  });

  test("no command shows what there is", async () => {
    const { code, out, err } = await run();
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("Commands:");
  });
});

test.each([
  [["polish"], expect.stringMatching(/^There is no command “polish”: the commands are check, fmt, explain, .*\.\n$/)],
  [["lint"], "There is no command “lint”. Did you mean check?"],
  [["PDF"], "There is no command “PDF”. Did you mean schedule --format pdf?"],
  [["version"], "There is no command “version”. Did you mean --version?"],
  [["check", "--json"], "There is no option “--json” of “check”. Did you mean --format json?"],
  [["fmt", "--dry-run", "."], "There is no option “--dry-run” of “fmt”. Did you mean --diff?"],
  [["schedule", "--sarif", "."], "There is no option “--sarif” of “schedule”: “wayfile schedule --help” lists them."],
  [["chekc"], "There is no command “chekc”. Did you mean check?"],
  [["a.ways"], "There is no command “a.ways”: to check it, write “wayfile check a.ways”."],
  [["check", "--bogus"], "There is no option “--bogus” of “check”: “wayfile check --help” lists them."],
  [["check", "--formt", "json"], "There is no option “--formt” of “check”. Did you mean --format?"],
  [["check", "--shard", "5/4"], "“5/4” is no value of --shard. It is written as 2/4: the second of four."],
  [
    ["check", "--format", "xml"],
    "“xml” is no value of --format. It is text, concise, json, jsonl, sarif, junit, github, gitlab or markdown.",
  ],
  [
    ["check", "--format", "jsn"],
    "“jsn” is no value of --format. Did you mean json? It is text, concise, json, jsonl, sarif, junit, github, gitlab or markdown.",
  ],
  [
    ["check", "--since"],
    "“--since” needs a value, as --since <REVISION>: check what changed since a revision of git, and what uses it.",
  ],
  [["size", "a.ways"], "“size” needs --way <BOARD/WAY>: the way, such as A/3."],
  [["fmt"], "“fmt” needs PATH: files, folders, patterns, or - to format standard input to standard output."],
  [["check", "--color", "sometimes"], "“sometimes” is no value of --color. It is auto, always or never."],
  [["fmt", "--colour", "never", "."], "There is no option “--colour” of “fmt”. Did you mean --color?"],
  [["completion", "basch"], "“basch” is no value of SHELL. Did you mean bash? It is bash, zsh or fish."],
  [["git", "stup"], "There is no command “git stup”. Did you mean setup?"],
  [["git", "setup", "--dryrun"], "There is no option “--dryrun” of “git setup”. Did you mean --dry-run?"],
  [["git", "doctor", "here"], "“git doctor” takes no arguments. One too many was given."],
  [["size", "a.ways", "b.ways", "--way", "A/1"], "“size” takes 1 argument: FILE. One too many was given."],
  [["settings", "none"], "There is no file or folder “none”."],
  [["explain", "lop"], "There is no check, no word and no table “lop”. Did you mean loop?"],
  [
    ["explain", "table", "99"],
    expect.stringMatching(/^There is no check, no word and no table “table 99”. Tables held are .*41\.3, /),
  ],
  [["check", "--tour", "--format", "json"], "The tour is for people: leave out --format json."],
])("%j is refused in one sentence", async (args, sentence) => {
  const err = typeof sentence === "string" ? `${sentence}\n` : sentence;
  expect(await run(...args)).toEqual({ code: 2, out: "", err });
});

describe("explain", () => {
  test("a check, with what fails and what passes", async () => {
    const { code, out } = await run("explain", "loop/zs-over-limit");
    expect(code).toBe(0);
    expect(`\n${out}`).toMatchInlineSnapshot(`
      "
      loop/zs-over-limit  error  since 0.1

      Zs is higher than the device allows.

      A fault to earth could leave exposed metal live for longer than a person can survive.
      Look for a poor joint first; then consider a larger cable, a device of another type, or
      an RCD as the means of disconnection. Before opening anything: isolate and lock off,
      prove the tester, prove dead, prove the tester again.

      Rests on 411.4.4, 411.3.2.

      Fails (stage tested)
        way 1 radial "Water heater" {
          device       BS EN 60898 B32 6 kA
          live 2026-03-05 {
            Zs           1.52 Ω
                         ^^^^^^
          }
        }

      Passes
        way 1 radial "Water heater" {
          device       BS EN 60898 B32 6 kA
          live 2026-03-05 {
            Zs           0.62 Ω
          }
        }

      Fails (stage tested)
        way 1 radial "Water heater" {
          device       BS EN 60898 B32 6 kA
          live 2026-03-05 {
            Zs           <2.00 Ω
                         ^^^^^^^
          }
        }

      Passes
        way 1 radial "Water heater" {
          device       BS EN 60898 B32 6 kA
          live 2026-03-05 {
            Zs           <0.62 Ω
          }
        }
      "
    `);
  });

  test("every check there is", async () => {
    const { out } = await run("explain");
    for (const { id, title } of pages) expect(out).toMatch(new RegExp(`^  ${id} +[EWi]  ${escaped(title)}$`, "m"));
    for (const { id } of pages) expect((await run("explain", id)).out).toContain(id);
  });

  test("a word of the language", async () => {
    expect(`\n${(await run("explain", "Zs")).out}`).toMatchInlineSnapshot(`
      "
      Zs  in live tests of a way

      Earth fault loop impedance at the furthest point of the circuit.

      Measured, or Zdb of the board plus R1+R2: then write \`calculated\`. Of three lines the
      highest counts, and each may be written behind it: \`Zs 0.52 Ω L1 0.50 Ω L2 0.52 Ω L3
      0.51 Ω\`.

      Limits: Regulation 411.4.4 and Tables 41.2 to 41.4; a cold reading is compared with 80 %
      of them, or corrected for temperature.

        Zs 0.62 Ω
      "
    `);
  });

  test("a word that stands in several blocks, each meaning once", async () => {
    const { out } = await run("explain", "rcd");
    expect(out.match(/^rcd {2}in .*$/gm)).toMatchInlineSnapshot(`
      [
        "rcd  in board",
        "rcd  in way, circuit type",
        "rcd  in live tests of a way, live tests of a board",
      ]
    `);
    expect((await run("explain", "query")).out.match(/^query {2}in/gm)).toHaveLength(1);
  });

  test("a sign for what was not measured", async () => {
    expect((await run("explain", "LIM")).out).toContain("A limitation: not tested");
  });

  test.each([
    [
      "loop/zs-over-limits",
      "There is no check, no word and no table “loop/zs-over-limits”. Did you mean loop/zs-over-limit",
    ],
    ["ZS", "There is no check, no word and no table “ZS”. Did you mean Zs"],
    ["qqqqqq", "There is no check, no word and no table “qqqqqq”. “wayfile explain” alone lists all checks."],
  ])("%s is unknown, and the nearest is named", async (text, sentence) => {
    const { code, out, err } = await run("explain", text);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err.startsWith(sentence)).toBe(true);
  });
});

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

test.each([
  ["411.4.4", /^The checks that rest on 411\.4\.4, .*loop\/zs-over-limit/s],
  ["loop", /^The checks of loop\.\n.*loop\/zs-over-limit/s],
])("explain %s lists its checks", async (text, listed) => {
  const { code, out } = await run("explain", text);
  expect(code).toBe(0);
  expect(out).toMatch(listed);
});
