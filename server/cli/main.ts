/** The commands of `wayfile` and their options. Returns the exit code; nothing here ends the process. */

import { Command, CommanderError } from "commander";
import manifest from "../../package.json" with { type: "json" };
import { lines } from "../text/terminal.ts";
import { addCheck, addGather } from "./check-commands.ts";
import { type AddCommand, addExplain, addFmt, addSize, addWorksheet } from "./commands.ts";
import { addCompletion } from "./completion.ts";
import { exit } from "./exit.ts";
import { addGit, addMerge } from "./git-commands.ts";
import { withLoadInOne } from "./load.ts";
import { misuseOf } from "./misuse.ts";
import { colourOption, type colourTimes } from "./options.ts";
import { addEnter, addInspection, addSchedule } from "./paper-commands.ts";
import { addRegister } from "./register-command.ts";
import { addCompare, addEditions, addHistory, addSummary, addWorking } from "./report-commands.ts";
import { refuse } from "./say.ts";
import { addSchema } from "./schema-command.ts";
import { addServe } from "./serve.ts";
import { addSettings } from "./settings-command.ts";
import type { Terminal } from "./terminal.ts";

export async function main(args: readonly string[], terminal: Terminal): Promise<number> {
  let code: number = exit.clean;
  const program: Command = commands(
    {
      ...terminal,
      get colour() {
        return { auto: terminal.colour, always: true, never: false }[program.opts<ColourOptions>().color ?? "auto"];
      },
    },
    (result) => {
      code = result;
    },
  );
  try {
    await program.parseAsync([...withLoadInOne(withHelp(args))], { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.code === "commander.helpDisplayed" || error.code === "commander.version") return exit.clean;
      if (error.code === "commander.help") return exit.failed;
      return refuse(misuseOf(error, args, program, terminal.cwd), terminal);
    }
    terminal.err(
      lines(`Wayfile failed, and this is its own fault: ${error instanceof Error ? error.stack : String(error)}\n`),
    );
    return exit.failed;
  }
}

interface ColourOptions {
  readonly color?: (typeof colourTimes)[number];
}

/** `help git setup` is `git setup --help`. */
const withHelp = (args: readonly string[]): readonly string[] =>
  args[0] === "help" ? [...args.slice(1), "--help"] : args;

function commands(terminal: Terminal, finish: (code: number) => void): Command {
  const program = new Command("wayfile")
    .description("Checks, formats and explains circuit schedules written as text.")
    .usage("COMMAND")
    .version(manifest.version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .addOption(colourOption())
    .helpCommand(false)
    .exitOverride()
    // On a narrow terminal a word a line is better than lines that the terminal breaks anywhere.
    .configureHelp({ minWidthToWrap: 20 })
    .configureOutput({
      writeOut: (text) => terminal.out(lines(text)),
      writeErr: (text) => terminal.err(lines(text)),
      // Said in our own words where the error is caught.
      outputError: () => {},
      getOutHasColors: () => false,
      getErrHasColors: () => false,
      getOutHelpWidth: () => Math.min(terminal.width ?? 100, 100),
      getErrHelpWidth: () => Math.min(terminal.width ?? 100, 100),
    })
    .addHelpText(
      "after",
      `\nExit codes: 0 all well, 1 errors found, 2 something could not be done, 130 interrupted.\n\n${examples}`,
    );

  for (const add of everyCommand) add(program, terminal, finish);
  return program;
}

/** In the order the help lists them. */
const everyCommand: readonly AddCommand[] = [
  addCheck,
  addFmt,
  addExplain,
  addWorksheet,
  addSchedule,
  addEnter,
  addInspection,
  addSize,
  addWorking,
  addSummary,
  addEditions,
  addCompare,
  addHistory,
  addMerge,
  addRegister,
  addGit,
  addGather,
  addSettings,
  addSchema,
  addCompletion,
  addServe,
];

const examples = `Examples:
  wayfile check                     every schedule in this folder and those below
  wayfile fmt --check schedules     whether they are formatted
  wayfile explain loop/zs-over-limit
`;
