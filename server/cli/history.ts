import { parseAddress } from "../readings/address.ts";
import { entriesOfFile } from "../readings/entries.ts";
import { historyReport } from "../reports/history/report.ts";
import { isMeant, seriesOf } from "../reports/history/timeline.ts";
import { lines } from "../text/terminal.ts";
import { Project } from "../workspace/project.ts";
import { exit } from "./exit.ts";
import { historyOf } from "./file-history.ts";
import { Disk } from "./files.ts";
import { type Setting, settings } from "./reporting.ts";
import { refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export interface HistoryOptions {
  readonly format: Setting;
}

/** `wayfile history`: a file's readings by day, and who wrote and changed each. */
export async function history(
  named: string,
  wanted: string | undefined,
  { format }: HistoryOptions,
  terminal: Terminal,
): Promise<number> {
  const disk = new Disk(terminal.cwd);
  const path = disk.path(named);
  const file = disk.named(path);
  if ("failure" in file) return refuse(`“${named}” cannot be read: ${file.failure}`, terminal);
  const address = wanted === undefined ? undefined : addressOf(wanted);
  if (wanted !== undefined && !address)
    return refuse(
      `“${wanted}” is no address: write a way and a reading, such as “A/3 Zs”, or a board, such as “A”.`,
      terminal,
    );
  const known = await historyOf(path, file);
  const edits = "failure" in known ? [] : known.versions;
  const remarks =
    "failure" in known
      ? [`There is no history of it: ${known.failure}`]
      : known.isShallow
        ? ["This copy of the repository is cut off: what was written before its first commit is not seen."]
        : [];
  const [installation] = new Project(file, disk).installations;
  const entries = entriesOfFile(file.model);
  const series = seriesOf(entries, (entry) => !address || isMeant(entry, address), edits, installation?.names);
  if (address && series.length === 0) return refuse(`No reading is recorded at “${wanted}” in “${named}”.`, terminal);
  const report = historyReport({ file: named, ...(wanted === undefined ? {} : { wanted }), edits, series, remarks });
  terminal.out(lines(settings[format](report)));
  return exit.clean;
}

/** An address as it is printed, or as it is said: `A/3 Zs`, `A/3 Zs 2026-03-05`. */
function addressOf(text: string) {
  const printed = text.includes("·")
    ? text
    : text
        .trim()
        .replace(/^(\S+)\s+/, "$1 · ")
        .replace(/\s+(\d{4}-\d{2}-\d{2})$/, "");
  const day = text.includes("·") ? undefined : /\s(\d{4}-\d{2}-\d{2})$/.exec(text)?.[1];
  const address = parseAddress(printed);
  return address && day !== undefined ? { ...address, blocks: [{ word: "live", key: [day] }] } : address;
}
