/**
 * What a way costs, in processor time and in memory kept. A measurement, not a test: `npm run bench:way [ways]`, and
 * `node --cpu-prof tests/bench/way-cost.ts` for where it goes.
 */
import { cpuUsage } from "node:process";
import { Engine } from "../../server/model/engine.ts";
import { type Document, documentOf } from "../../server/syntax/document.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText, type LoadedFile, loadFile } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { generate } from "../helpers/generate.ts";

const engine = new Engine();
const sources: Sources = { engine, file: () => ({ failure: "" }), resolve: (_, use) => use };

/** Milliseconds of processor, those of the other threads that compile and collect included. */
function cost<T>(run: () => T): { readonly value: T; readonly ms: number } {
  const before = cpuUsage();
  const value = run();
  const { user, system } = cpuUsage(before);
  return { value, ms: (user + system) / 1000 };
}

/** Bytes that live after a collection; nothing where `--expose-gc` is not given. */
function kept(): number {
  for (let round = 0; round < 4; round++) globalThis.gc?.();
  return process.memoryUsage().heapUsed;
}

interface WayCost {
  /** ms of processor a way, the first time anything is read. */
  readonly cold: number;
  /** ms of processor a way: another text, read and checked by code that is warm. */
  readonly fresh: number;
  /** ms of processor a way: every way checked again, nothing read but the origin. */
  readonly again: number;
  /** Bytes a way. */
  readonly text: number;
  readonly facts: number;
  readonly checks: number;
}

/** The figure at the origin that every way is judged by. */
const withZe = (text: string, round: number): string => text.replace(/^( +Ze +)\d+\.\d+/m, `$10.1${round % 10}`);

/** What else runs on the machine only ever adds. */
const least = (values: readonly number[]): number => Math.min(...values);

function wayCost(ways: number, rounds = 7): WayCost {
  const first = generate({ ways, seed: 1 });
  const cold = cost(() => checkText(first));
  const fresh = Array.from({ length: rounds }, (_, round) => {
    const text = generate({ ways, seed: 100 + round });
    return cost(() => checkText(text)).ms;
  });
  const again: number[] = [];
  let file = checkText(generate({ ways, seed: 2 }));
  for (let round = 0; round < rounds; round++) {
    const { value, ms } = cost(() => checkAgain(file, round));
    file = value;
    again.push(ms);
  }
  return { cold: cold.ms / ways, fresh: least(fresh) / ways, again: least(again) / ways, ...memory(ways) };
}

function checkText(text: string): LoadedFile {
  const file = fileOfText("bench.ways", text, engine.lines);
  checkProject(file, sources);
  return file;
}

/** The same ways below another origin: what was read of them stays, what was found does not. */
function checkAgain(file: LoadedFile, round: number): LoadedFile {
  const segments = file.document.segments.map((segment) =>
    segment.word === "supply" ? (documentOf(withZe(segment.text, round)).segments[0] ?? segment) : segment,
  );
  const next = loadFile(file.path, { segments }, engine.lines);
  checkProject(next, sources);
  return next;
}

function memory(ways: number): Pick<WayCost, "text" | "facts" | "checks"> {
  const before = kept();
  const document: Document = documentOf(generate({ ways, seed: 3 }));
  const withText = kept();
  const file = loadFile("bench.ways", document, engine.lines);
  const withFacts = kept();
  const found = checkProject(file, sources);
  const withChecks = kept();
  // What is measured must live until here.
  if (found.files[0]?.file.document !== document) throw new Error("The text that was measured is not the one checked.");
  return {
    text: (withText - before) / ways,
    facts: (withFacts - withText) / ways,
    checks: (withChecks - withFacts) / ways,
  };
}

if (import.meta.main) {
  const ways = Number(process.argv[2] ?? 1_000);
  const { cold, fresh, again, text, facts, checks } = wayCost(ways);
  const ms = (value: number) => `${value.toFixed(4)} ms`;
  const kB = (value: number) => `${(value / 1000).toFixed(2)} kB`;
  console.log(`${ways.toLocaleString("en")} ways, of each`);
  console.log(`  processor   first ${ms(cold)}   another text ${ms(fresh)}   checked again ${ms(again)}`);
  console.log(
    globalThis.gc
      ? `  kept        text ${kB(text)}   facts ${kB(facts)}   checks ${kB(checks)}   in all ${kB(text + facts + checks)}`
      : "  kept        run with --expose-gc to see it",
  );
}
