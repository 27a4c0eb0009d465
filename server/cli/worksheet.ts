import { basename, resolve } from "node:path";
import { installationsOf } from "../model/installation.ts";
import { digestOf } from "../papers/digest.ts";
import { fillSheetHtml } from "../papers/fill-sheet.ts";
import { none } from "../reports/common/target.ts";
import { reportHtml } from "../reports/setting/html.ts";
import { reportMarkdown } from "../reports/setting/markdown.ts";
import { reportText } from "../reports/setting/text.ts";
import { type Sheet, worksheetOf } from "../reports/worksheet/scope.ts";
import { lines } from "../text/terminal.ts";
import { gather } from "../workspace/project.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { writeFile } from "./write.ts";

export interface WorksheetOptions {
  readonly way?: string;
  readonly again?: boolean;
  readonly format: keyof typeof renderers;
  /** As a page to fill in on a phone or tablet. */
  readonly fill?: true;
  readonly outputFile?: string;
}

export const renderers = { text: reportText, markdown: reportMarkdown, html: reportHtml } as const;

/** `wayfile worksheet`: what to test and what it should read, with a blank for what is still to be read. */
export function worksheetCommand(path: string, options: WorksheetOptions, terminal: Terminal): number {
  const { way, again, format, fill, outputFile } = options;
  if (fill && way !== undefined)
    return refuse(
      "A sheet to fill in is of the whole installation, so that its live tests come after every dead one.",
      terminal,
    );
  const disk = new Disk(terminal.cwd);
  const file = disk.named(disk.path(path));
  if ("failure" in file) return refuse(`“${path}” cannot be read: ${file.failure}`, terminal);
  const { files } = gather(file, disk);
  if (fill) {
    const [installation] = installationsOf(files);
    if (!installation) return refuse(none.failure, terminal);
    return put(fillSheetHtml(installation, basename(file.path), digestOf(files)), outputFile, terminal);
  }
  const sheet: Sheet = worksheetOf(installationsOf(files), way, again);
  if ("failure" in sheet) return refuse(sheet.failure, terminal);
  return put(renderers[format](sheet.report), outputFile, terminal);
}

/** To a file, or to standard output. */
function put(text: string, outputFile: string | undefined, terminal: Terminal): number {
  if (outputFile === undefined) {
    terminal.out(lines(text));
    return exit.clean;
  }
  const failure = writeFile(resolve(terminal.cwd, outputFile), text);
  return failure === undefined ? exit.clean : refuse(`“${outputFile}” cannot be written: ${failure}`, terminal);
}
