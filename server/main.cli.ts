/** The command line, and what its threads run: the same file, told apart by where it runs. */
import { isMainThread, parentPort, workerData } from "node:worker_threads";

async function begin(): Promise<void> {
  // On an older Node some checks would fall over one by one, and the rest would look like a result.
  if (Number.parseInt(process.versions.node, 10) < 22) {
    process.stderr.write(`Wayfile needs Node 22.12 or newer; this is ${process.versions.node}.\n`);
    process.exitCode = 2;
  } else if (!isMainThread && parentPort) {
    const { work } = await import("./cli/run/worker.ts");
    work(parentPort, workerData);
  } else {
    const { main } = await import("./cli/main.ts");
    const { processTerminal } = await import("./cli/terminal.ts");
    // The code is set and the process ends by itself, so that all output is written first.
    const code = await main(process.argv.slice(2), processTerminal(import.meta.filename));
    // One that was set before is that of a write that failed.
    process.exitCode ??= code;
  }
}

void begin();
