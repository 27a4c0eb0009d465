/**
 * The standing fuzzer: `npm run fuzz -- [--minutes 10] [--from SEED] [--kind KIND] [--threads 1]`, and `npm run fuzz -- --seed SEED` for
 * one case again. Every case follows from its seed. A text that fails is kept in `.build/fuzz`, and becomes a case of a
 * suite once it is understood.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { type Outcome, runCase } from "./case.ts";

interface Task {
  readonly from: number;
  readonly kind: string | undefined;
}

/** A case that takes more than this much of a processor hangs, or is on its way to. */
const mostSeconds = 30;
const mostFailures = 30;

async function work({ from, kind }: Task): Promise<void> {
  for (let seed = from; ; seed++) {
    parentPort?.postMessage({ begins: seed });
    parentPort?.postMessage(await runCase(seed, kind));
  }
}

function keep({ seed, kind, failure }: Outcome): void {
  if (!failure) return;
  const folder = join(import.meta.dirname, "../../.build/fuzz");
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${seed}.ways`), failure.text);
  console.log(`seed ${seed} (${kind}): ${failure.message.split("\n").slice(0, 12).join("\n  ")}`);
  console.log(`  its text: .build/fuzz/${seed}.ways; again: npm run fuzz -- --seed ${seed} --kind ${kind}\n`);
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      seed: { type: "string" },
      from: { type: "string" },
      minutes: { type: "string", default: "10" },
      kind: { type: "string" },
      threads: { type: "string", default: "1" },
    },
  });
  if (values.seed !== undefined) {
    const outcome = await runCase(Number(values.seed), values.kind);
    if (outcome.failure) keep(outcome);
    else console.log(`seed ${outcome.seed} (${outcome.kind}): nothing found`);
    process.exitCode = outcome.failure ? 1 : 0;
    return;
  }
  const from = values.from === undefined ? Date.now() % 2 ** 31 : Number(values.from);
  console.log(`from seed ${from}, for ${values.minutes} minutes`);
  const threads = Array.from({ length: Number(values.threads) }, (_, index) => from + index * seedsOfThread);
  const milliseconds = Number(values.minutes) * 60_000;
  await Promise.all(threads.map((own) => watch({ from: own, kind: values.kind }, milliseconds, threads.length)));
}

/** So many seeds are more than one thread gets through. */
const seedsOfThread = 100_000_000;

/** Runs cases in a thread, so that one that hangs is seen. `threads`: how many there are, whose processor time is one sum. */
function watch(task: Task, milliseconds: number, threads: number): Promise<void> {
  const worker = new Worker(import.meta.filename, { workerData: task });
  const tried = new Map<string, { cases: number; texts: number }>();
  let failures = 0;
  let at = task.from;
  let spent = process.cpuUsage();
  const seconds = (): number => {
    const { user, system } = process.cpuUsage(spent);
    return (user + system) / 1e6;
  };
  return new Promise((resolve) => {
    const end = async (code: number): Promise<void> => {
      clearInterval(look);
      clearTimeout(over);
      await worker.terminate();
      for (const [kind, { cases, texts }] of tried)
        console.log(`${kind.padEnd(10)} ${cases} cases, ${texts} texts or edits`);
      const all = [...tried.values()].reduce((sum, { texts }) => sum + texts, 0);
      console.log(`${all} texts and edits, ${failures} failed; the last seed was ${at}`);
      if (code !== 0) process.exitCode = code;
      resolve();
    };
    const over = setTimeout(() => void end(failures > 0 ? 1 : 0), milliseconds);
    const look = setInterval(() => {
      if (seconds() < mostSeconds * threads) return;
      failures++;
      console.log(`seed ${at}: ${mostSeconds} s of processor, and no end. Again: npm run fuzz -- --seed ${at}`);
      void end(1);
    }, 2_000);
    worker.on("message", (said: Outcome | { readonly begins: number }) => {
      if ("begins" in said) {
        at = said.begins;
        spent = process.cpuUsage();
        return;
      }
      const before = tried.get(said.kind) ?? { cases: 0, texts: 0 };
      tried.set(said.kind, { cases: before.cases + 1, texts: before.texts + said.tried });
      if (!said.failure) return;
      failures++;
      keep(said);
      if (failures >= mostFailures) void end(1);
    });
    worker.on("error", (error) => {
      console.log(`seed ${at}: ${error.stack}`);
      failures++;
      void end(1);
    });
  });
}

if (isMainThread) await main();
else await work(workerData as Task);
