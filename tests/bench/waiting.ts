/**
 * What somebody waits for in an editor beside a single file: the answer to a check that was called off, and the findings
 * of a file that several schedules use. A measurement, over real stdio.
 */
import { performance } from "node:perf_hooks";
import { setTimeout as after } from "node:timers/promises";
import { CancellationTokenSource } from "vscode-languageserver/node";
import { serverFlags } from "../../client/serverFlags.ts";
import { generate } from "../helpers/generate.ts";
import { startServer } from "../helpers/server.ts";

const command = [...serverFlags, "dist/server.cjs"];
const capabilities = { textDocument: { diagnostic: {} } };
const uri = "file:///nowhere/bench.ways";

/**
 * Milliseconds from a cancellation to the answer, each at another moment of a first check: by the clock, and of the
 * server's processor. What ended before it was called off is not counted.
 */
export async function cancelTimes(ways: number, rounds = 12): Promise<{ clock: number; processor: number }[]> {
  const times: { clock: number; processor: number }[] = [];
  for (let round = 0; round < rounds; round++) {
    const server = await startServer({ command, capabilities });
    const { connection } = server;
    await server.open(uri, generate({ ways, seed: 11 + round }));
    const source = new CancellationTokenSource();
    let cancelled: number | undefined;
    const pull = connection.sendRequest("textDocument/diagnostic", { textDocument: { uri } }, source.token).then(
      () => undefined,
      () => (cancelled === undefined ? undefined : performance.now() - cancelled),
    );
    // The check is under way once something else was answered meanwhile.
    await connection.sendRequest("textDocument/completion", {
      textDocument: { uri },
      position: { line: 0, character: 0 },
    });
    await after(20 + round * 15);
    const before = server.cpu();
    cancelled = performance.now();
    source.cancel();
    const clock = await pull;
    if (clock !== undefined) times.push({ clock, processor: server.cpu() - before });
    server.kill();
  }
  return times;
}

/** Milliseconds from an edit of a board that several schedules use to its findings. */
export async function sharedEdits(roots: number, ways = 600, rounds = 30): Promise<number[]> {
  const server = await startServer({ command, capabilities });
  const shared = "file:///nowhere/shared.ways";
  const text = boardsOf(generate({ ways, seed: 11 }));
  for (let root = 1; root <= roots; root++) await server.open(`file:///nowhere/root${root}.ways`, rootOf(root));
  await server.open(shared, text);
  await server.pull(shared);
  const lines = text.split("\n");
  const loads = lines.flatMap((line, at) => (/^\s+Ib\s+\d/.test(line) ? [at] : []));
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const line = loads[(round * 7919) % loads.length] ?? 0;
    const character = (lines[line] ?? "").search(/\d(?=\D*$)/);
    const range = { start: { line, character }, end: { line, character: character + 1 } };
    const begun = performance.now();
    await server.change(shared, round + 2, [{ range, text: String(round % 10) }]);
    await server.pull(shared);
    times.push(performance.now() - begun);
  }
  await server.stop();
  return times.slice(rounds / 3);
}

/** The boards of a schedule as a file that others use. */
function boardsOf(text: string): string {
  const boards = text.slice(text.search(/^ {2}board /m), text.trimEnd().lastIndexOf("}"));
  return `wayfile 1\n${boards}`;
}

const rootOf = (root: number): string => `wayfile 1
use "shared.ways"

installation "Root ${root}" {
  standard  BS 7671:2018+A2:2022
  stage     tested
  work      new
  premises  commercial

  supply {
    earthing  TN-S
    Ze        0.1${root} Ω
    Ipf       1.${root} kA
  }
}
`;
