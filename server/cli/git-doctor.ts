/**
 * `wayfile git doctor`: whether git merges schedules here by what their lines say. Not by looking at settings: it has git
 * merge three small schedules as this repository and this person are set up, among objects of their own that leave no
 * trace.
 */
import { existsSync, mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type GitOptions, git, gitEnd } from "../git/run.ts";
import { exit } from "./exit.ts";
import { placesOf } from "./git-setup.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

interface Answer {
  readonly isRight: boolean;
  readonly text: string;
}

const right = (text: string): Answer => ({ isRight: true, text });
const fault = (text: string): Answer => ({ isRight: false, text });

export async function doctor(terminal: Terminal): Promise<number> {
  const places = await placesOf(terminal.cwd);
  if ("failure" in places) return refuse(places.failure, terminal);
  const ward = await Ward.in(places.top);
  if ("failure" in ward) return refuse(ward.failure, terminal);
  try {
    const answers = [
      ...(await attributesOf(places.top)),
      await ward.merges(),
      await ward.asks(),
      await ward.showsWays(),
      hookAnswer(places.hooks),
    ];
    terminal.out(sentences(answers.map((answer) => `${answer.isRight ? "ok   " : "fault"}  ${answer.text}`)));
    const isRight = answers.every((answer) => answer.isRight);
    if (!isRight) terminal.out(sentences(["“wayfile git setup” sets up what is missing."]));
    return isRight ? exit.clean : exit.errors;
  } finally {
    ward.end();
  }
}

/** A probe, and each schedule of the index: a folder can have attributes of its own. */
async function attributesOf(top: string): Promise<Answer[]> {
  const listed = await git(top, ["ls-files", "-z", "--cached"]);
  const names =
    "out" in listed
      ? listed.out
          .toString("utf8")
          .split("\0")
          .filter((name) => name.endsWith(".ways"))
      : [];
  const asked = ["schedule.ways", ...names];
  const found = await git(top, ["check-attr", "-z", "--stdin", "merge", "diff"], {
    input: asked.map((name) => `${name}\0`).join(""),
  });
  if ("failure" in found) return [fault(found.failure)];
  const fields = found.out.toString("utf8").split("\0");
  const wrong = new Set<string>();
  for (let at = 0; at + 2 < fields.length; at += 3) if (fields[at + 2] !== "wayfile") wrong.add(fields[at] ?? "");
  const [first, ...others] = wrong;
  if (first === undefined) return [right("The attributes of schedules name Wayfile for merges and for diffs.")];
  return [
    fault(
      `The attributes of “${first}”${others.length > 0 ? ` and ${others.length} more` : ""} do not name Wayfile for merges and diffs.`,
    ),
  ];
}

const way = (tests: string): string => `wayfile 1
installation "Doctor" {
  board A "Board" {
    way 1 radial "First" {
      length  18 m
      live 2026-03-05 {
        Zs  0.41 Ω
      }
${tests}    }
  }
}
`;

const visit = (day: string, zs: string): string => `      live ${day} {
        Zs  ${zs} Ω
      }
`;

const name = "wayfile-doctor.ways";

/** Objects in a folder of their own, beside those of the repository. */
class Ward {
  readonly #top: string;
  readonly #folder: string;
  readonly #options: GitOptions;

  private constructor(top: string, folder: string, objects: string) {
    this.#top = top;
    this.#folder = folder;
    const who = { NAME: "Wayfile", EMAIL: "doctor@example.invalid", DATE: "2026-03-05T10:00:00+00:00" };
    const env = Object.entries(who).flatMap(([key, value]) => [
      [`GIT_AUTHOR_${key}`, value],
      [`GIT_COMMITTER_${key}`, value],
    ]);
    this.#options = {
      asConfigured: true,
      env: { ...Object.fromEntries(env), GIT_OBJECT_DIRECTORY: folder, GIT_ALTERNATE_OBJECT_DIRECTORIES: objects },
    };
  }

  static async in(top: string): Promise<Ward | { readonly failure: string }> {
    const found = await git(top, ["rev-parse", "--path-format=absolute", "--git-path", "objects"]);
    if ("failure" in found) return found;
    return new Ward(top, mkdtempSync(join(tmpdir(), "wayfile-doctor-")), found.out.toString("utf8").trim());
  }

  end(): void {
    rmSync(this.#folder, { recursive: true, force: true });
  }

  async merges(): Promise<Answer> {
    const result = await this.#merge(visit("2027-03-10", "0.42"), visit("2027-03-11", "0.43"));
    if ("failure" in result) return fault(result.failure);
    const both = result.text.includes("0.42") && result.text.includes("0.43");
    if (result.clean && both) return right("Tests that two people added at one place were merged, and none was lost.");
    if (both)
      return fault("Tests that two people added at one place were a conflict: git merges schedules line by line here.");
    return fault("Of tests that two people added at one place, one was lost.");
  }

  async asks(): Promise<Answer> {
    const result = await this.#merge(visit("2027-03-10", "0.42"), visit("2027-03-10", "0.43"));
    if ("failure" in result) return fault(result.failure);
    const marked = /^<{7}.*\r?\n +Zs {2}0\.42 Ω\r?\n(?:\|{7}.*\r?\n)?={7}\r?\n +Zs {2}0\.43 Ω\r?\n>{7}/m.test(
      result.text,
    );
    if (result.clean) return fault("Two readings of one test, which differ, were merged without a question.");
    return marked
      ? right("Two readings of one test, which differ, were a conflict of that line.")
      : fault("Two readings of one test, which differ, were a conflict of more than that line.");
  }

  async showsWays(): Promise<Answer> {
    const [before, after] = [await this.#tree(way("")), await this.#tree(way("").replace("0.41", "0.44"))];
    const shown = await git(
      this.#top,
      ["diff-tree", "-p", "-U0", "--no-ext-diff", "--no-color", before, after],
      this.#options,
    );
    if ("failure" in shown) return fault(shown.failure);
    return /^@@ .* @@ *way 1 /m.test(shown.out.toString("utf8")) || /^[-+]A\/1 · /m.test(shown.out.toString("utf8"))
      ? right("A diff names the way it is in.")
      : fault("A diff does not name the way it is in.");
  }

  /** What git makes of two visits to one way. */
  async #merge(
    ours: string,
    theirs: string,
  ): Promise<{ readonly clean: boolean; readonly text: string } | { readonly failure: string }> {
    const base = await this.#commit(way(""));
    const sides = [await this.#commit(way(ours), base), await this.#commit(way(theirs), base)] as const;
    const end = await gitEnd(this.#top, ["merge-tree", "--write-tree", "-z", ...sides], this.#options);
    if ("failure" in end) return end;
    if (end.code > 1) return { failure: "git 2.38 or newer is needed to prove a merge." };
    const tree = /^[0-9a-f]{40,64}/.exec(end.out.toString("utf8"))?.[0] ?? "";
    const merged = await git(this.#top, ["cat-file", "blob", `${tree}:${name}`], this.#options);
    return "failure" in merged ? merged : { clean: end.code === 0, text: merged.out.toString("utf8") };
  }

  async #tree(text: string): Promise<string> {
    const blob = await this.#object(["hash-object", "-w", "--stdin"], text);
    return await this.#object(["mktree"], `100644 blob ${blob}\t${name}\n`);
  }

  async #commit(text: string, ...parents: readonly string[]): Promise<string> {
    return await this.#object(
      ["commit-tree", await this.#tree(text), ...parents.flatMap((parent) => ["-p", parent]), "-m", "Doctor"],
      "",
    );
  }

  async #object(args: readonly string[], input: string): Promise<string> {
    const made = await git(this.#top, args, { ...this.#options, input });
    return "out" in made ? made.out.toString("utf8").trim() : "";
  }
}

function hookAnswer(hooks: string): Answer {
  const path = join(hooks, "pre-commit");
  if (!existsSync(path)) return fault("No hook checks what is staged before it is committed.");
  return (statSync(path).mode & 0o111) === 0 && process.platform !== "win32"
    ? fault(`“${path}” may not be run: git passes it over.`)
    : right("A hook runs before each commit.");
}
