import { main } from "./cli/main.ts";
import { processTerminal } from "./cli/terminal.ts";

// The code is set and the process ends by itself, so that all output is written first.
main(process.argv.slice(2), processTerminal()).then((code) => {
  process.exitCode = code;
});
