/** The options and the help of each command that is not a report of one schedule. */
import { type Command, Option } from "commander";
import { settingNames } from "../reports/common/paper-kinds.ts";
import type { FmtOptions } from "./fmt.ts";
import { colourOption, wholeNumber } from "./options.ts";
import type { SizeOptions } from "./size.ts";
import type { Terminal } from "./terminal.ts";
import type { WorksheetOptions } from "./worksheet.ts";

export type AddCommand = (program: Command, terminal: Terminal, finish: (code: number) => void) => void;

export const addFmt: AddCommand = (program, terminal, finish) => {
  program
    .command("fmt")
    .description("Format schedules: one order, one alignment.")
    .argument("<PATH...>", "files, folders, patterns, or - to format standard input to standard output")
    .option("--check", "write nothing; exit with 1 if a file is not formatted")
    .option("--diff", "write nothing; show what would change as a patch, and exit with 1 if anything would")
    .option("--upgrade", "write the present names of words and checks for former ones")
    .option("--timing", "report on standard error how long each phase took")
    .option("--no-cache", "look at every file anew, and keep nothing for the next time")
    .addOption(new Option("--threads <NUMBER>", "how many threads may format").argParser(wholeNumber))
    .addHelpText(
      "after",
      `
Only files that change are written. Line ends and a byte order mark stay as they are.
What cannot be read is left as it stands.

Examples:
  wayfile fmt schedules
  wayfile fmt --check .
  wayfile fmt - < house.ways
`,
    )
    .action(async (paths: string[], options: FmtOptions) =>
      finish(await (await import("./fmt.ts")).fmt(paths, options, terminal)),
    );
};

export const addExplain: AddCommand = (program, terminal, finish) => {
  program
    .command("explain")
    .description("Explain a check, a word, a family, a regulation or a table; list all checks.")
    .argument("[ID...]", "a check, such as loop/zs-over-limit, a word, such as Zs, a family, a regulation or a table")
    .addOption(colourOption())
    .addHelpText(
      "after",
      `
Examples:
  wayfile explain
  wayfile explain loop/zs-over-limit
  wayfile explain Zs
  wayfile explain loop
  wayfile explain 411.4.4
  wayfile explain severities
  wayfile explain table 41.3
`,
    )
    .action(async (words: string[]) =>
      finish(await (await import("./explain.ts")).explain(words.length > 0 ? words.join(" ") : undefined, terminal)),
    );
};

export const addWorksheet: AddCommand = (program, terminal, finish) => {
  program
    .command("worksheet")
    .description("Write what is to be tested and what it should read, with blanks to fill.")
    .argument("<FILE>", "the schedule")
    .option("--way <BOARD/WAY>", "one way, such as A/3, or one board, such as A; all if left out")
    .option("--again", "for a re-test: a blank for every reading, with what was read last time beside it")
    .addOption(
      new Option("--format <FORMAT>", "how to write it; text if neither this nor a file is given").choices([
        ...settingNames,
        "pdf",
      ]),
    )
    .option("--fill", "as one HTML file to fill in on a phone or tablet, without a network")
    .option("-o, --output-file <FILE>", "write to this file; its ending decides the format")
    .addHelpText(
      "after",
      `
Of a board or an installation all dead tests come first, of every circuit; then it is energised, then
all live tests. Readings that are recorded already are shown in their place, with the margin to the
limit, or with --again beside a blank.

Examples:
  wayfile worksheet house.ways --way A/3
  wayfile worksheet house.ways --again -o house-again.pdf
  wayfile worksheet house.ways --fill -o house-fill.html
`,
    )
    .action(async (file: string, options: WorksheetOptions) =>
      finish(await (await import("./worksheet.ts")).worksheetCommand(file, options, terminal)),
    );
};

export const addSize: AddCommand = (program, terminal, finish) => {
  program
    .command("size")
    .description("Propose device and cable for a way, the smallest that fit, with the working.")
    .argument("<FILE>", "the schedule")
    .requiredOption("--way <BOARD/WAY>", "the way, such as A/3")
    .option("--write", "write the two lines into the way")
    .option("--despite-tests", "with --write: write them into a way that has tests, and note it there")
    .option("--keep-device", "keep the device's type and rating as they are written")
    .option("--load <AMOUNT>", "what if it had to carry this, such as 28 A or 6.4 kW; nothing is written")
    .addOption(new Option("--format <FORMAT>", "how to report").choices(["text", "json"]).default("text"))
    .addOption(colourOption())
    .addHelpText(
      "after",
      `
The way states what it has to carry (Ib, or its loads), its route, its length and what it serves; a
feeder carries the demand of the board it feeds. The make of device and cable is kept where it is
written, unless a breaker of lower trip current saves a larger cable. Without a route a usual one
is assumed, and nothing is written. A way that has tests is not written either: they are of what
is installed. Exit code 1 means that nothing fits, or that a fact is missing.

Examples:
  wayfile size house.ways --way A/3
  wayfile size house.ways --way A/3 --load 28 A
  wayfile size house.ways --way A/3 --write
`,
    )
    .action(async (file: string, options: SizeOptions) =>
      finish((await import("./size.ts")).size(file, options, terminal)),
    );
};
