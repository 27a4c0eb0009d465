/** `wayfile gather`: puts the parts of a divided run together, into the report one machine would have written. */
import { dirname, resolve } from "node:path";
import { readWhole } from "../disk/read-now.ts";
import { counted } from "../text/words.ts";
import { choiceOf } from "./choose.ts";
import { Houses, refuseSettings, rulesOf } from "./house.ts";
import { namesFrom } from "./names.ts";
import { type ReportingOptions, type Source, writeReport } from "./report-run.ts";
import { membersOf, type Part, type PartHead, readPart } from "./run/part.ts";
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
    const read = readWhole(resolve(terminal.cwd, path));
    const part = "failure" in read ? read : readPart(read.text);
    if ("failure" in part) return refuse(`“${path}” cannot be gathered: ${part.failure}`, terminal);
    parts.push(part);
  }
  const mismatch = mismatchIn(parts);
  if (mismatch !== undefined) return refuse(mismatch, terminal);
  for (const { root } of parts.flatMap(({ lines }) => lines)) houses.in(dirname(names.pathOf(root)));
  if (houses.failures.length > 0) return refuseSettings(houses, terminal);
  const sink = sinkOf(options.outputFile, terminal);
  return await writeReport(sourceOf(parts, paths), { choice, names, options, sink, terminal });
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

function sourceOf(parts: readonly Part[], args: readonly string[]): Source {
  const lines = parts.flatMap((part) => part.lines).sort((a, b) => a.task - b.task);
  const orders = new Map(lines.map(({ root, order }) => [root, order]));
  const [{ head } = { head: { files: 0, shared: {} } }] = parts;
  return {
    args,
    results: (async function* () {
      for (const { root, result } of lines) yield { task: { files: [root] as const }, result };
    })(),
    members: membersOf(head.shared, orders),
    files: head.files,
    failures: [...new Set(parts.flatMap(({ end }) => end.failures))],
    isStopped: () => false,
  };
}
