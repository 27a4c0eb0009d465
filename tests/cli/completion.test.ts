/** What the shells complete, asked of the shells themselves; those that are not on the machine are left out. */
import { execFileSync, spawnSync } from "node:child_process";
import { beforeAll, describe, expect, test } from "vitest";
import { Folder, schedule } from "./run.ts";

const isHere = (shell: string): boolean => spawnSync(shell, ["-c", "true"]).status === 0;

let folder: Folder;
beforeAll(async () => {
  folder = new Folder({ "house one.ways": schedule(""), "notes.txt": "", "site/a.ways": schedule("") });
  for (const shell of ["bash", "zsh", "fish"])
    folder.write(`wayfile.${shell}`, (await folder.run("completion", shell)).out);
});

const run = (shell: string, args: readonly string[]): string[] =>
  execFileSync(shell, args, { cwd: folder.path, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] })
    .split("\n")
    .filter((line) => line !== "");

const cases: readonly (readonly [words: string, has: readonly string[], hasNot: readonly string[]])[] = [
  ["wayfile ch", ["check"], ["compare"]],
  ["wayfile check --fo", ["--format"], ["--fix"]],
  ["wayfile check --format sa", ["sarif"], ["text"]],
  ["wayfile git s", ["setup"], ["doctor"]],
  ["wayfile completion z", ["zsh"], ["bash"]],
];

describe.runIf(isHere("bash"))("bash", () => {
  const complete = (text: string): string[] => {
    const words = text.split(" ");
    const set = `COMP_WORDS=(${words.map((word) => `'${word}'`).join(" ")}); COMP_CWORD=${words.length - 1}`;
    return run("bash", ["-c", `source wayfile.bash; ${set}; _wayfile; printf '%s\\n' "\${COMPREPLY[@]}"`]);
  };
  test.each(cases)("%s", (text, has, hasNot) => {
    const found = complete(text);
    expect(found).toEqual(expect.arrayContaining([...has]));
    for (const one of hasNot) expect(found).not.toContain(one);
  });
  test("files of schedules and folders, blanks in their names included", () => {
    expect(complete("wayfile check ").sort()).toEqual(["house one.ways", "site"]);
  });
});

describe.runIf(isHere("fish"))("fish", () => {
  const complete = (text: string): string[] =>
    run("fish", ["--no-config", "-c", `source wayfile.fish; complete -C '${text}'`]).map(
      (line) => line.split("\t")[0] ?? "",
    );
  test.each(cases)("%s", (text, has, hasNot) => {
    const found = complete(text);
    expect(found).toEqual(expect.arrayContaining([...has]));
    for (const one of hasNot) expect(found).not.toContain(one);
  });
});

describe.runIf(isHere("zsh"))("zsh", () => {
  test("reads it without a fault, as a function of its own", () => {
    expect(run("zsh", ["-f", "-n", "wayfile.zsh"])).toEqual([]);
    // Loaded as the shell does it; what it would offer is written out in place of a menu.
    const ask = (words: string, current: number) =>
      run("zsh", [
        "-f",
        "-c",
        `_describe() { print -l -- \${(P)2%%:*} }; _arguments() { print -l -- "$@" }; words=(${words}); CURRENT=${current}; source ./wayfile.zsh`,
      ]);
    expect(ask("wayfile ''", 2)).toEqual(expect.arrayContaining(["check", "compare", "git"]));
    expect(ask("wayfile check ''", 3).join("\n")).toMatch(/--format\[.*\]: :\(text concise json/);
    expect(ask("wayfile git ''", 3).join("\n")).toMatch(/\*: :\(.*setup/);
  });
});
