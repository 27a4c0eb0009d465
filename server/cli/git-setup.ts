/**
 * `wayfile git setup`: what a repository is told of schedules, written where it travels to nobody else, and undone by one
 * command. What somebody else wrote there is left alone.
 */
import { chmodSync, existsSync, mkdirSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { readBeside } from "../disk/read-now.ts";
import { reasonOf } from "../disk/reasons.ts";
import { git } from "../git/run.ts";
import { exit } from "./exit.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export interface SetupOptions {
  readonly dryRun?: boolean;
  readonly undo?: boolean;
  readonly textconv?: boolean;
  readonly hooks: boolean;
}

/** Where a repository keeps what is its own and not part of its history. */
export interface Places {
  readonly top: string;
  readonly attributes: string;
  readonly hooks: string;
}

export async function placesOf(folder: string): Promise<Places | { readonly failure: string }> {
  const asked = ["rev-parse", "--path-format=absolute", "--show-toplevel", "--git-common-dir", "--git-path", "hooks"];
  const found = await git(folder, asked, { asConfigured: true });
  if ("failure" in found) return found;
  const [top = "", common = "", hooks = ""] = found.out.toString("utf8").split(/\r?\n/);
  return { top, attributes: join(common, "info", "attributes"), hooks };
}

/** One thing to write or to take away. `left` says why it is not done. */
interface Step {
  readonly shown: string;
  readonly left?: string;
  readonly act: () => Promise<string | undefined>;
}

export async function setup(options: SetupOptions, terminal: Terminal): Promise<number> {
  const places = await placesOf(terminal.cwd);
  if ("failure" in places) return refuse(places.failure, terminal);
  const program = programOf(terminal.script);
  const steps = await (options.undo ? undoing(places, program) : doing(places, program, options));
  const verb = options.undo ? "Taken away" : "Written";
  if (steps.length === 0) {
    terminal.out(sentences([options.undo ? "Nothing of Wayfile is set up here." : "All is set up already."]));
    return exit.clean;
  }
  let failed = false;
  for (const { shown, left, act } of steps) {
    const problem = left ?? (options.dryRun ? undefined : await act());
    if (problem !== undefined) failed = true;
    const done =
      problem === undefined
        ? `${options.dryRun ? "Would be " : ""}${options.dryRun ? verb.toLowerCase() : verb}`
        : "Left alone";
    terminal.out(sentences([`${done}: ${shown}`, ...(problem === undefined ? [] : [`  ${problem}`])]));
  }
  if (!options.undo && !options.dryRun)
    terminal.out(sentences(["“wayfile git doctor” proves it by a merge; “wayfile git setup --undo” takes it away."]));
  return failed ? exit.errors : exit.clean;
}

const quoted = (text: string): string => `'${text.replaceAll("\\", "/").replaceAll("'", "'\\''")}'`;

/** This program as a shell starts it. */
interface Program {
  readonly node: string;
  readonly script: string;
}

function programOf(path: string): Program {
  return { node: quoted(process.execPath), script: quoted(realpathSync(path)) };
}

/** What git runs. Where the program is gone, or gives up, git's own merge takes over: neither side is lost. */
function driver({ node, script }: Program): string {
  const labels = "--base %S --ours %X --theirs %Y";
  const run = `${node} ${script} merge %O %A %B --marker-size %L --path %P ${labels}`.replace(
    /%(?![OABLPSXY]\b)/g,
    "%%",
  );
  const isDone = "test $s -eq 0 || { test $s -eq 1 && grep -q '^<' %A; }";
  const own = "git merge-file --marker-size=%L -L ours -L base -L theirs %A %O %B || exit 1";
  return `if test -x ${node} && test -f ${script}; then ${run}; s=$?; if ${isDone}; then exit $s; fi; fi; ${own}`;
}

/** `git diff` of what is said rather than of how it is written. */
function textconv({ node, script }: Program): string {
  const inner = `if test -x ${node} && test -f ${script}; then exec ${node} ${script} git textconv "$1"; fi; cat "$1"`;
  return `sh -c ${quoted(inner)} --`;
}

export const hunkHeader =
  "^[[:blank:]]*((installation|supply|board|way|instrument|circuit-type|inspection)([[:blank:]].*)?)$";

const settings = (program: Program, withTextconv: boolean): readonly (readonly [string, string])[] => [
  ["merge.wayfile.name", "schedules by what their lines say"],
  ["merge.wayfile.driver", driver(program)],
  ["diff.wayfile.xfuncname", hunkHeader],
  ...(withTextconv
    ? ([
        ["diff.wayfile.textconv", textconv(program)],
        ["diff.wayfile.cachetextconv", "true"],
      ] as const)
    : []),
];

async function doing(
  places: Places,
  program: Program,
  { textconv: meaning = false, hooks }: SetupOptions,
): Promise<Step[]> {
  const steps: Step[] = [];
  for (const [name, value] of settings(program, meaning)) {
    const before = await setting(places.top, name);
    if (before !== value)
      steps.push({ shown: `git config ${name}  ${value}`, act: () => configure(places.top, [name, value]) });
  }
  const attributes = attributesStep(places.attributes);
  if (attributes) steps.push(attributes);
  if (hooks) for (const name of hookNames) steps.push(...hookStep(join(places.hooks, name), name, hookText(program)));
  return steps;
}

async function setting(folder: string, name: string): Promise<string | undefined> {
  const found = await git(folder, ["config", "--local", "--get", name]);
  return "out" in found ? found.out.toString("utf8").replace(/\r?\n$/, "") : undefined;
}

async function configure(folder: string, args: readonly string[]): Promise<string | undefined> {
  const done = await git(folder, ["config", "--local", ...args]);
  return "failure" in done ? done.failure : undefined;
}

const begin = "# Wayfile: begin (wayfile git setup --undo takes these lines away)";
const end = "# Wayfile: end";
const ownLines = `${begin}\n*.ways diff=wayfile merge=wayfile\n${end}\n`;
const own = new RegExp(`${begin.replace(/[()]/g, "\\$&")}\\n[\\s\\S]*?${end}\\n?`);

function textAt(path: string): string {
  const read = readBeside(path);
  return "text" in read ? read.text : "";
}

function attributesStep(path: string): Step | undefined {
  const before = textAt(path);
  if (before.includes(ownLines)) return undefined;
  const rest = before.replace(own, "");
  const other = rest.split(/\r?\n/).find((line) => /^\*\.ways\s.*\b(?:merge|diff)\b/.test(line));
  const gap = rest === "" || rest.endsWith("\n") ? "" : "\n";
  return {
    shown: `${path}  *.ways diff=wayfile merge=wayfile`,
    ...(other ? { left: `It has a line for schedules already: “${other}”. Take it out, and set up again.` } : {}),
    act: async () => written(path, `${rest}${gap}${ownLines}`),
  };
}

const hookNames = ["pre-commit", "pre-merge-commit"] as const;
const hookMark = "# Wayfile checks what is staged (wayfile git setup --undo takes this file away)";

function hookText({ node, script }: Program): string {
  return [
    "#!/bin/sh",
    hookMark,
    `if test -x ${node} && test -f ${script}; then exec ${node} ${script} check --staged --no-info; fi`,
    'echo "Wayfile is not where it was: what is staged was not checked." >&2',
    "",
  ].join("\n");
}

function hookStep(path: string, name: string, text: string): Step[] {
  const before = existsSync(path) ? textAt(path) : undefined;
  if (before === text) return [];
  const other = before !== undefined && !before.includes(hookMark);
  const step: Step = {
    shown: path,
    ...(other
      ? { left: `There is a ${name} hook already. Add this line to it: wayfile check --staged --no-info` }
      : {}),
    act: async () => written(path, text, 0o755),
  };
  return [step];
}

function written(path: string, text: string, mode = 0o644): string | undefined {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
    if (mode !== 0o644) chmodSync(path, mode);
    return undefined;
  } catch (error) {
    return reasonOf(error);
  }
}

async function undoing({ top, attributes, hooks }: Places, program: Program): Promise<Step[]> {
  const steps: Step[] = [];
  for (const [name, value] of settings(program, true)) {
    const before = await setting(top, name);
    // A hunk header of one's own stays.
    const isOwn =
      before !== undefined && (before === value || name.startsWith("merge.wayfile.") || name.endsWith("textconv"));
    if (isOwn) steps.push({ shown: `git config ${name}`, act: () => configure(top, ["--unset-all", name]) });
  }
  const text = textAt(attributes);
  if (own.test(text)) {
    const rest = text.replace(own, "");
    steps.push({
      shown: `${attributes}  *.ways diff=wayfile merge=wayfile`,
      act: async () => (rest === "" ? removed(attributes) : written(attributes, rest)),
    });
  }
  for (const name of hookNames) {
    const path = join(hooks, name);
    if (existsSync(path) && textAt(path).includes(hookMark))
      steps.push({ shown: path, act: async () => removed(path) });
  }
  return steps;
}

function removed(path: string): string | undefined {
  try {
    rmSync(path, { force: true });
    return undefined;
  } catch (error) {
    return reasonOf(error);
  }
}
