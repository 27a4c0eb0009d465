/**
 * `wayfile check --fix`: the changes that are right whatever the reason for the fault is. They are made in the texts in
 * memory until nothing more is to be put right, and then written, or shown as a patch.
 */
import type { FileResult, ResultFix } from "../results/result.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";
import { counted } from "../text/words.ts";
import type { Choice } from "./choose.ts";
import type { Disk } from "./files.ts";
import type { Names } from "./names.ts";
import { patchOf } from "./patch.ts";
import type { Pace } from "./run/pace.ts";
import type { TaskDetail } from "./run/plan.ts";
import { planOf, Scan } from "./run/plan.ts";
import { run } from "./run/run.ts";
import { sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { clearStale, replaceUnchanged } from "./write.ts";

export interface Fixed {
  readonly path: string;
  readonly before: string;
  readonly after: string;
}

/** A fix can show another fault that has one; that ends, but a fault of ours should not go on for ever. */
const mostRounds = 5;

export interface Fixing {
  readonly paths: readonly string[];
  readonly choice: Choice;
  readonly names: Names;
  readonly detail: TaskDetail<"findings">;
  readonly terminal: Terminal;
  readonly signal: AbortSignal;
  readonly cache: Terminal["cache"];
  readonly threads: number | undefined;
  readonly pace: Pace;
}

/**
 * The files that were asked for, put right as far as that can be done without a person. Where it is broken off before all
 * is known, nothing is changed.
 */
export async function fixed(
  disk: Disk,
  fixing: Fixing,
): Promise<{ readonly files: readonly Fixed[]; readonly fixes: number }> {
  const { paths, names, signal } = fixing;
  const asked = new Set(paths);
  const files = new Map<string, Fixed>();
  let fixes = 0;
  for (let round = 0; round < mostRounds; round++) {
    const results = await judged(disk, fixing);
    if (signal.aborted) return { files: [], fixes: 0 };
    let changed = false;
    for (const result of results) {
      const path = names.pathOf(result.path);
      if (!asked.has(path)) continue;
      const read = disk.namedText(path);
      if ("failure" in read) continue;
      const chosen = together(fixing.choice.of(result).file);
      if (chosen.length === 0) continue;
      const after = applyEdits(
        read.text,
        chosen.flatMap(({ edits }) => edits),
      );
      files.set(path, { path, before: files.get(path)?.before ?? read.text, after });
      disk.lend(path, after);
      changed = true;
      fixes += chosen.length;
    }
    if (!changed) break;
  }
  return { files: [...files.values()].filter(({ before, after }) => before !== after), fixes };
}

async function judged(disk: Disk, fixing: Fixing): Promise<FileResult[]> {
  const { paths, detail, terminal, signal, cache, threads, pace } = fixing;
  const scan = new Scan(disk);
  for (const path of paths) scan.add(path);
  const plan = planOf(scan, paths, detail);
  const { program, count = 1 } = terminal.threads ?? {};
  const options = { cwd: terminal.cwd, detail, cache, program, signal, threads: { room: count, wanted: threads } };
  const files = new Map<string, FileResult>();
  let done = 0;
  for await (const { result } of run(plan, disk, options)) {
    done++;
    await pace.breathe(() => `${done} of ${counted(plan.tasks.length, "schedule")} looked at for fixes`);
    if ("failure" in result) continue;
    for (const file of result.files) {
      const before = files.get(file.path);
      // A file that several schedules use is found alike in them, or its fix is not one for all of them.
      const isShared = plan.members.schedulesOf(file.path) > 1;
      if (before) files.set(file.path, inBoth(before, file));
      else if (isShared || file.findings.some(({ fixes }) => fixes.length > 0)) files.set(file.path, file);
    }
  }
  return [...files.values()];
}

function inBoth(one: FileResult, other: FileResult): FileResult {
  const known = new Set(other.findings.map(({ check, at, message }) => `${check} ${at.offset} ${message}`));
  return {
    ...one,
    findings: one.findings.filter(({ check, at, message }) => known.has(`${check} ${at.offset} ${message}`)),
  };
}

/** Safe fixes that do not touch the same place: of two that do, the other waits for the next round. */
function together({ findings }: FileResult): ResultFix[] {
  const chosen: ResultFix[] = [];
  const taken: TextEdit[] = [];
  for (const { fixes } of findings) {
    const safe = fixes.filter((fix) => fix.safe);
    // Where there is a choice, it is a person's.
    const [fix] = safe;
    if (!fix || safe.length > 1 || fix.edits.length === 0) continue;
    if (fix.edits.some((edit) => taken.some((other) => meets(edit, other)))) continue;
    chosen.push(fix);
    taken.push(...fix.edits);
  }
  return chosen;
}

const meets = (one: TextEdit, other: TextEdit): boolean => one.start <= other.end && other.start <= one.end;

/** The patch of all of them. */
export const patchText = (files: readonly Fixed[], disk: Disk): string =>
  files.map(({ path, before, after }) => patchOf(disk.shown(path), before, after)).join("");

/** Writes them; gives a sentence for each that could not be. */
export function writeFixed(
  { files, fixes }: Awaited<ReturnType<typeof fixed>>,
  disk: Disk,
  quiet: boolean,
  terminal: Terminal,
): string[] {
  const failures = files.flatMap(({ path, before, after }) => {
    const reason = replaceUnchanged(path, disk, before, after);
    return reason === undefined ? [] : [`“${disk.shown(path)}” cannot be written: ${reason}`];
  });
  clearStale(files.map(({ path }) => path));
  const written = files.length - failures.length;
  if (!quiet && files.length === 0) terminal.err(sentences([nothingToFix]));
  if (!quiet && written > 0) {
    const count = failures.length === 0 ? `${counted(fixes, "finding")} put right` : "Findings were put right";
    terminal.err(sentences([`${count} in ${counted(written, "file")}.`]));
  }
  return failures;
}

export const nothingToFix = "Nothing here can be put right without a person.";
