/**
 * Times of generated installations, as medians, beside a general-purpose peer and the bare parser in the same run, by the
 * clock and of processor. A measurement, not a test: `npm run bench [ways…]`. What was measured is kept in
 * `.build/bench.json`, and the next run is shown beside it.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { performance } from "node:perf_hooks";
import { serverFlags } from "../../client/serverFlags.ts";
import { parse } from "../../grammar/parser.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { generate } from "../helpers/generate.ts";
import { bundled } from "../helpers/program.ts";
import { pulling, type Server, startServer } from "../helpers/server.ts";
import { recordsOf } from "./records.ts";
import { cancelTimes, sharedEdits } from "./waiting.ts";

const sizes = process.argv
  .slice(2)
  .map(Number)
  .filter((size) => size > 0);
const sources: Sources = { file: () => ({ failure: "" }), resolve: (_, use) => use };

const percentile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))] ?? Number.NaN;
const median = (values: readonly number[]): number => percentile(values, 0.5);
const ms = (value: number): string => `${value.toFixed(2).padStart(8)} ms`;

interface Times {
  /** From the start of the process to the first findings, which are of what is on the screen, by clock and processor. */
  readonly first: number;
  readonly firstCpu: number;
  /** To all of them. */
  readonly start: number;
  readonly startCpu: number;
  /** Of processor, of an edit with the hover and the completion after it. */
  readonly editCpu: number;
  readonly open: number;
  readonly edit: number;
  readonly edit95: number;
  readonly hover: number;
  readonly completion: number;
  readonly memory: number;
}

// As one file, like the program beside it.
const peerProgram = await bundled("tests/bench/peer-server.ts", { asModules: true });
// The first start of a new build compiles it and keeps that; every other start is as those that are measured.
await measure([...serverFlags, "dist/server.cjs"], "wayfile", generate({ ways: 10, seed: 11 }), /^ +Ib +\d+\.\d/gm);

for (const ways of sizes.length > 0 ? sizes : [10, 100, 1_000, 10_000]) {
  const text = generate({ ways, seed: 11 });
  const json = recordsOf(text);
  const full = fullCheck(text);
  const ours = await measure([...serverFlags, "dist/server.cjs"], "wayfile", text, /^ +Ib +\d+\.\d/gm);
  const peer = await measure([...serverFlags, peerProgram], "json", json, /"Ib": "\d+\.\d/g);
  console.log(
    `\n${ways.toLocaleString("en")} ways (${(text.length / 1e6).toFixed(2)} MB; as JSON ${(json.length / 1e6).toFixed(2)} MB)`,
  );
  console.log(
    `  full check, in process, processor  ${ms(full.cold)} cold   then ${ms(full.warm)}, by the clock ${ms(full.clock)}`,
  );
  const parsed = bareParse(text);
  console.log(
    `  bare parse of the same text        ${ms(parsed.cpu)}, by the clock ${ms(parsed.clock)}   a check ${(full.warm / parsed.cpu).toFixed(1)} × as long`,
  );
  line("start → first diagnostics", ours.first, peer.first);
  line("the same, processor", ours.firstCpu, peer.firstCpu);
  line("start → all diagnostics", ours.start, peer.start);
  line("the same, processor", ours.startCpu, peer.startCpu);
  line("open → diagnostics", ours.open, peer.open);
  line("edit → diagnostics, median", ours.edit, peer.edit);
  line("edit → diagnostics, 95 %", ours.edit95, peer.edit95);
  line("edit, hover, completion, processor", ours.editCpu, peer.editCpu);
  line("hover", ours.hover, peer.hover);
  line("completion", ours.completion, peer.completion);
  console.log(
    `  ${"memory of the server".padEnd(34)} ${ours.memory.toFixed(0).padStart(7)} MiB   peer ${peer.memory.toFixed(0).padStart(6)} MiB   ratio ${(ours.memory / peer.memory).toFixed(2)}`,
  );
  const peers = Object.entries(peer).map(([name, value]) => [`peer ${name}`, value]);
  keep(`${ways}`, { ...ours, check: full.warm, parse: parsed.cpu, ...Object.fromEntries(peers) });
  if (ways < 1_000) continue;
  const cancels = await cancelTimes(ways);
  const clock = cancels.map((one) => one.clock);
  const processor = median(cancels.map((one) => one.processor));
  console.log(
    `  ${"cancel of a first check → answer".padEnd(34)} ${ms(median(clock))}   longest ${ms(Math.max(...clock))}   processor ${ms(processor)}   of ${cancels.length}`,
  );
}

console.log("\nan edit of 600 ways in a file that schedules use → diagnostics");
for (const roots of [1, 2, 5])
  console.log(`  ${`${roots} of them`.padEnd(34)} ${ms(median(await sharedEdits(roots)))}`);

function line(name: string, ours: number, peer: number): void {
  console.log(`  ${name.padEnd(34)} ${ms(ours)}   peer ${ms(peer)}   ratio ${(ours / peer).toFixed(3)}`);
}

/** What was measured before stands beside what is measured now. */
function keep(key: string, times: Readonly<Record<string, number>>): void {
  const file = join(import.meta.dirname, "../../.build/bench.json");
  const known = readKept(file);
  const was = known[key];
  const shown = Object.entries(was ?? {}).map(([name, value]) => `${name} ${value.toFixed(value < 10 ? 2 : 0)}`);
  if (was) console.log(`  last run: ${shown.join(", ")}`);
  mkdirSync(join(file, ".."), { recursive: true });
  writeFileSync(file, `${JSON.stringify({ ...known, [key]: times }, undefined, 2)}\n`);
}

function readKept(file: string): Record<string, Record<string, number>> {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return {};
  }
}

interface Cost {
  readonly cpu: number;
  readonly clock: number;
}

/** What some work takes of processor and by the clock. */
function costOf(run: () => void): Cost {
  const start = performance.now();
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return { cpu: (user + system) / 1_000, clock: performance.now() - start };
}

function middle(costs: readonly Cost[]): Cost {
  return { cpu: median(costs.map(({ cpu }) => cpu)), clock: median(costs.map(({ clock }) => clock)) };
}

/** The parser alone over the text, warm: the least that anything which reads it all could cost. */
function bareParse(text: string): Cost {
  return middle([1, 2, 3].map(() => costOf(() => parse(text))));
}

/** The first check pays for reading everything; the next is of another text, so nothing is kept but compiled code. */
function fullCheck(text: string): { cold: number; warm: number; clock: number } {
  const time = (of: string) => costOf(() => checkProject(fileOfText("bench.ways", of), sources));
  const { cpu: cold } = time(text);
  const { cpu: warm, clock } = middle([1, 2, 3].map((round) => time(`${text}# ${round}\n`)));
  return { cold, warm, clock };
}

async function measure(command: readonly string[], languageId: string, text: string, editable: RegExp): Promise<Times> {
  // Ours publishes a set only when it changed, so it is asked; the peer publishes after every edit.
  const pull = languageId === "wayfile";
  const begun = performance.now();
  const server = await startServer({ command, capabilities: pull ? pulling : {} });
  const uri = `file:///bench.${languageId === "json" ? "json" : "ways"}`;
  let version = 1;
  const opened = performance.now();
  await server.connection.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId, version, text },
  });
  await (pull ? server.pullOnce(uri) : server.push(uri, undefined, version));
  const [first, firstCpu] = [performance.now() - begun, server.cpu()];
  await (pull ? server.pull(uri) : server.push(uri, undefined, version));
  const open = performance.now() - opened;
  const [start, startCpu] = [performance.now() - begun, server.cpu()];
  const places = placesOf(text, editable);
  const edits: number[] = [];
  const hovers: number[] = [];
  const completions: number[] = [];
  for (let round = 0; round < 60; round++) {
    const place = places[Math.floor(((round * 7919) % 60) * (places.length / 60))] as Place;
    version++;
    edits.push(await timed(() => editAndWait(server, uri, version, pull, place, String(round % 10))));
    const position = { line: place.line, character: place.character };
    hovers.push(
      await timed(() => server.connection.sendRequest("textDocument/hover", { textDocument: { uri }, position })),
    );
    const start = { line: place.line, character: languageId === "json" ? place.character : 6 };
    completions.push(
      await timed(() =>
        server.connection.sendRequest("textDocument/completion", { textDocument: { uri }, position: start }),
      ),
    );
  }
  const editCpu = (server.cpu() - startCpu) / 60;
  const memory = server.memory();
  await server.stop();
  const warm = edits.slice(10);
  return {
    first,
    firstCpu,
    start,
    startCpu,
    editCpu,
    open,
    edit: median(warm),
    edit95: percentile(warm, 0.95),
    hover: median(hovers.slice(10)),
    completion: median(completions.slice(10)),
    memory,
  };
}

interface Place {
  readonly line: number;
  readonly character: number;
}

/** The last digit of each editable figure. */
function placesOf(text: string, editable: RegExp): Place[] {
  const places: Place[] = [];
  let line = 0;
  let from = 0;
  for (const match of text.matchAll(editable)) {
    const at = match.index + match[0].length - 1;
    for (let next = text.indexOf("\n", from); next >= 0 && next < at; next = text.indexOf("\n", from)) {
      line++;
      from = next + 1;
    }
    places.push({ line, character: at - from });
  }
  return places;
}

async function editAndWait(
  server: Server,
  uri: string,
  version: number,
  pull: boolean,
  place: Place,
  digit: string,
): Promise<void> {
  const end = { line: place.line, character: place.character + 1 };
  const contentChanges = [{ range: { start: place, end }, text: digit }];
  await checked(server, uri, version, pull, "textDocument/didChange", {
    textDocument: { uri, version },
    contentChanges,
  });
}

/** Sends a text or a change of it and waits for its diagnostics. */
async function checked(
  server: Server,
  uri: string,
  version: number,
  pull: boolean,
  method: string,
  params: unknown,
): Promise<void> {
  await server.connection.sendNotification(method, params);
  await (pull ? server.pull(uri) : server.push(uri, undefined, version));
}

async function timed(run: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await run();
  return performance.now() - start;
}
