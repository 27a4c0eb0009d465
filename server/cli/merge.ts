/**
 * `wayfile merge`: three versions of a schedule as one, as git asks a merge driver for it. What cannot be merged by what
 * its lines say is merged line by line, as git does it, and that is reported.
 */
import { resolve } from "node:path";
import { readBeside } from "../disk/read-now.ts";
import { gitEnd } from "../git/run.ts";
import { placeOf, sideText } from "../merge/describe.ts";
import { isMerged, type Merged, merge as merged } from "../merge/merge.ts";
import { type Marks, type Style, textOf } from "../merge/write.ts";
import type { Text } from "../text/decode.ts";
import { counted } from "../text/words.ts";
import { languageVersion } from "../workspace/language-version.ts";
import { exit } from "./exit.ts";
import { labelsFor, named, type SideLabels, styleFor } from "./merge-labels.ts";
import { signedNotes } from "./merge-signed.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { replaceFile } from "./write.ts";

export interface MergeOptions {
  readonly markerSize: string;
  /** The path of the file in its repository. */
  readonly path?: string;
  readonly base?: string;
  readonly ours?: string;
  readonly theirs?: string;
  readonly style?: Style;
  readonly stdout?: boolean;
}

interface Files {
  readonly base: string;
  readonly ours: string;
  readonly theirs: string;
}

/** Exit code 1 if and only if there are conflicts, which are marked in the file then. */
export async function mergeCommand(asked: Files, options: MergeOptions, terminal: Terminal): Promise<number> {
  const size = Number(options.markerSize);
  if (!Number.isInteger(size) || size < 1 || size > 1000)
    return refuse(`A marker has from 1 to 1000 signs; “${options.markerSize}” is no such number.`, terminal);
  const files = {
    base: resolve(terminal.cwd, asked.base),
    ours: resolve(terminal.cwd, asked.ours),
    theirs: resolve(terminal.cwd, asked.theirs),
  };
  const texts = { base: readBeside(files.base), ours: readBeside(files.ours), theirs: readBeside(files.theirs) };
  for (const side of ["base", "ours", "theirs"] as const) {
    const text = texts[side];
    if ("failure" in text && text.failure === "there is no such file.")
      return refuse(`“${asked[side]}” cannot be read: ${text.failure}`, terminal);
  }
  const shown = options.path ?? asked.ours;
  const outcome = outcomeOf(texts);
  const job: Job = { files, options, size, shown, terminal };
  if (!isMerged(outcome)) return await byLines(outcome.unreadable, job);
  const code = await written(outcome, job);
  const { base, ours, theirs } = texts;
  if (!("failure" in base || "failure" in ours || "failure" in theirs)) {
    const sides = { base: base.text, ours: ours.text, theirs: theirs.text };
    const labels = { ours: named(options.ours) ?? "ours", theirs: named(options.theirs) ?? "theirs" };
    terminal.err(sentences(signedNotes(sides, labels)));
  }
  return code;
}

interface Job {
  readonly files: Files;
  readonly options: MergeOptions;
  readonly size: number;
  readonly shown: string;
  readonly terminal: Terminal;
}

function outcomeOf({ base, ours, theirs }: Record<keyof Files, Text>): ReturnType<typeof merged> {
  for (const text of [base, ours, theirs])
    if ("failure" in text) return { unreadable: text.failure.replace(/\.$/, "") };
  if ("failure" in base || "failure" in ours || "failure" in theirs) return { unreadable: "" };
  try {
    return merged({ base, ours, theirs }, languageVersion);
  } catch (error) {
    return { unreadable: `the program failed (${error instanceof Error ? error.message : String(error)})` };
  }
}

function textAt(path: string): string | undefined {
  const read = readBeside(path);
  return "failure" in read ? undefined : read.text;
}

async function written(outcome: Merged, { files, options, size, shown, terminal }: Job): Promise<number> {
  const hasConflicts = outcome.conflicts.length > 0;
  const plain: SideLabels = { base: "base", ours: "ours", theirs: "theirs" };
  const labels = hasConflicts ? await labelsFor(options, textAt(files.theirs), terminal.cwd) : plain;
  const style = hasConflicts ? (options.style ?? (await styleFor(terminal.cwd))) : "merge";
  const marks: Marks = { size, style, ...labels };
  const text = textOf(outcome, marks);
  if (options.stdout) terminal.data(text);
  else {
    const reason = replaceFile(files.ours, text);
    if (reason) return refuse(`“${shown}” cannot be written: ${reason}`, terminal);
  }
  terminal.err(sentences(reportOf(outcome, labels, shown)));
  return hasConflicts ? exit.errors : exit.clean;
}

/** More conflicts than this are counted. */
const mostShown = 20;

function reportOf({ conflicts }: Merged, labels: SideLabels, shown: string): string[] {
  if (conflicts.length === 0) return [];
  const rest = conflicts.length - mostShown;
  return [
    `“${shown}”: both sides changed ${counted(conflicts.length, "place")} differently.`,
    ...conflicts
      .slice(0, mostShown)
      .flatMap((conflict) => [
        `  ${placeOf(conflict)}`,
        `    ${labels.ours}: ${sideText(conflict.ours)}`,
        `    ${labels.theirs}: ${sideText(conflict.theirs)}`,
      ]),
    ...(rest > 0 ? [`  and ${rest} more, marked in the file`] : []),
  ];
}

/** As git merges any other file. */
async function byLines(why: string, { files, options, size, shown, terminal }: Job): Promise<number> {
  const labels = await labelsFor(options, textAt(files.theirs), terminal.cwd);
  const style = options.style ?? (await styleFor(terminal.cwd));
  const end = await gitEnd(terminal.cwd, [
    "merge-file",
    "--quiet",
    ...(options.stdout ? ["--stdout"] : []),
    ...(style === "merge" ? [] : [`--${style}`]),
    `--marker-size=${size}`,
    ...[labels.ours, labels.base, labels.theirs].flatMap((label) => ["-L", label]),
    "--",
    files.ours,
    files.base,
    files.theirs,
  ]);
  const reason = `“${shown}” cannot be merged by what its lines say: ${why}.`;
  if ("failure" in end) return refuse(`${reason} It cannot be merged line by line either: ${end.failure}`, terminal);
  if (end.code > 127) {
    terminal.err(
      sentences([
        `${reason} It cannot be merged line by line either: ${end.err.trim()} It is left as it is on our side.`,
      ]),
    );
    return exit.failed;
  }
  if (options.stdout) terminal.data(end.out.toString("utf8"));
  const after = end.code === 0 ? "" : ` ${counted(end.code, "conflict")} left in it.`;
  terminal.err(
    sentences([
      `${reason} It was merged line by line, which can put two tests of one day beside each other: check it before it is committed.${after}`,
    ]),
  );
  return end.code === 0 ? exit.clean : exit.errors;
}
