/**
 * Times of generated installations, as medians, beside a general-purpose peer in the same run. A measurement, not a test:
 * `npm run bench [ways…]`.
 */
import { performance } from "node:perf_hooks";
import { checkProject, fileOfText, type Sources } from "../../server/workspace/project.ts";
import { generate } from "../helpers/generate.ts";
import { type Server, startServer } from "../helpers/server.ts";
import { recordsOf } from "./records.ts";

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
  readonly open: number;
  readonly edit: number;
  readonly edit95: number;
  readonly hover: number;
  readonly completion: number;
  readonly memory: number;
}

for (const ways of sizes.length > 0 ? sizes : [100, 1_000, 10_000]) {
  const text = generate({ ways, seed: 11 });
  const json = recordsOf(text);
  const full = fullCheck(text);
  const ours = await measure(["dist/server.cjs"], "wayfile", text, /^ +Ib +\d+\.\d/gm);
  const peer = await measure(["tests/bench/peer-server.ts"], "json", json, /"Ib": "\d+\.\d/g);
  console.log(
    `\n${ways.toLocaleString("en")} ways (${(text.length / 1e6).toFixed(2)} MB; as JSON ${(json.length / 1e6).toFixed(2)} MB)`,
  );
  console.log(`  full check, in process, cold   ${ms(full.cold)}   then ${ms(full.warm)}`);
  line("open → diagnostics", ours.open, peer.open);
  line("edit → diagnostics, median", ours.edit, peer.edit);
  line("edit → diagnostics, 95 %", ours.edit95, peer.edit95);
  line("hover", ours.hover, peer.hover);
  line("completion", ours.completion, peer.completion);
  console.log(
    `  ${"memory of the server".padEnd(30)} ${ours.memory.toFixed(0).padStart(7)} MiB   peer ${peer.memory.toFixed(0).padStart(6)} MiB   ratio ${(ours.memory / peer.memory).toFixed(2)}`,
  );
}

function line(name: string, ours: number, peer: number): void {
  console.log(`  ${name.padEnd(30)} ${ms(ours)}   peer ${ms(peer)}   ratio ${(ours / peer).toFixed(3)}`);
}

/** The first check pays for reading everything; the next is of another text, so nothing is kept but compiled code. */
function fullCheck(text: string): { cold: number; warm: number } {
  const time = (of: string): number => {
    const start = performance.now();
    checkProject(fileOfText("bench.ways", of), sources);
    return performance.now() - start;
  };
  const cold = time(text);
  return { cold, warm: median([1, 2, 3].map((round) => time(`${text}# ${round}\n`))) };
}

async function measure(command: readonly string[], languageId: string, text: string, editable: RegExp): Promise<Times> {
  // Ours publishes a set only when it changed, so it is asked; the peer publishes after every edit.
  const pull = languageId === "wayfile";
  const server = await startServer({ command, capabilities: { textDocument: pull ? { diagnostic: {} } : {} } });
  const uri = `file:///bench.${languageId === "json" ? "json" : "ways"}`;
  let version = 1;
  const opened = performance.now();
  await checked(server, uri, version, pull, "textDocument/didOpen", {
    textDocument: { uri, languageId, version, text },
  });
  const open = performance.now() - opened;
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
  const memory = server.memory();
  await server.stop();
  const warm = edits.slice(10);
  return {
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
