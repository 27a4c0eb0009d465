/** `wayfile schema`: the shapes of what this program reads and writes, as JSON Schema. */
import { Argument } from "commander";
import { settingsSchema } from "../settings/schema.ts";
import type { AddCommand } from "./commands.ts";
import { compareSchema } from "./compare-json.ts";
import { exit } from "./exit.ts";
import { checkLineSchema, checkSchema } from "./formats/json-schema.ts";
import { jsonText } from "./say.ts";

const schemas = {
  settings: settingsSchema,
  check: () => checkSchema,
  "check-lines": () => checkLineSchema,
  compare: () => compareSchema,
} as const satisfies Readonly<Record<string, () => object>>;

export const addSchema: AddCommand = (program, terminal, finish) => {
  program
    .command("schema")
    .description("Print the JSON schema of a report or of the settings.")
    .addArgument(new Argument("<NAME>", "which").choices(Object.keys(schemas)))
    .addHelpText(
      "after",
      `
settings     .wayfile.json
check        what check --format json writes
check-lines  a line of what check --format jsonl writes
compare      what compare --format json writes

Examples:
  wayfile schema check > check.schema.json
`,
    )
    .action((name: keyof typeof schemas) => {
      terminal.out(jsonText(schemas[name]()));
      finish(exit.clean);
    });
};
