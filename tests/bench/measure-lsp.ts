/**
 * How long the language server takes over stdio, as a person at an editor would feel it. A measurement, not a test:
 * `node tests/bench/measure-lsp.ts [ways…]`, with `--bundle` for dist/server.cjs instead of the source.
 */
import { performance } from "node:perf_hooks";
import { serverFlags } from "../../client/serverFlags.ts";
import { viewRequest } from "../../server/lsp/view-protocol.ts";
import { viewKinds } from "../../server/views/kinds.ts";
import { generate } from "../helpers/generate.ts";
import { type Server, startServer } from "../helpers/server.ts";

interface Measured {
  readonly ways: number;
  /** Start of the process to the first findings, ms. */
  readonly start: number;
  /** An edit to its findings, ms: pushed, and pulled. */
  readonly edit: Spread;
  readonly pull: Spread;
  /** An edit at the origin, which every way is judged by. */
  readonly origin: Spread;
  /** An edit that breaks the syntax, and the one that mends it. */
  readonly broken: Spread;
  readonly hover: Spread;
  readonly completion: Spread;
  /** An edit to what is shown beside the text: hints of sixty lines, and each live view of the board there. */
  readonly beside: Readonly<Record<string, Spread>>;
  /** Resident memory after all that, MiB. */
  readonly memory: number;
}

interface Spread {
  readonly median: number;
  readonly p95: number;
}

const uri = "file:///bench/bench.ways";

async function measureServer(ways: number, command?: readonly string[]): Promise<Measured> {
  const text = generate({ ways, seed: 11 });
  const pushed = await measurePush(text, command);
  const pull = await measurePull(text, command);
  return { ways, ...pushed, pull };
}

async function measurePush(text: string, command?: readonly string[]): Promise<Omit<Measured, "ways" | "pull">> {
  const lines = text.split("\n");
  const began = performance.now();
  const server = await startServer({ ...(command ? { command } : {}) });
  const client = new Typist(server, lines);
  await client.open(text);
  const start = performance.now() - began;
  const loads = linesWith(lines, /^\s+Ib\s+\d/);
  const edit = await client.repeat(60, (round) => client.digit(pick(loads, round)));
  const Ze = linesWith(lines, /^\s+Ze\s+\d/)[0] ?? 0;
  const origin = await client.repeat(15, () => client.digit(Ze));
  const devices = linesWith(lines, /^\s+device\s/);
  const broken = await client.repeat(20, (round) => client.brace(pick(devices, round >> 1), round % 2 === 0));
  const at = { line: pick(devices, 5), character: 12 };
  const hover = await client.repeat(30, async (round) => {
    await client.type(pick(loads, round));
    await server.connection.sendRequest("textDocument/hover", { textDocument: { uri }, position: at });
  });
  const completion = await client.repeat(30, async (round) => {
    await client.type(pick(loads, round));
    await server.connection.sendRequest("textDocument/completion", { textDocument: { uri }, position: at });
  });
  const shown = {
    textDocument: { uri },
    range: { start: { line: 40, character: 0 }, end: { line: 100, character: 0 } },
  };
  const beside: Record<string, Spread> = {};
  for (const [name, method, params] of [
    ["hints", "textDocument/inlayHint", shown],
    ...viewKinds.map(
      (view) => [`view ${view}`, viewRequest, { uri, view, position: { line: 60, character: 0 } }] as const,
    ),
  ] as const) {
    beside[name] = await client.repeat(10, async (round) => {
      await client.type(pick(loads, round));
      await server.connection.sendRequest(method, params);
    });
  }
  const memory = server.memory();
  await server.stop();
  return { start, edit, origin, broken, hover, completion, beside, memory };
}

async function measurePull(text: string, command?: readonly string[]): Promise<Spread> {
  const lines = text.split("\n");
  const capabilities = { textDocument: { diagnostic: {} } };
  const server = await startServer({ capabilities, ...(command ? { command } : {}) });
  const client = new Typist(server, lines);
  await server.open(uri, text);
  let { resultId } = await server.pull(uri);
  const loads = linesWith(lines, /^\s+Ib\s+\d/);
  const spread = await client.repeat(60, async (round) => {
    await client.type(pick(loads, round));
    ({ resultId } = await server.pull(uri, resultId));
  });
  await server.stop();
  return spread;
}

const linesWith = (lines: readonly string[], wanted: RegExp): number[] =>
  lines.flatMap((line, index) => (wanted.test(line) ? [index] : []));

/** Spread over the document, so that no edit profits from the one before. */
const pick = (from: readonly number[], round: number): number => from[(round * 7919) % from.length] ?? 0;

class Typist {
  readonly #server: Server;
  readonly #lines: string[];
  #version = 1;

  constructor(server: Server, lines: readonly string[]) {
    this.#server = server;
    this.#lines = [...lines];
  }

  async open(text: string): Promise<void> {
    await this.#server.open(uri, text);
    await this.#server.push(uri);
  }

  /** Changes the first digit of a line and waits for the findings. */
  async digit(line: number): Promise<void> {
    await this.type(line);
    await this.#answered();
  }

  async type(line: number): Promise<void> {
    const text = this.#lines[line] ?? "";
    const at = text.search(/\d/);
    const digit = text[at] === "1" ? "2" : "1";
    this.#lines[line] = text.slice(0, at) + digit + text.slice(at + 1);
    await this.#change(line, at, at + 1, digit);
  }

  async brace(line: number, add: boolean): Promise<void> {
    const { length } = this.#lines[line] ?? "";
    await this.#change(line, length, add ? length : length + 2, add ? " {" : "");
    await this.#answered();
  }

  #change(line: number, from: number, to: number, text: string): Promise<void> {
    this.#version++;
    const range = { start: { line, character: from }, end: { line, character: to } };
    return this.#server.change(uri, this.#version, [{ range, text }]);
  }

  async #answered(): Promise<void> {
    await this.#server.push(uri, undefined, this.#version);
  }

  async repeat(times: number, step: (round: number) => Promise<unknown>): Promise<Spread> {
    const took: number[] = [];
    for (let round = 0; round < times + 5; round++) {
      const began = performance.now();
      await step(round);
      // The first few pay for compiling.
      if (round >= 5 || times < 20) took.push(performance.now() - began);
    }
    took.sort((a, b) => a - b);
    const at = (share: number) => took[Math.min(took.length - 1, Math.floor(took.length * share))] ?? Number.NaN;
    return { median: at(0.5), p95: at(0.95) };
  }
}

if (import.meta.main) {
  const command = process.argv.includes("--bundle") ? [...serverFlags, "dist/server.cjs"] : undefined;
  const sizes = process.argv
    .slice(2)
    .map(Number)
    .filter((size) => size > 0);
  for (const ways of sizes.length > 0 ? sizes : [1_000, 10_000]) {
    const measured = await measureServer(ways, command);
    console.log(`${ways} ways: start ${measured.start.toFixed(0)} ms, resident ${measured.memory.toFixed(0)} MiB`);
    const { edit, pull, origin, broken, hover, completion, beside } = measured;
    for (const [name, { median, p95 }] of Object.entries({
      edit,
      pull,
      origin,
      broken,
      hover,
      completion,
      ...beside,
    })) {
      console.log(`  ${name.padEnd(16)} ${median.toFixed(2).padStart(8)} ms   95 % ${p95.toFixed(2).padStart(8)} ms`);
    }
  }
}
