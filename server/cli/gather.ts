/** `wayfile gather`: puts the parts of a divided run together, into the report one machine would have written. */
import { resolve } from "node:path";
import { linesIn } from "../disk/lines.ts";
import { reasonOf } from "../disk/reasons.ts";
import { counted } from "../text/words.ts";
import { choiceOf } from "./choose.ts";
import { Houses, refuseSettings, rulesOf } from "./house.ts";
import { namesFrom } from "./names.ts";
import { type ReportingOptions, type Source, writeReport } from "./report-run.ts";
import { Pace } from "./run/pace.ts";
import { membersOf, merged, openPart, type Part, type PartHead } from "./run/part.ts";
import { refuse } from "./say.ts";
import { sinkOf } from "./sink.ts";
import type { Terminal } from "./terminal.ts";

export async function gather(paths: readonly string[], options: ReportingOptions, terminal: Terminal): Promise<number> {
  const names = namesFrom(terminal.cwd);
  const houses = new Houses(terminal.cwd, terminal.today());
  const choice = choiceOf(options, rulesOf(houses, names, terminal.cwd));
  if ("failure" in choice) return refuse(choice.failure, terminal);
  const parts: Part[] = [];
  for (const path of paths) {
    const part = partAt(resolve(terminal.cwd, path));
    if ("failure" in part) return refuse(`“${path}” cannot be gathered: ${part.failure}`, terminal);
    parts.push(part);
  }
  const mismatch = mismatchIn(parts);
  if (mismatch !== undefined) return refuse(mismatch, terminal);
  for (const folder of new Set(parts.flatMap(({ end }) => end.folders))) houses.in(names.pathOf(folder));
  if (houses.failures.length > 0) return refuseSettings(houses, terminal);
  const stop = new AbortController();
  const release = terminal.onInterrupt(() => stop.abort());
  try {
    const sink = sinkOf(options.outputFile, terminal);
    const source = sourceOf(parts, paths, stop.signal, new Pace(terminal, options.quiet ?? false));
    return await writeReport(source, { choice, names, options, sink, terminal });
  } finally {
    release();
  }
}

function partAt(path: string): Part | { readonly failure: string } {
  try {
    return openPart(linesIn(path));
  } catch (error) {
    return { failure: reasonOf(error) };
  }
}

/** One sentence where the parts are not all the parts of one run. */
function mismatchIn(parts: readonly Part[]): string | undefined {
  const [first, ...others] = parts.map(({ head }) => head);
  if (!first) return "There is nothing to gather.";
  const isOther = ({ program, plan, shard }: PartHead) =>
    program !== first.program || plan !== first.plan || shard.of !== first.shard.of;
  if (others.some(isOther)) {
    return "These are parts of different runs: the files, the program or the number of shards differ between them.";
  }
  const indices = parts.map(({ head }) => head.shard.index);
  const repeated = indices.find((index, at) => indices.indexOf(index) !== at);
  if (repeated !== undefined) return `Shard ${repeated}/${first.shard.of} is here twice.`;
  const missing = Array.from({ length: first.shard.of }, (_, at) => at + 1).filter((index) => !indices.includes(index));
  if (missing.length > 0) {
    return `${counted(missing.length, "shard")} of ${first.shard.of} missing: ${missing.join(", ")}.`;
  }
  const cut = parts.find(({ end }) => end.interrupted);
  return cut && `Shard ${cut.head.shard.index}/${first.shard.of} was interrupted: run it again.`;
}

function sourceOf(parts: readonly Part[], args: readonly string[], signal: AbortSignal, pace: Pace): Source {
  // The order of a schedule among all is asked as it comes.
  const orders = new Map<string, number>();
  const [{ head } = { head: { files: 0, tasks: 0, shared: {} } }] = parts;
  let done = 0;
  return {
    args,
    results: (async function* () {
      for (const { root, order, result } of merged(parts)) {
        orders.set(root, order);
        yield { task: { files: [root] as const }, result };
        orders.delete(root);
        await pace.breathe(() => `${++done} of ${counted(head.tasks, "schedule")} gathered`);
        if (signal.aborted) break;
      }
      pace.end();
    })(),
    members: membersOf(head.shared, orders),
    files: head.files,
    failures: [...new Set(parts.flatMap(({ end }) => end.failures))],
    isStopped: () => signal.aborted,
  };
}
