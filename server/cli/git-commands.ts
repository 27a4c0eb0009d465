/** The commands for a repository. */
import { type Command, Option } from "commander";
import { styles } from "../merge/write.ts";
import type { AddCommand } from "./commands.ts";
import type { SetupOptions } from "./git-setup.ts";
import type { MergeOptions } from "./merge.ts";

export const addMerge: AddCommand = (program: Command, terminal, finish) => {
  program
    .command("merge")
    .description("Merge three versions of a schedule by what their lines say, into OURS.")
    .argument("<BASE>", "the version both come from")
    .argument("<OURS>", "our version; the result is written to it")
    .argument("<THEIRS>", "the other version")
    .option("--marker-size <SIGNS>", "how many signs the mark of a conflict has", "7")
    .option("--path <PATH>", "the path of the file in its repository, for messages")
    .option("--base <LABEL>", "what to call the common version")
    .option("--ours <LABEL>", "what to call our version")
    .option("--theirs <LABEL>", "what to call the other version")
    .addOption(new Option("--style <STYLE>", "how to mark a conflict; git's setting, else diff3").choices(styles))
    .option("--stdout", "write the result to standard output")
    .addHelpText(
      "after",
      `
What one side changed is taken from it. What both changed differently is a conflict of that line, with
who changed the file on each side and when. Readings are never mixed: value, day and instrument belong
together. What cannot be read is merged line by line by git, and that is reported.
Exit code 1 means that conflicts are marked in the file.

Examples:
  wayfile merge base.ways house.ways other.ways
  wayfile merge %O %A %B --marker-size %L --path %P      as git calls it
`,
    )
    .action(async (base: string, ours: string, theirs: string, options: MergeOptions) =>
      finish(await (await import("./merge.ts")).mergeCommand({ base, ours, theirs }, options, terminal)),
    );
};

export const addGit: AddCommand = (program: Command, terminal, finish) => {
  const group = program
    .command("git")
    .description("Set a repository up for schedules, and prove that it is.")
    .usage("COMMAND")
    .helpCommand(false)
    .addHelpText(
      "after",
      `
Examples:
  wayfile git setup --dry-run     what would be written, and where
  wayfile git setup               merges, hunk headers and hooks for this repository
  wayfile git doctor              merges as this repository is set up, to prove it
  wayfile git setup --undo        takes it all away again
`,
    );
  group
    .command("setup")
    .description("Have git merge, compare and check schedules here by what their lines say.")
    .option("--dry-run", "show what would be written, and write nothing")
    .option("--undo", "take away what was set up")
    .option("--textconv", "have git diff show facts under their addresses instead of lines")
    .option("--no-hooks", "leave out the hooks that check what is staged")
    .addHelpText(
      "after",
      `
Written are the configuration of this repository, .git/info/attributes and two hooks: nothing that is
committed, and nothing over what somebody else wrote. Where the program is gone later, git merges line
by line as it does without it, and neither side is lost.
`,
    )
    .action(async (options: SetupOptions) => finish(await (await import("./git-setup.ts")).setup(options, terminal)));
  group
    .command("doctor")
    .description("Prove by a merge that git is set up here.")
    .action(async () => finish(await (await import("./git-doctor.ts")).doctor(terminal)));
  group
    .command("textconv")
    .description("Write the facts of a schedule under their addresses, as git diff asks for them.")
    .argument("<FILE>", "the schedule")
    .action(async (file: string) => finish((await import("./textconv.ts")).textconv(file, terminal)));
};
