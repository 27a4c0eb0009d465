/** One sentence for arguments that make no sense: what is wrong, and what may stand there. */
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import type { Argument, Command, CommanderError, Option } from "commander";
import { nearest } from "../model/suggestions.ts";
import { capital, counted, listed } from "../text/words.ts";
import { guessedCommand, guessedOption } from "./first-guess.ts";

/** `args` are all that was written, `cwd` the folder it was written in. */
export function misuseOf(
  { code, message }: CommanderError,
  args: readonly string[],
  program: Command,
  cwd: string,
): string {
  const { command, called } = commandIn(args, program);
  switch (code) {
    case "commander.unknownCommand":
      return unknownCommand(quotedIn(message) ?? "", command, called, cwd);
    case "commander.unknownOption":
      return unknownOption(quotedIn(message) ?? "", command, called);
    case "commander.missingArgument": {
      const argument = command.registeredArguments.find((one) => one.name() === quotedIn(message));
      return `“${called}” needs ${argument?.name()}: ${argument?.description}.`;
    }
    case "commander.missingMandatoryOptionValue": {
      const option = optionIn(message, command);
      return `“${called}” needs ${option?.flags}: ${option?.description}.`;
    }
    case "commander.optionMissingArgument": {
      const option = optionIn(message, command);
      return `“${option?.long}” needs a value, as ${option?.flags}: ${option?.description}.`;
    }
    case "commander.invalidArgument":
      return invalidValue(message, command);
    case "commander.excessArguments":
      return excess(command, called, args, cwd);
    default:
      return `${capital(firstLine(message).replace(/\.$/, ""))}. ${helpOf(called)}`;
  }
}

const firstLine = (message: string): string => message.replace(/^error: /, "").replace(/\n.*/s, "");

const quotedIn = (message: string): string | undefined => /'(.+?)'/.exec(firstLine(message))?.[1];

const helpOf = (called: string): string => `“wayfile ${called === "" ? "" : `${called} `}--help” shows what is valid.`;

const optionIn = (message: string, command: Command): Option | undefined => {
  const flags = quotedIn(message);
  return optionsOf(command).find((one) => one.flags === flags || one.long === flags);
};

/** With those of the program itself, which may stand behind any command. */
const optionsOf = ({ options, parent }: Command): readonly Option[] =>
  parent ? [...options, ...optionsOf(parent)] : options;

interface Meant {
  readonly command: Command;
  /** “git setup”; empty for the program itself. */
  readonly called: string;
}

/** The innermost command that the arguments name. */
function commandIn(args: readonly string[], program: Command): Meant {
  let command = program;
  const names: string[] = [];
  for (const arg of args) {
    const inner = command.commands.find((one) => one.name() === arg);
    if (!inner) break;
    command = inner;
    names.push(arg);
  }
  return { command, called: names.join(" ") };
}

/** `guess`: what is known to be meant, whatever is near. */
function meant(written: string, known: readonly string[], before = "", guess?: string): string | undefined {
  const near = guess === undefined ? nearest(written, known) : undefined;
  const one = near === undefined ? guess : `${before}${near}`;
  return one === undefined ? undefined : ` Did you mean ${one}?`;
}

function unknownCommand(written: string, { commands }: Command, called: string, cwd: string): string {
  const what = `There is no command “${called === "" ? "" : `${called} `}${written}”`;
  if (called === "" && existsSync(resolve(cwd, written)))
    return `${what}: to check it, write “wayfile check ${written}”.`;
  const names = commands.map((one) => one.name());
  const guess = called === "" ? guessedCommand(written, names) : undefined;
  const near = meant(written, names, "", guess);
  return near === undefined ? `${what}: the commands are ${listed(names)}.` : `${what}.${near}`;
}

function unknownOption(written: string, command: Command, called: string): string {
  const name = written.replace(/=.*$/s, "");
  const known = optionsOf(command).flatMap(({ long }) => long?.replace(/^--/, "") ?? []);
  const what = `There is no option “${name}”${called === "" ? "" : ` of “${called}”`}`;
  const word = name.replace(/^-+/, "");
  const near = meant(word, known, "--", guessedOption(word, optionsOf(command)));
  return near === undefined
    ? `${what}: “wayfile ${called === "" ? "" : `${called} `}--help” lists them.`
    : `${what}.${near}`;
}

/** Of an option or an argument; what may stand there instead, where that is a choice. */
function invalidValue(message: string, command: Command): string {
  const line = firstLine(message);
  const ofOption = /^option '(.+?)' argument '(.*?)' is invalid\. (.*)$/s.exec(line);
  const ofArgument = /^command-argument value '(.*?)' is invalid for argument '(.+?)'\. (.*)$/s.exec(line);
  const [name, written, why] = ofOption
    ? [ofOption[1], ofOption[2], ofOption[3]]
    : [ofArgument?.[2], ofArgument?.[1], ofArgument?.[3]];
  const place: Option | Argument | undefined = ofOption
    ? optionsOf(command).find(({ flags }) => flags === name)
    : command.registeredArguments.find((one) => one.name() === name);
  const label = place && "long" in place ? (place.long ?? name) : name;
  const choices = place?.argChoices;
  const what = `“${written}” is no value of ${label}`;
  if (!choices) return `${what}. ${why}`;
  return `${what}.${meant(written ?? "", choices) ?? ""} It is ${listed(choices, "or")}.`;
}

function excess(
  { registeredArguments, ...command }: Command,
  called: string,
  args: readonly string[],
  cwd: string,
): string {
  const given = args.filter((arg) => !arg.startsWith("-"));
  if (called === "") return unknownCommand(given[0] ?? "", command as Command, called, cwd);
  const names = registeredArguments.map((one) => one.name());
  const takes = names.length === 0 ? "no arguments" : `${counted(names.length, "argument")}: ${listed(names)}`;
  return `“${called}” takes ${takes}. One too many was given.`;
}
