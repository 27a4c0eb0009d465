/** The commands of `wayfile` and their options. Returns the exit code; nothing here ends the process. */

import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { Command, CommanderError } from "commander";
import manifest from "../../package.json" with { type: "json" };
import { nearest } from "../model/suggestions.ts";
import { lines } from "../text/terminal.ts";
import { capital } from "../text/words.ts";
import { addCheck, addGather } from "./check-commands.ts";
import { type AddCommand, addExplain, addFmt, addSize, addWorksheet } from "./commands.ts";
import { addCompletion } from "./completion.ts";
import { exit } from "./exit.ts";
import { addGit, addMerge } from "./git-commands.ts";
import { withLoadInOne } from "./load.ts";
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
  const program = commands(terminal, (result) => {
    code = result;
  });
  try {
    await program.parseAsync([...withLoadInOne(args)], { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) {
      const names = program.commands.map((command) => command.name());
      return refused(error, args, names, program, terminal);
    }
    terminal.err(
      lines(`Wayfile failed, and this is its own fault: ${error instanceof Error ? error.stack : String(error)}\n`),
    );
    return exit.failed;
  }
}

function commands(terminal: Terminal, finish: (code: number) => void): Command {
  const program = new Command("wayfile")
    .description("Checks, lays out and explains circuit schedules written as text.")
    .usage("COMMAND")
    .version(manifest.version, "-V, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand(false)
    .exitOverride()
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
  wayfile fmt --check schedules     whether they are laid out as they should be
  wayfile explain loop/zs-over-limit
`;

function meant(written: string, known: readonly string[], before = ""): string | undefined {
  const near = nearest(written, known);
  return near === undefined ? undefined : `. Did you mean ${before}${near}?`;
}

/** One sentence for arguments that make no sense. */
function refused(
  { code, message }: CommanderError,
  args: readonly string[],
  names: readonly string[],
  program: Command,
  terminal: Terminal,
): number {
  if (code === "commander.helpDisplayed" || code === "commander.version") return exit.clean;
  if (code === "commander.help") return exit.failed;
  const [first = ""] = args.filter((arg) => !arg.startsWith("-"));
  if (code === "commander.unknownCommand" || code === "commander.excessArguments") {
    const isPath = existsSync(resolve(terminal.cwd, first));
    if (!names.includes(first)) {
      return refuse(
        isPath
          ? `There is no command “${first}”: to check it, write “wayfile check ${first}”.`
          : `There is no command “${first}”${meant(first, names) ?? `: the commands are ${names.join(", ")}.`}`,
        terminal,
      );
    }
  }
  const option = /^error: unknown option '(--?[^'=]+)/.exec(message)?.[1];
  if (option !== undefined) {
    const own = program.commands.find((command) => command.name() === first) ?? program;
    const known = own.options.flatMap(({ long }) => long?.replace(/^--/, "") ?? []);
    return refuse(
      `There is no option “${option}”${names.includes(first) ? ` of “${first}”` : ""}${meant(option.replace(/^-+/, ""), known, "--") ?? `: “wayfile ${names.includes(first) ? `${first} ` : ""}--help” lists them.`}`,
      terminal,
    );
  }
  const sentence = message
    .replace(/^error: /, "")
    .replace(/\n.*/s, "")
    .replace(/\.$/, "");
  const where = names.includes(first) ? `wayfile ${first} --help` : "wayfile --help";
  return refuse(`${capital(sentence)}. “${where}” shows the valid options.`, terminal);
}
