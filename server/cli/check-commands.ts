/** `check`, and `gather` for what it divided. */
import { Option } from "commander";
import { type CheckOptions, check } from "./check.ts";
import type { AddCommand } from "./commands.ts";
import { shardOption, wholeNumber, withReporting } from "./options.ts";
import type { ReportingOptions } from "./report-run.ts";

export const addCheck: AddCommand = (program, terminal, finish) => {
  const command = program
    .command("check")
    .description("Check schedules, and all they use.")
    .argument("[PATH...]", "files, folders, patterns, or - for standard input; this folder if left out");
  withReporting(command)
    .option("--stdin-path <PATH>", "the path of the file given on standard input")
    .option("--since <REVISION>", "check what changed since a revision of git, and what uses it")
    .option(
      "--history",
      "look in git for readings, signatures and circuits that were changed after somebody signed for them",
    )
    .option("--staged", "check what is staged in git, with the files it uses as they are staged")
    .addOption(shardOption())
    .option("--no-cache", "check everything anew, and keep nothing for the next time")
    .addOption(new Option("--threads <NUMBER>", "how many threads may check").argParser(wholeNumber))
    .option("--fix", "write what can be put right without a person, then check")
    .option("--diff", "show what --fix would write, as a patch, and write nothing")
    .option("--watch", "check again whenever a schedule changes")
    .option("--tour", "show what the files hold and what to try next")
    .option("--timing", "report on standard error how long each phase took")
    .addHelpText(
      "after",
      `
A folder is searched for .ways files; what .gitignore leaves out is passed over.
What cannot be read is always reported, whatever is chosen. On a tour, errors in a file with
"faulty" in its name are expected: they show, and do not count.

Examples:
  wayfile check
  wayfile check house.ways "site/**/*.ways"
  wayfile check --since main --fail-level warning
  wayfile check --format sarif --output-file findings.sarif schedules
  wayfile check --shard 2/4 --output-file part-2.jsonl && wayfile gather part-*.jsonl
  git show HEAD:house.ways | wayfile check --stdin-path house.ways -
`,
    )
    .action(async (paths: string[], options: CheckOptions) => finish(await check(paths, options, terminal)));
};

export const addGather: AddCommand = (program, terminal, finish) => {
  const command = program
    .command("gather")
    .description("Put the parts of a divided check together.")
    .argument("<PART...>", "what “wayfile check --shard” wrote, one file for each shard");
  withReporting(command)
    .addHelpText(
      "after",
      `
The report is the one that a single machine would have written. Parts of different runs, a part that
is missing and one that was cut off are refused.

Examples:
  wayfile gather part-*.jsonl
  wayfile gather --format junit --output-file findings.xml part-1.jsonl part-2.jsonl
`,
    )
    .action(async (paths: string[], options: ReportingOptions) =>
      finish(await (await import("./gather.ts")).gather(paths, options, terminal)),
    );
};
