/** The commands that write a report of one schedule. */
import { type Command, Option } from "commander";
import { paperFormats, settingNames } from "../reports/common/paper-kinds.ts";
import type { CompareOptions } from "./compare.ts";
import type { EditionsOptions } from "./editions.ts";
import type { HistoryOptions } from "./history.ts";
import { wholeNumber } from "./options.ts";
import { formats, outputFile } from "./paper-commands.ts";
import type { SummaryOptions } from "./summary.ts";
import type { Terminal } from "./terminal.ts";
import type { WorkingOptions } from "./working.ts";

type Finish = (code: number) => void;

const format = (choices: readonly string[] = settingNames): Option =>
  new Option("--format <FORMAT>", "how to set it").choices(choices).default("text");

export function addWorking(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("working")
    .description("Set out the calculation of a way, a board or the installation as on paper.")
    .argument("<FILE>", "the schedule")
    .option("--way <BOARD/WAY>", "one way, such as A/3")
    .option("--board <BOARD>", "one board and its ways, such as A")
    .addOption(formats(paperFormats))
    .addOption(outputFile())
    .addHelpText(
      "after",
      `
Every figure stands with its formula, its numbers and its source. What could not be calculated is
listed with the reason, and so are figures from memory.

Examples:
  wayfile working house.ways --way A/3
  wayfile working house.ways --board A -o board-a.pdf
`,
    )
    .action(async (file: string, options: WorkingOptions) =>
      finish(await (await import("./working.ts")).working(file, options, terminal)),
    );
}

export function addEditions(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("editions")
    .description("Show what would be found under other editions of the standard.")
    .argument("<FILE>", "the schedule")
    .option("--to <EDITION>", "one edition; all but the schedule's own if left out")
    .addOption(format())
    .addHelpText(
      "after",
      `
Findings that come, go or move are listed by way, and limits that move with the ways they concern.
The schedule itself is not changed.

Examples:
  wayfile editions house.ways
  wayfile editions house.ways --to "BS 7671:2018+A2:2022"
`,
    )
    .action(async (file: string, options: EditionsOptions) =>
      finish((await import("./editions.ts")).editions(file, options, terminal)),
    );
}

export function addSummary(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("summary")
    .description("Sum up what is proved, what is open and why: a page to sign off against.")
    .argument("<FILE>", "the schedule")
    .addOption(formats(paperFormats))
    .addOption(outputFile())
    .addHelpText(
      "after",
      `
For the installation and each board: tests made, by whom and with what; the least margins; what is
missing, limited, not applicable, departed from or asked; what is found, and figures from memory.

Examples:
  wayfile summary house.ways
  wayfile summary house.ways -o house-summary.pdf
`,
    )
    .action(async (file: string, options: SummaryOptions) =>
      finish(await (await import("./summary.ts")).summary(file, options, terminal)),
    );
}

export function addCompare(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("compare")
    .description("Compare two versions of a schedule, or the brief and the as-built schedule.")
    .argument("<BEFORE>", "the earlier version, or the brief: a file, a folder, a revision of git, or -")
    .argument("[AFTER...]", "the later one, or several that were built to one brief; the files on the disk if left out")
    .addOption(format([...settingNames, "json"]))
    .option("--exit-code", "exit with 1 where they differ")
    .option("--stdin-path <PATH>", "the path of the file given on standard input")
    .option("--no-cache", "compare everything anew, and keep nothing for the next time")
    .addOption(new Option("--threads <NUMBER>", "how many threads may compare").argParser(wholeNumber))
    .addHelpText(
      "after",
      `
What they state is compared, not how it is written: amounts, each dated reading with the same one.
A recorded reading that was altered or is gone comes first; then ways and boards, the gravest first.
A way is known by its number, title, cable, points and readings, so that one that moved is one row.
What a departure hides is suppressed, not gone. Files that are used come from the same version.

A revision is HEAD~3, main, a tag; main..site is two of them; main:house.ways is a file in one, and
:house.ways that file as it is staged. A revision by itself is compared where the other one is.

Examples:
  wayfile compare house-brief.ways house.ways
  wayfile compare HEAD house.ways
  wayfile compare main..site --format markdown > comment.md
  wayfile compare :house.ways house.ways --exit-code
  wayfile compare brief.ways offers/*.ways
`,
    )
    .action(async (before: string, after: string[], options: CompareOptions) =>
      finish(await (await import("./compare.ts")).compare([before, ...after], options, terminal)),
    );
}

export function addHistory(program: Command, terminal: Terminal, finish: Finish): void {
  program
    .command("history")
    .description("Show a reading over the years: by day, and who wrote and changed each figure.")
    .argument("<FILE>", "the schedule, in a repository of git")
    .argument("[ADDRESS]", "a way and a reading, such as A/3 Zs, a way or a board; all readings if left out")
    .addOption(format([...settingNames, "json"]))
    .addHelpText(
      "after",
      `
For each day: the figure, what its instrument may be out, when it was first written and by whom, and
who changed it later from what. Circuits that were renumbered are followed.

Examples:
  wayfile history house.ways
  wayfile history house.ways "A/3 Zs"
  wayfile history house.ways "A/3 · dead 2026-03-04 · insulation 500 V · L-E" --format html > le.html
`,
    )
    .action(async (file: string, address: string | undefined, options: HistoryOptions) =>
      finish(await (await import("./history.ts")).history(file, address, options, terminal)),
    );
}
