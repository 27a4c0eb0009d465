import { basename, resolve } from "node:path";
import { installationsOf } from "../model/installation.ts";
import { digestOf } from "../papers/digest.ts";
import { fillSheetHtml } from "../papers/fill-sheet.ts";
import { none } from "../reports/common/target.ts";
import { worksheetOf } from "../reports/worksheet/scope.ts";
import { lines } from "../text/terminal.ts";
import { gather } from "../workspace/gather.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { type PaperOptions, writePaper } from "./papers.ts";
import { refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { writeFile } from "./write.ts";

export interface WorksheetOptions extends PaperOptions {
  readonly way?: string;
  readonly again?: boolean;
  /** As a page to fill in on a phone or tablet. */
  readonly fill?: true;
}

/** `wayfile worksheet`: what to test and what it should read, with a blank for what is still to be read. */
export async function worksheetCommand(path: string, options: WorksheetOptions, terminal: Terminal): Promise<number> {
  const { way, again, fill, outputFile } = options;
  if (!fill)
    return await writePaper(path, options, terminal, {
      report: (installations) => {
        const sheet = worksheetOf(installations, way, again);
        return "failure" in sheet ? sheet : sheet.report;
      },
    });
  if (way !== undefined)
    return refuse(
      "A sheet to fill in is of the whole installation, so that its live tests come after every dead one.",
      terminal,
    );
  const disk = new Disk(terminal.cwd);
  const file = disk.named(disk.path(path));
  if ("failure" in file) return refuse(`“${path}” cannot be read: ${file.failure}`, terminal);
  const { files } = gather(file, disk);
  const [installation] = installationsOf(files);
  if (!installation) return refuse(none.failure, terminal);
  const text = fillSheetHtml(installation, basename(file.path), digestOf(files));
  if (outputFile === undefined) {
    terminal.out(lines(text));
    return exit.clean;
  }
  const failure = writeFile(resolve(terminal.cwd, outputFile), text);
  return failure === undefined ? exit.clean : refuse(`“${outputFile}” cannot be written: ${failure}`, terminal);
}
