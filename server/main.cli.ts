import { main } from "./cli/main.ts";
import { processTerminal } from "./cli/terminal.ts";

// On an older Node some checks would fall over one by one, and the rest would look like a result.
if (Number.parseInt(process.versions.node, 10) < 22) {
  process.stderr.write(`Wayfile needs Node 22.12 or newer; this is ${process.versions.node}.\n`);
  process.exitCode = 2;
} else {
  // The code is set and the process ends by itself, so that all output is written first.
  main(process.argv.slice(2), processTerminal()).then((code) => {
    // One that was set before is that of a write that failed.
    process.exitCode ??= code;
  });
}
