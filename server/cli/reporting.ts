/** What the commands that write reports share: one schedule in, one report out, in the setting asked for. */
import { type Installation, installationsOf } from "../model/installation.ts";
import type { settingNames } from "../reports/common/paper-kinds.ts";
import type { Report } from "../reports/setting/document.ts";
import { reportHtml } from "../reports/setting/html.ts";
import { reportMarkdown } from "../reports/setting/markdown.ts";
import { reportText } from "../reports/setting/text.ts";
import { lines, type TerminalText } from "../text/terminal.ts";
import { type Gathering, gather } from "../workspace/gather.ts";
import { isNewer, languageVersion } from "../workspace/language-version.ts";
import { checkProject, type ProjectResult } from "../workspace/project.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export type Setting = (typeof settingNames)[number];
export const settings = { text: reportText, markdown: reportMarkdown, html: reportHtml } as const satisfies Record<
  Setting,
  unknown
>;

/** A report as it is written to the terminal: no wider than its window. */
export const written = (report: Report, setting: Setting, { width }: Terminal): TerminalText =>
  lines(setting === "text" ? reportText(report, { width }) : settings[setting](report));

interface Project {
  readonly installations: readonly Installation[];
  readonly check: () => ProjectResult;
  /** What could not be read of it. */
  readonly findings: Gathering["findings"];
}

/** A schedule and all it uses, or one sentence that says why it cannot be had. */
export function readProject(path: string, terminal: Terminal): Project | { readonly failure: string } {
  const disk = new Disk(terminal.cwd);
  const file = disk.named(disk.path(path));
  if ("failure" in file) return { failure: `“${path}” cannot be read: ${file.failure}` };
  const { files, findings, unread } = gather(file, disk);
  if (files.some(isNewer))
    return { failure: `“${path}” is in a newer version of the language than ${languageVersion}: get a newer program.` };
  return {
    installations: installationsOf(files, unread, disk.engine),
    check: () => checkProject(file, disk),
    findings,
  };
}

/** Writes the report of a schedule, or one sentence that says why there is none. */
export function writeReport(
  path: string,
  setting: Setting,
  terminal: Terminal,
  make: (installations: readonly Installation[], check: () => ProjectResult) => Report | { readonly failure: string },
): number {
  const read = readProject(path, terminal);
  if ("failure" in read) return refuse(read.failure, terminal);
  const { installations, check, findings } = read;
  const report = make(installations, check);
  if ("failure" in report) return refuse(report.failure, terminal);
  terminal.out(written(report, setting, terminal));
  // What could not be read is not in the report, and a person has to know.
  terminal.err(sentences(findings.map(({ message }) => message)));
  return findings.length > 0 ? exit.failed : exit.clean;
}
