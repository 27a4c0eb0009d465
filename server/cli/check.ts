import { ceiling, decode } from "../text/decode.ts";
import type { LoadedFile } from "../workspace/project.ts";
import { coloursFor } from "./colours.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { jsonReport } from "./json.ts";
import { type CheckRun, checkFiles } from "./judge.ts";
import { textReport } from "./report.ts";
import { jsonText, refuse, sentences } from "./say.ts";
import { findFiles } from "./search.ts";
import type { Terminal } from "./terminal.ts";
import { Timing } from "./timing.ts";
import { isFaultyByName, tour } from "./tour.ts";

export interface CheckOptions {
  readonly format: "text" | "json";
  readonly info: boolean;
  readonly stdinPath?: string;
  readonly tour?: boolean;
  readonly timing?: boolean;
}

/** `wayfile check`: what is wrong with the files, and which exit code says so. */
export async function check(args: readonly string[], options: CheckOptions, terminal: Terminal): Promise<number> {
  if (options.tour && options.format === "json") {
    return refuse("The tour is for people: leave out --format json.", terminal);
  }
  const timing = new Timing(terminal, options.timing ?? false);
  const disk = new Disk(terminal.cwd);
  const shown = (path: string) => disk.shown(path);
  const { files, failures } = await load(args, options, disk, terminal);
  timing.phase("read", `${files.length} files`);
  const judgement = checkFiles(files, disk);
  timing.phase("check", `${judgement.survey.ways} ways`);
  const notes = notesOn(judgement, shown);
  if (options.format === "json") {
    terminal.out(jsonText(jsonReport(judgement, { info: options.info, shown })));
    terminal.err(sentences(notes));
  } else if (files.length > 0) {
    const colours = coloursFor(terminal.colour);
    const report = { colours, info: options.info, shown };
    terminal.out(
      options.tour ? tour(judgement, args, { ...report, program: terminal.program }) : textReport(judgement, report),
    );
    terminal.out(sentences(notes));
  }
  terminal.err(sentences(failures));
  timing.phase("report");
  timing.end();
  if (failures.length > 0) return exit.failed;
  return hasErrors(judgement, options.tour ?? false) ? exit.errors : exit.clean;
}

interface Loaded {
  readonly files: readonly LoadedFile[];
  readonly failures: readonly string[];
}

async function load(
  args: readonly string[],
  { stdinPath }: CheckOptions,
  disk: Disk,
  terminal: Terminal,
): Promise<Loaded> {
  const fromInput = args.includes("-") || (args.length === 0 && stdinPath !== undefined);
  const files = new Set<LoadedFile>();
  const failures: string[] = [];
  if (fromInput) {
    const read = decode(await terminal.input(ceiling));
    const path = disk.path(stdinPath ?? "(standard input)");
    if ("failure" in read) failures.push(`Standard input cannot be read: ${read.failure}`);
    else {
      disk.lend(path, read.text);
      files.add(disk.file(path) as LoadedFile);
    }
  }
  const paths = args.filter((arg) => arg !== "-");
  const found = findFiles(paths.length > 0 || fromInput ? paths : ["."], terminal.cwd);
  for (const folder of found.folders) disk.admit(folder);
  for (const path of found.files.map((file) => disk.path(file))) {
    const file = disk.named(path);
    if ("failure" in file) failures.push(`“${disk.shown(path)}” cannot be read: ${file.failure}`);
    else files.add(file);
  }
  return { files: [...files], failures: [...failures, ...found.failures] };
}

/** What is no fault, but would make a clean result look like more than it is. */
function notesOn({ files, unattached }: CheckRun, shown: (path: string) => string): string[] {
  const empty = files.filter(({ file }) => file.document.segments.every(({ text }) => text.trim() === ""));
  return [
    ...empty.map(({ file }) => `“${shown(file.path)}” is empty.`),
    ...unattached.map(
      (file) =>
        `“${shown(file.path)}” has boards but no installation, and no file given here uses it: nothing judges it.`,
    ),
  ];
}

/** On the tour, a file that is meant to be faulty does not fail the examples. */
const hasErrors = ({ files }: CheckRun, onTour: boolean): boolean =>
  files.some(
    ({ file, findings }) =>
      !(onTour && isFaultyByName(file)) && findings.some(({ finding }) => finding.severity === "error"),
  );
