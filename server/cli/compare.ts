import type { Installation } from "../model/installation.ts";
import { none } from "../reports/common/target.ts";
import { comparisonOf } from "../reports/compare/compare.ts";
import { type Report, together } from "../reports/setting/document.ts";
import { readProject, type Setting, writeReport } from "./reporting.ts";
import { sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export interface CompareOptions {
  readonly format: Setting;
}

/** `wayfile compare`: a schedule beside its revision, or what was asked for beside what was built. */
export function compare(before: string, after: string, { format }: CompareOptions, terminal: Terminal): number {
  return writeReport(after, format, terminal, (now) => {
    const read = readProject(before, terminal);
    if ("failure" in read) return read;
    // What could not be read is not compared, and a person has to know.
    terminal.err(sentences(read.findings.map(({ message }) => message)));
    const was = read.installations;
    const reports = now.flatMap((installation): Report[] => {
      const other = counterpart(installation, now, was);
      return other ? [comparisonOf({ called: before, installation: other }, { called: after, installation })] : [];
    });
    return together(reports) ?? none;
  });
}

/** The installation of the same name, or that of the same place in the file. */
const counterpart = (
  installation: Installation,
  all: readonly Installation[],
  others: readonly Installation[],
): Installation | undefined =>
  others.find(({ head }) => head.title === installation.head.title) ?? others[all.indexOf(installation)];
