/** Reports what a run finds, as it finds it: to people and programs, or as a part for `gather`. */
import { Joiner, type Membership } from "../results/join.ts";
import type { FileResult } from "../results/result.ts";
import { Sum, type Totals } from "../results/totals.ts";
import { term } from "../text/terminal.ts";
import { counted } from "../text/words.ts";
import type { Choice, ChoiceOptions } from "./choose.ts";
import { coloursFor } from "./colours.ts";
import { exit } from "./exit.ts";
import { type Format, forPeople, reporterNamed } from "./formats/index.ts";
import type { Reporter } from "./formats/reporter.ts";
import type { Names } from "./names.ts";
import type { TaskResult } from "./run/made.ts";
import { type PartHead, type PartLine, PartSum } from "./run/part.ts";
import type { Plan, Task } from "./run/plan.ts";
import { sentences } from "./say.ts";
import type { Sink } from "./sink.ts";
import type { Terminal } from "./terminal.ts";

/** How a run is reported, whatever it was that ran. */
export interface ReportingOptions extends ChoiceOptions {
  readonly format: Format;
  readonly info: boolean;
  readonly quiet?: boolean;
  readonly statistics?: boolean;
  readonly width?: number;
  readonly outputFile?: string;
  readonly tour?: boolean;
}

/** What a run gives. */
export interface Source {
  /** The arguments of the command, for suggestions. */
  readonly args: readonly string[];
  readonly results: AsyncIterable<{ readonly task: Pick<Task, "files">; readonly result: TaskResult }>;
  readonly members: Membership;
  /** How many files there are to check. */
  readonly files: number;
  /** What could not be read. */
  readonly failures: readonly string[];
  readonly isStopped: () => boolean;
}

interface Writing {
  readonly choice: Choice;
  readonly names: Names;
  readonly options: ReportingOptions;
  readonly sink: Sink;
  readonly terminal: Terminal;
}

/** Writes the report and returns the exit code. */
export async function writeReport(source: Source, writing: Writing): Promise<number> {
  const { options, sink, terminal, choice } = writing;
  const reporter = await reporterFor(source.args, writing);
  const seen = await reportAll(source, reporter, writing);
  const isNothing = source.files === 0 && source.failures.length > 0;
  if (!(isNothing && options.format === "text")) sink.out(reporter.end(seen.total));
  // A file that another program reads says nothing of what was left out.
  const unwritten = source.isStopped() ? sink.drop() : sink.end();
  const notes = sentences(options.quiet ? [] : seen.notes);
  if (forPeople.has(options.format) && options.outputFile === undefined) terminal.out(notes);
  else terminal.err(notes);
  const failures = [...source.failures, ...seen.failures, ...(unwritten === undefined ? [] : [unwritten])];
  terminal.err(sentences(failures));
  if (source.isStopped()) return interrupted(seen.total, source, terminal);
  if (failures.length > 0) return exit.failed;
  return choice.fails(seen.judged) ? exit.errors : exit.clean;
}

function interrupted({ files }: Pick<Totals, "files">, source: Source, terminal: Terminal): number {
  const left = Math.max(source.files - files, 0);
  const sentence = `Interrupted: ${counted(files, "file")} checked, ${left} left out. This report is not whole.`;
  terminal.err(sentences([sentence]));
  return exit.interrupted;
}

interface Seen {
  readonly total: Sum;
  /** What decides the exit code: on a tour, files that are meant to be faulty do not. */
  readonly judged: Sum;
  readonly notes: readonly string[];
  readonly failures: readonly string[];
}

async function reportAll(source: Source, reporter: Reporter, writing: Writing): Promise<Seen> {
  const { choice, options, sink } = writing;
  const { shown } = writing.names;
  const { isFaultyByName } = options.tour ? await import("./tour.ts") : { isFaultyByName: () => false };
  const total = new Sum();
  const judged = new Sum();
  const notes: string[] = [];
  const unattached: string[] = [];
  const failures: string[] = [];
  const joiner = new Joiner(source.members);
  const report = (whole: FileResult): void => {
    const { file, suppressed, leftOut } = choice.of(whole);
    total.add(file);
    total.leftOut += leftOut;
    total.suppressed.push(...suppressed);
    if (!isFaultyByName(file)) judged.add(file);
    if (file.holds.isEmpty) notes.push(`“${shown(file.path)}” is empty.`);
    sink.out(reporter.file(file));
  };
  for await (const { task, result } of source.results) {
    if ("failure" in result) {
      failures.push(`“${shown(writing.names.nameOf(task.files[0]))}” ${result.failure}`);
      continue;
    }
    const { files, suppressed } = joiner.add(result);
    for (const file of files) report(file);
    for (const one of suppressed) if (choice.has(one.finding.check)) total.suppressed.push(one);
    if (result.unattached) unattached.push(unattachedNote(shown(result.root)));
  }
  for (const file of joiner.rest()) report(file);
  return { total, judged, notes: [...notes, ...unattached], failures };
}

const unattachedNote = (file: string): string =>
  `“${file}” has boards but no installation, and no file given here uses it: nothing judges it.`;

async function reporterFor(args: readonly string[], { options, names, terminal }: Writing): Promise<Reporter> {
  const { format, info, quiet = false, statistics = false, outputFile } = options;
  const width = options.width ?? (outputFile === undefined ? terminal.width : undefined);
  const reporting = {
    colours: coloursFor(terminal.colour && outputFile === undefined),
    info,
    quiet,
    statistics,
    shown: names.shown,
    ...(width === undefined ? {} : { width }),
  };
  if (!options.tour) return (await reporterNamed(format))(reporting);
  const { tour } = await import("./tour.ts");
  const files: FileResult[] = [];
  return {
    file: (file) => {
      files.push(file);
      return term``;
    },
    end: () => tour(files, args, { ...reporting, program: terminal.program }),
  };
}

/** Writes the results of a shard one after another, to be put together with those of the others. */
export async function writePart(
  source: Source,
  head: PartHead,
  { tasks, members }: Plan,
  { nameOf }: Names,
  sink: Sink,
  terminal: Terminal,
): Promise<number> {
  const { line } = await import("./formats/jsonl.ts");
  const numbers = new Map(tasks.map((task, number) => [task.files[0], number]));
  let failed = source.failures.length > 0;
  const sum = new PartSum();
  const write = (value: PartHead | PartLine, of?: string): void => {
    const text = line(value);
    sum.add(text.text, of);
    sink.out(text);
  };
  write(head);
  for await (const { task, result } of source.results) {
    const [path] = task.files;
    const root = nameOf(path);
    const numbered = { task: numbers.get(path) ?? 0, order: members.orderOf(root), files: task.files.length };
    write({ ...numbered, root, result }, root);
    if ("failure" in result) failed = true;
  }
  const stopped = source.isStopped();
  sink.out(line(sum.end({ failures: source.failures, interrupted: stopped })));
  const unwritten = stopped ? sink.drop() : sink.end();
  terminal.err(sentences([...source.failures, ...(unwritten === undefined ? [] : [unwritten])]));
  if (stopped) terminal.err(sentences(["Interrupted: this part is not whole."]));
  if (stopped) return exit.interrupted;
  return failed || unwritten !== undefined ? exit.failed : exit.clean;
}
