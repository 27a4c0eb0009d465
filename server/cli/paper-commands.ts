/** The commands that write the papers which leave the house. */
import { type Command, Option } from "commander";
import { type ScheduleCommandOptions, schedule, scheduleFormats } from "./schedule.ts";
import type { Terminal } from "./terminal.ts";

type Finish = (code: number) => void;

const outputFile = (): Option =>
  new Option("-o, --output-file <FILE>", "write to this file; its ending decides the format");

const formats = (choices: readonly string[]): Option =>
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
    .action(async (file: string, options: ScheduleCommandOptions) => finish(await schedule(file, options, terminal)));
}
