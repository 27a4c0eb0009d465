/**
 * The one place where git is started: without a shell, without what a repository or a person has configured to be run
 * beside it, and with a limit on time and size. Only what sets git up changes a repository, and then its configuration.
 */
import { type ChildProcess, type ExecFileOptionsWithBufferEncoding, execFile } from "node:child_process";

export interface GitFailure {
  /** One sentence. */
  readonly failure: string;
}

type GitOutput = { readonly out: Buffer } | GitFailure;

export interface GitOptions {
  /** What git reads on standard input. */
  readonly input?: string;
  /** How long it may take, ms. */
  readonly within?: number;
  /** Whether all that a person configured counts: where git is asked how it is set up, or proved to be. */
  readonly asConfigured?: boolean;
  /** Variables of its surroundings. */
  readonly env?: Readonly<Record<string, string>>;
}

/** What git ended with, where its exit code is an answer. */
interface GitEnd {
  readonly code: number;
  readonly out: Buffer;
  readonly err: string;
}

/** Long enough for a large repository on a slow disk; git that waits for a password or a lock ends here. */
const patience = 30_000;
/** Bytes of output. */
const ceiling = 512 * 1024 * 1024;

/** A repository can come from a stranger: what its configuration has git start is not started, and nothing is asked. */
const settings = [
  "core.fsmonitor=false",
  "core.quotePath=false",
  "core.pager=cat",
  "core.hooksPath=",
  "log.showSignature=false",
].flatMap((setting) => ["-c", setting]);

const surroundings = {
  GIT_OPTIONAL_LOCKS: "0",
  GIT_TERMINAL_PROMPT: "0",
  // An object that a partial copy lacks would be fetched: over a network, by programs that the repository names.
  GIT_NO_LAZY_FETCH: "1",
  GIT_ALLOW_PROTOCOL: "none",
  GIT_PAGER: "cat",
  LC_ALL: "C",
  // On Windows a git.exe in the folder itself would be found before the real one.
  NoDefaultCurrentDirectoryInExePath: "1",
} as const;

/** Runs git in a folder. Arguments that come from outside stand behind `--` or have passed `isRevision`. */
export async function git(folder: string, args: readonly string[], options: GitOptions = {}): Promise<GitOutput> {
  const { error, out, err } = await run(folder, args, options);
  return error ? { failure: reasonOf(error, err) } : { out };
}

/** As `git`, for what answers by its exit code; a failure only where git could not be run or was stopped. */
export async function gitEnd(
  folder: string,
  args: readonly string[],
  options: GitOptions = {},
): Promise<GitEnd | GitFailure> {
  const { error, out, err } = await run(folder, args, options);
  if (error && typeof error.code !== "number") return { failure: reasonOf(error, err) };
  return { code: error ? Number(error.code) : 0, out, err: err.toString("utf8") };
}

interface Ran {
  readonly error: RunError | null;
  readonly out: Buffer;
  readonly err: Buffer;
}

type RunError = Error & { code?: unknown; killed?: boolean };

const none = Buffer.alloc(0);

/** A name that no program can be given, with a null byte in it or too long, fails before git is there. */
function started(
  args: readonly string[],
  options: ExecFileOptionsWithBufferEncoding,
  ended: (error: RunError | null, out: Buffer, err: Buffer) => void,
): ChildProcess | { readonly failed: RunError } {
  try {
    return execFile("git", args, options, ended);
  } catch (error) {
    return { failed: Object.assign(new Error("not started"), { code: "not started", cause: error }) };
  }
}

function run(folder: string, args: readonly string[], options: GitOptions): Promise<Ran> {
  const { input, within = patience, asConfigured = false, env = {} } = options;
  const settled = { cwd: folder, encoding: "buffer", maxBuffer: ceiling, timeout: within, windowsHide: true } as const;
  return new Promise((resolve) => {
    const ended = (error: RunError | null, out: Buffer, err: Buffer) => resolve({ error, out, err });
    const child = started(
      ["--no-pager", "--literal-pathspecs", ...(asConfigured ? [] : settings), ...args],
      { ...settled, env: { ...process.env, ...surroundings, ...env } },
      ended,
    );
    if ("failed" in child) return ended(child.failed, none, none);
    // A git that ends before it has read everything says why in its exit; the broken pipe is no news.
    child.stdin?.on("error", () => {});
    child.stdin?.end(input ?? "");
  });
}

function reasonOf(error: RunError, err: Buffer): string {
  if (error.code === "ENOENT") return "git was not found: it is not installed, or not on the PATH.";
  if (error.code === "not started") return "git cannot be asked about a file of this name.";
  if (error.killed) return "git took too long and was stopped.";
  if (error.code === "ERR_CHILD_PROCESS_STDIO_MAXBUFFER") return "git gave more than can be read.";
  const all = err.toString("utf8");
  if (/lazy fetching disabled|from promisor remote/.test(all)) return partial;
  const [first = ""] = all.split(/\r?\n/);
  const said = first.replace(/^(?:fatal|error): /, "");
  const known = ownWords.find(([pattern]) => pattern.test(said));
  if (known) return known[1];
  return said === "" ? "git failed and gave no reason." : `git: ${said}${/[.!?]$/.test(said) ? "" : "."}`;
}

export const partial =
  "This copy of the repository is partial and lacks what is needed: “git fetch --refetch --no-filter” brings the rest.";

/** What people meet every day, with what puts it right. */
const ownWords: readonly (readonly [RegExp, string])[] = [
  [/^not a git repository/, "This folder is in no git repository: change to one, or make one with “git init”."],
  [
    /^this operation must be run in a work tree/,
    "This repository is bare and has no files: run it in a clone, or in a worktree of it.",
  ],
];

/** Whether a text can be put to git as a revision: it is no option, and it is one line. */
export const isRevision = (text: string): boolean => text !== "" && !text.startsWith("-") && !/[\0\r\n]/.test(text);
