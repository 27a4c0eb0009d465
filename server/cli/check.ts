/** `wayfile check`: what is wrong with files, and which exit code says so. */
import { dirname } from "node:path";
import type { Text } from "../text/decode.ts";
import { counted } from "../text/words.ts";
import { findAsked } from "./asked.ts";
import { choiceOf } from "./choose.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import type { Fixed, Fixing } from "./fix.ts";
import { folderOf, Houses, refuseSettings, rulesOf } from "./house.ts";
import { namesFrom } from "./names.ts";
import { type ReportingOptions, type Source, writePart, writeReport } from "./report-run.ts";
import { tidy } from "./run/cache.ts";
import { Pace } from "./run/pace.ts";
import { headOf } from "./run/part.ts";
import { type Plan, planOf, Scan, type Task } from "./run/plan.ts";
import { type Ran, run } from "./run/run.ts";
import { type Shard, tasksOf } from "./run/shard.ts";
import { refuse, sentences } from "./say.ts";
import { sinkOf } from "./sink.ts";
import type { Staged } from "./staged.ts";
import type { Terminal } from "./terminal.ts";
import { Timing } from "./timing.ts";

export interface CheckOptions extends ReportingOptions {
  readonly stdinPath?: string;
  readonly timing?: boolean;
  readonly cache: boolean;
  readonly threads?: number;
  readonly since?: string;
  /** What is staged in git, in place of what is on the disk. */
  readonly staged?: boolean;
  readonly shard?: Shard;
  readonly history?: boolean;
  /** Writes what can be put right without a person, or shows it as a patch. */
  readonly fix?: boolean;
  readonly diff?: boolean;
  readonly watch?: boolean;
}

export async function check(args: readonly string[], options: CheckOptions, terminal: Terminal): Promise<number> {
  const misfit = misfitOf(args, options);
  if (misfit !== undefined) return refuse(misfit, terminal);
  const once = () => checkOnce(args, options, terminal);
  if (!options.watch) return await once();
  const { watching } = await import("./watch.ts");
  return await watching(args, once, terminal);
}

/** Options that do not go together. */
function misfitOf(args: readonly string[], options: CheckOptions): string | undefined {
  const { fix, diff, watch, staged, shard, stdinPath } = options;
  const isInput = args.includes("-") || stdinPath !== undefined;
  if ((fix || diff) && (staged || shard || isInput))
    return "--fix and --diff are for files on the disk: leave out --staged, --shard and standard input.";
  if (watch && (staged || shard || isInput))
    return "--watch is for files on the disk: leave out --staged, --shard and standard input.";
  return watch && diff ? "--diff shows changes once: leave out --watch." : undefined;
}

async function checkOnce(args: readonly string[], options: CheckOptions, terminal: Terminal): Promise<number> {
  if (options.tour && options.format !== "text") {
    return refuse(`The tour is for people: leave out --format ${options.format}.`, terminal);
  }
  const stop = new AbortController();
  const release = terminal.onInterrupt(() => stop.abort());
  try {
    return await checkUntil(stop.signal, args, options, terminal);
  } finally {
    release();
  }
}

/** One run, from the files that are asked for to the report. */
interface Checking extends Omit<Fixing, "paths" | "threads"> {
  readonly args: readonly string[];
  readonly options: CheckOptions;
  readonly disk: Disk;
}

async function checkUntil(
  signal: AbortSignal,
  args: readonly string[],
  options: CheckOptions,
  terminal: Terminal,
): Promise<number> {
  const timing = new Timing(terminal, options.timing ?? false);
  const names = namesFrom(terminal.cwd);
  const houses = new Houses(terminal.cwd, terminal.today());
  const choice = choiceOf(options, rulesOf(houses, names, folderOf(args, options.stdinPath, terminal.cwd)));
  if ("failure" in choice) return refuse(choice.failure, terminal);
  const detail = { nameOf: names.nameOf, making: "findings" } as const;
  const disk = new Disk(terminal.cwd);
  const pace = new Pace(terminal, options.quiet ?? false);
  const scan = new Scan(disk);
  const cache = options.cache ? terminal.cache : undefined;
  const checking: Checking = { args, options, terminal, signal, choice, names, detail, disk, pace, cache };
  const found = await filesFor(checking, scan, houses);
  if ("failure" in found) return refuse(found.failure, terminal);
  const { paths } = found;
  for (const path of paths) houses.in(dirname(path));
  if (houses.failures.length > 0) return refuseSettings(houses, terminal);
  const failures = [...found.failures];
  const ended = options.fix || options.diff ? await putRight(checking, paths, failures) : undefined;
  if (ended !== undefined) return ended;
  for (const path of signal.aborted ? [] : paths) scan.add(path);
  const whole = await narrowed(planOf(scan, paths, detail), options.since, disk, terminal);
  if ("failure" in whole) return refuse(whole.failure, terminal);
  const plan = options.shard ? withTasks(whole, tasksOf(options.shard, whole)) : whole;
  timing.phase("read", `${plan.files} files`);
  // Of those that were not read yet when it was broken off, each is left out.
  const files = signal.aborted ? paths.length : plan.files;
  const code = await reported(checking, { whole, plan, files, failures });
  if (cache) tidy(cache);
  timing.phase("check");
  timing.end();
  return code;
}

/** The files that are asked for, each read as it is found. */
function filesFor({ args, options, disk, terminal, pace, signal }: Checking, scan: Scan, houses: Houses) {
  if (options.staged) return findStaged(args, options, disk, terminal);
  return findAsked(
    { args, stdinPath: options.stdinPath },
    { disk, terminal, houses },
    {
      // What is to be put right is read again once it is.
      read: (path, plain) =>
        options.fix || options.diff ? failureOf(disk.namedText(path)) : scan.addNamed(path, plain),
      goesOn: (all) => {
        const breath = pace.breathe(() => `${counted(all, "file")} found, reading`);
        return breath ? breath.then(() => !signal.aborted) : !signal.aborted;
      },
    },
  );
}

const failureOf = (text: Text): { readonly failure: string } | undefined => ("failure" in text ? text : undefined);

/** Writes what can be put right without a person; what is shown as a patch ends the run. */
async function putRight(checking: Checking, paths: readonly string[], failures: string[]): Promise<number | undefined> {
  const { options, disk, terminal, signal } = checking;
  const quiet = options.quiet ?? false;
  const { fixed, writeFixed } = await import("./fix.ts");
  const tried = new Disk(terminal.cwd, disk.folders);
  const done = await fixed(tried, { ...checking, paths, threads: options.threads });
  if (options.diff)
    return signal.aborted ? refuseDiff(terminal) : await showDiff(done.files, failures, disk, quiet, terminal);
  failures.push(...writeFixed(done, disk, quiet, terminal));
  for (const { path } of done.files) disk.reread(path);
  return undefined;
}

interface Planned {
  /** Of all parts of a check that is divided, and what is this one's. */
  readonly whole: Plan;
  readonly plan: Plan;
  readonly files: number;
  readonly failures: string[];
}

/** Checks what is planned and writes what is found as it comes. */
async function reported(checking: Checking, { whole, plan, files, failures }: Planned): Promise<number> {
  const { args, options, terminal, signal, choice, names, detail, disk, pace, cache } = checking;
  // What is staged is known to this thread alone.
  const { program, count = 1 } = (disk.hasOnlyLent ? undefined : terminal.threads) ?? {};
  const threads = { room: count, wanted: options.threads };
  const results = run(plan, disk, { cwd: terminal.cwd, detail, cache, program, signal, threads });
  const judged = options.history
    ? (await import("./signed-history.ts")).withHistory(results, { disk, names, failures, today: terminal.today() })
    : results;
  const source: Source = {
    args,
    results: paced(judged, plan, pace, terminal),
    members: plan.members,
    files,
    failures,
    isStopped: () => signal.aborted,
  };
  const sink = sinkOf(options.outputFile, terminal);
  return options.shard
    ? await writePart(source, headOf(whole, options.shard, disk, detail), whole, names, sink, terminal)
    : await writeReport(source, { choice, names, options, sink, terminal });
}

function refuseDiff(terminal: Terminal): number {
  terminal.err(sentences(["Interrupted: there is no patch."]));
  return exit.interrupted;
}

/** The patch of what would be put right; it ends with 1 where there is something. */
async function showDiff(
  files: readonly Fixed[],
  failures: readonly string[],
  disk: Disk,
  quiet: boolean,
  terminal: Terminal,
): Promise<number> {
  const { nothingToFix, patchText } = await import("./fix.ts");
  terminal.data(patchText(files, disk));
  if (files.length === 0 && !quiet) terminal.err(sentences([nothingToFix]));
  terminal.err(sentences(failures));
  if (failures.length > 0) return exit.failed;
  return files.length > 0 ? exit.errors : exit.clean;
}

/** The same results, with a word on how far they are and a breath between them. */
async function* paced(
  results: AsyncIterable<Ran>,
  { files }: Plan,
  pace: Pace,
  terminal: Terminal,
): AsyncGenerator<Ran> {
  let done = 0;
  for await (const ran of results) {
    done += ran.task.files.length;
    yield ran;
    if (!ran.cached) terminal.checked?.();
    // Once all is checked the report says so.
    if (done < files) await pace.breathe(() => `${done} of ${counted(files, "file")} checked`);
  }
  pace.end();
}

/** The plan with the schedules that a change reaches. */
async function narrowed(
  plan: Plan,
  since: string | undefined,
  disk: Disk,
  { cwd }: Terminal,
): Promise<Plan | { readonly failure: string }> {
  if (since === undefined) return plan;
  const { changedSince } = await import("./run/since.ts");
  const changed = await changedSince(since, cwd, disk);
  if ("failure" in changed) return changed;
  return withTasks(
    plan,
    plan.tasks.filter(({ files }) => files.some((path) => changed.has(path))),
  );
}

const withTasks = (plan: Plan, tasks: readonly Task[]): Plan => ({
  ...plan,
  tasks,
  files: new Set(tasks.flatMap(({ files }) => files)).size,
});

async function findStaged(
  args: readonly string[],
  { stdinPath, since, info }: CheckOptions,
  disk: Disk,
  terminal: Terminal,
): Promise<Staged | { readonly failure: string }> {
  if (args.length > 0 || stdinPath !== undefined || since !== undefined)
    return { failure: "--staged checks what is staged in git: leave out paths, --stdin-path and --since." };
  const { stagedFiles } = await import("./staged.ts");
  const staged = await stagedFiles(terminal.cwd, disk);
  if (!("failure" in staged) && info && staged.paths.length + staged.failures.length === 0)
    terminal.err(sentences(["No schedules are staged: none was checked."]));
  return staged;
}
