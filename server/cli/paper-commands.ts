/** The commands that write the papers which leave the house. */
import { type Command, Option } from "commander";
import { separatorNames } from "../papers/separators.ts";
import { paperFormats, scheduleFormats } from "../reports/common/paper-kinds.ts";
import type { EnterCommandOptions } from "./enter.ts";
import type { PaperOptions } from "./papers.ts";
import type { ScheduleCommandOptions } from "./schedule.ts";
import type { Terminal } from "./terminal.ts";

type Finish = (code: number) => void;

export const outputFile = (): Option =>
  new Option("-o, --output-file <FILE>", "write to this file; its ending decides the format");

export const formats = (choices: readonly string[]): Option =>
  new Option("--format <FORMAT>", "how to write it; text if neither this nor a file is given").choices([...choices]);

export function addSchedule(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("schedule")
    .description("Write the schedule of circuit details and test results: one row a circuit.")
    .argument("<FILE>", "the schedule")
    .option("--board <BOARD>", "one board, such as A; all if left out")
    .option("--blank", "leave the readings blank, to be filled in")
    .option("--last", "leave the readings blank, with those of last time in small figures")
    .addOption(formats(scheduleFormats))
    .addOption(outputFile())
    .addHelpText(
      "after",
      `
A4, landscape, on paper. A workbook (xlsx) or CSV holds every pair of conductors for itself and a row
for each shared RCD.

Examples:
  wayfile schedule house.ways -o house.html
  wayfile schedule house.ways --board A --last -o board-a.xlsx
`,
    )
    .action(async (file: string, options: ScheduleCommandOptions) =>
      finish(await (await import("./schedule.ts")).schedule(file, options, terminal)),
    );
}

export function addEnter(program: Command, terminal: Terminal, finish: Finish): void {
  const each = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];
  program
    .command("enter")
    .description("Write readings from a filled sheet, a workbook or CSV into a schedule, as new dated tests.")
    .argument("<FILE>", "the schedule")
    .argument("<READINGS>", "the file with the readings: .json of a worksheet, .xlsx or .csv")
    .option("--on <DAY>", "the day of readings whose row gives none, such as 2026-03-05")
    .option("--with <INSTRUMENT>", "the instrument they were read with, by its name in the schedule")
    .option("--by <NAME>", "who made the tests")
    .option("--board <BOARD>", "the board, where the table has no column for it")
    .option(
      "--column <THEIRS=OURS>",
      "a heading, or a test named in a cell, that means one of ours; may be repeated",
      each,
    )
    .addOption(new Option("--decimal <SIGN>", "the decimal sign of the figures").choices(["point", "comma"]))
    .addOption(new Option("--separator <SIGN>", "what separates the columns of a CSV").choices([...separatorNames]))
    .addOption(new Option("--dates <ORDER>", "how days are written").choices(["dd/mm/yyyy", "mm/dd/yyyy"]))
    .option("--dry-run", "show what would be written, and write nothing")
    .addHelpText(
      "after",
      `
Nothing that is recorded is overwritten: a reading that differs becomes a test of another day. What
does not fit is listed, and the exit code is then 1. Our columns are those of “wayfile schedule
--format csv”; a table with a row for each test names it in “test” and its reading in “result”.

Examples:
  wayfile enter house.ways house-readings.json
  wayfile enter house.ways house.xlsx --on 2026-03-05 --with M1 --by "R.M."
  wayfile enter house.ways meter.csv --board A --column "Circuit=way" --column "Loop L-E=Zs" --dry-run
`,
    )
    .action(async (file: string, readings: string, options: EnterCommandOptions) =>
      finish(await (await import("./enter.ts")).enterCommand(file, readings, options, terminal)),
    );
}

export function addInspection(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("inspection")
    .description("Write the paper of the latest inspection: certificate, condition report or minor works.")
    .argument("<FILE>", "the schedule")
    .addOption(formats(paperFormats))
    .addOption(outputFile())
    .addHelpText(
      "after",
      `
Which paper it is follows from the schedule. A certificate is refused while a test is failed, limited
or missing. The schedules of results are part of it; a competent, licensed person signs.

Examples:
  wayfile inspection house.ways
  wayfile inspection house.ways -o house.pdf
`,
    )
    .action(async (file: string, options: PaperOptions) =>
      finish(await (await import("./inspection.ts")).inspection(file, options, terminal)),
    );
}
