import { installationsOf } from "../model/installation.ts";
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

export interface WorksheetOptions {
  readonly way?: string;
  readonly again?: boolean;
  readonly format: keyof typeof renderers;
}

export const renderers = { text: reportText, markdown: reportMarkdown, html: reportHtml } as const;

/** `wayfile worksheet`: what to test and what it should read, with a blank for what is still to be read. */
export function worksheetCommand(path: string, { way, again, format }: WorksheetOptions, terminal: Terminal): number {
  const disk = new Disk(terminal.cwd);
  const file = disk.named(disk.path(path));
  if ("failure" in file) return refuse(`“${path}” cannot be read: ${file.failure}`, terminal);
  const { files } = gather(file, disk);
  const sheet: Sheet = worksheetOf(installationsOf(files), way, again);
  if ("failure" in sheet) return refuse(sheet.failure, terminal);
  terminal.out(lines(renderers[format](sheet.report)));
  return exit.clean;
}
