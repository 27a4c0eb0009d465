import { Option } from "commander";
import type { AddCommand } from "./commands.ts";
import { registerFormats } from "./format-names.ts";
import { colourOption, wholeNumber } from "./options.ts";
import type { RegisterOptions } from "./register.ts";

export const addRegister: AddCommand = (program, terminal, finish) => {
  program
    .command("register")
    .description("List the installations of folders, the most urgent first.")
    .argument("[PATH...]", "files, folders or patterns; this folder if left out")
    .addOption(
      new Option("--format <FORMAT>", "how to write it; text if neither this nor a file is given").choices(
        registerFormats,
      ),
    )
    .option("-o, --output-file <FILE>", "write to this file; its ending decides the format")
    .option("--on <DAY>", "compare due days with this day instead of today")
    .option("--no-cache", "read everything anew, and keep nothing for the next time")
    .addOption(new Option("--threads <NUMBER>", "how many threads may read").argParser(wholeNumber))
    .addOption(colourOption())
    .addHelpText(
      "after",
      `
For each installation: its stage, errors and warnings, tests that are missing, the least margin of all
readings, open queries, limitations and departures, when it was last tested, when the next inspection
is due, and the calibration that lapses first. Sorted by urgency: errors, an unsatisfactory or
overdue inspection, tests that are missing, queries, calibration, warnings.

Examples:
  wayfile register
  wayfile register sites -o register.html
  wayfile register --format csv --on 2027-01-31 sites > register.csv
`,
    )
    .action(async (paths: string[], options: RegisterOptions) =>
      finish(await (await import("./register.ts")).register(paths, options, terminal)),
    );
};
