/** `wayfile schema`: prints one of the shapes that programs rely on. */
import { Argument } from "commander";
import type { AddCommand } from "./commands.ts";
import { exit } from "./exit.ts";
import { schemaNames } from "./format-names.ts";
import { jsonText } from "./say.ts";
import type { SchemaName } from "./schemas.ts";

export const addSchema: AddCommand = (program, terminal, finish) => {
  program
    .command("schema")
    .description("Print the JSON schema of a report or of the settings.")
    .addArgument(new Argument("<NAME>", "which").choices(schemaNames))
    .addHelpText(
      "after",
      `
settings     .wayfile.json
check        what check --format json writes
check-lines  a line of what check --format jsonl writes
compare      what compare --format json writes
history      what history --format json writes
register     what register --format json writes
size         what size --format json writes

Examples:
  wayfile schema check > check.schema.json
`,
    )
    .action(async (name: SchemaName) => {
      const { schemas } = await import("./schemas.ts");
      terminal.out(jsonText(schemas[name]()));
      finish(exit.clean);
    });
};
