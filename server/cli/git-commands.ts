/** The commands for a repository. */
import { type Command, Option } from "commander";
import { styles } from "../merge/write.ts";
import type { AddCommand } from "./commands.ts";
import { type MergeOptions, mergeCommand } from "./merge.ts";

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
      finish(await mergeCommand({ base, ours, theirs }, options, terminal)),
    );
};
