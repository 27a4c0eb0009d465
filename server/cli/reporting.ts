/** What the commands that write reports share: one schedule in, one report out, in the setting asked for. */
import { type Installation, installationsOf } from "../model/installation.ts";
import type { Report } from "../reports/document.ts";
import { reportHtml } from "../reports/html.ts";
import { reportMarkdown } from "../reports/markdown.ts";
import { reportText } from "../reports/text.ts";
import { checkProject, gather, isNewer, languageVersion, type ProjectResult } from "../workspace/project.ts";
import { harmless } from "./columns.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import type { Terminal } from "./terminal.ts";

export const settings = { text: reportText, markdown: reportMarkdown, html: reportHtml } as const;
export type Setting = keyof typeof settings;

/** Writes the report of a schedule, or one sentence that says why there is none. */
export function writeReport(
  path: string,
  setting: Setting,
  terminal: Terminal,
  make: (installations: readonly Installation[], check: () => ProjectResult) => Report | { readonly failure: string },
): number {
  const disk = new Disk(terminal.cwd);
  const file = disk.file(disk.path(path));
  if ("failure" in file) return refuse(`“${path}” cannot be read: ${file.failure}`, terminal);
  const { files, findings, unread } = gather(file, disk);
  if (files.some(isNewer))
    return refuse(
      `“${path}” is in a newer version of the language than ${languageVersion}: get a newer program.`,
      terminal,
    );
  const report = make(installationsOf(files, unread), () => checkProject(file, disk));
  if ("failure" in report) return refuse(report.failure, terminal);
  const text = settings[setting](report);
  terminal.out(setting === "text" ? harmless(text) : text);
  // What could not be read is not in the report, and a person has to know.
  terminal.err(findings.map(({ message }) => `${message}\n`).join(""));
  return findings.length > 0 ? exit.failed : exit.clean;
}

function refuse(sentence: string, terminal: Terminal): number {
  terminal.err(`${harmless(sentence)}\n`);
  return exit.failed;
}
