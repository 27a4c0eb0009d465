/** `wayfile serve`: the language server, so that one program serves the terminal and every editor. */
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import type { AddCommand } from "./commands.ts";
import { refuse } from "./say.ts";

export const addServe: AddCommand = (program, terminal, finish) => {
  program
    .command("serve")
    .description("Start the language server, for an editor.")
    .option("--stdio", "speak over standard input and output, as it does where nothing else is stated")
    .addHelpText(
      "after",
      `
An editor starts it; by hand it waits for one. Other ways to speak are those of the protocol's own
library: --socket=PORT, --pipe=NAME, --node-ipc.

Example:
  wayfile serve --stdio
`,
    )
    .allowUnknownOption()
    .action(async () => {
      const server = join(import.meta.dirname, "../server.cjs");
      if (!existsSync(server)) {
        finish(refuse("The language server is not beside this program: build it with “npm run build”.", terminal));
        return;
      }
      // It reads how to speak from the arguments of the process, and ends the process when the editor does.
      if (!process.argv.some((arg) => /^--(?:stdio|node-ipc|socket|pipe)/.test(arg))) process.argv.push("--stdio");
      createRequire(import.meta.url)(server);
      await new Promise(() => {});
    });
};
