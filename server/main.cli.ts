/** The command line, and what its threads run: the same file, distinguished by where it runs. */
import { isMainThread, parentPort, workerData } from "node:worker_threads";
import { announceChecked } from "./checked.ts";
import { main } from "./cli/main.ts";
import { processTerminal } from "./cli/terminal.ts";

async function begin(): Promise<void> {
  if (!isMainThread && parentPort) {
    const { work } = await import("./cli/run/worker.ts");
    await work(parentPort, workerData);
  } else {
    const terminal = processTerminal(process.argv[1] ?? import.meta.filename);
    // The code is set and the process ends by itself, so that all output is written first.
    const code = await main(process.argv.slice(2), { ...terminal, checked: announceChecked });
    // One that was set before is that of a write that failed.
    process.exitCode ??= code;
  }
}

void begin();
