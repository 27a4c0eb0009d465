/** Options that several commands have, each stated once. */
import { type Command, InvalidArgumentError, Option } from "commander";
import { severities } from "../rules/frame/rule.ts";
import { formatNames } from "./formats/index.ts";
import { shardOf } from "./run/shard.ts";

export function wholeNumber(text: string): number {
  if (!/^[1-9]\d{0,5}$/.test(text)) throw new InvalidArgumentError("It is a whole number from 1.");
  return Number(text);
}

function countFromZero(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError("It is a whole number.");
  return Number(text);
}

function shard(text: string): NonNullable<ReturnType<typeof shardOf>> {
  const read = shardOf(text);
  if (!read) throw new InvalidArgumentError("It is written as 2/4: the second of four.");
  return read;
}

export const shardOption = (): Option =>
  new Option("--shard <I/N>", "check one of N parts, and write it for gather").argParser(shard);

/** When colours are written. `auto` leaves it to the surroundings. */
export const colourTimes = ["auto", "always", "never"] as const;

/** The program itself has it, before and behind the name of any command; those that write colours list it in their help. */
export const colourOption = (): Option =>
  new Option("--color <WHEN>", "when to write colours; on a terminal if left out").choices(colourTimes);

/** How a run of checks is reported. */
export function withReporting(command: Command): Command {
  return command
    .addOption(new Option("--format <FORMAT>", "how to report").choices(formatNames).default("text"))
    .option("--output-file <FILE>", "write the report to a file")
    .addOption(
      new Option("--fail-level <LEVEL>", "what fails: this and all that is graver (error if left out)").choices(
        severities,
      ),
    )
    .addOption(new Option("--max-warnings <NUMBER>", "fail if there are more warnings").argParser(countFromZero))
    .option("--only <CHECKS>", "report these checks or families alone, such as loop,ring/ends-differ")
    .option("--skip <CHECKS>", "leave these checks or families out")
    .option("--no-info", "hide findings that are only for information (still counted)")
    .option("--statistics", "count the findings of each check at the end")
    .addOption(new Option("--width <COLUMNS>", "keep lines to so many columns").argParser(wholeNumber))
    .option("-q, --quiet", "report findings and nothing else")
    .addOption(colourOption());
}
