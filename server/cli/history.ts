import { type Address, parseAddress } from "../readings/address.ts";
import { type Entry, entriesOfFile } from "../readings/entries.ts";
import { cutOff, type HistoryOf, historyReport } from "../reports/history/report.ts";
import { isMeant, seriesOf } from "../reports/history/timeline.ts";
import { listed } from "../text/words.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { Project } from "../workspace/project.ts";
import { exit } from "./exit.ts";
import { historyOf } from "./file-history.ts";
import { Disk } from "./files.ts";
import { historyJson } from "./history-json.ts";
import { type Setting, written } from "./reporting.ts";
import { jsonText, refuse } from "./say.ts";
import type { Terminal } from "./terminal.ts";

export interface HistoryOptions {
  readonly format: Setting | "json";
}

/** `wayfile history`: a file's readings by day, and who wrote and changed each. */
export async function history(
  named: string,
  wanted: string | undefined,
  { format }: HistoryOptions,
  terminal: Terminal,
): Promise<number> {
  const disk = new Disk(terminal.cwd);
  const whole = disk.named(disk.path(named));
  if ("failure" in whole) return refuse(`“${named}” cannot be read: ${whole.failure}`, terminal);
  const address = wanted === undefined ? undefined : addressOf(wanted);
  if (wanted !== undefined && !address)
    return refuse(
      `“${wanted}” is no address: write a way and a reading, such as “A/3 Zs”, or a board, such as “A”.`,
      terminal,
    );
  const project = new Project(whole, disk);
  const file = address ? (project.files.find((one) => holds(one, address)) ?? whole) : whole;
  const known = await historyOf(file.path, file);
  const edits = "failure" in known ? [] : known.versions;
  const remarks =
    "failure" in known ? [`There is no history of it: ${known.failure}`] : known.isShallow ? [cutOff] : [];
  const [installation] = project.installations;
  const entries = entriesOfFile(file.model);
  const series = seriesOf(entries, (entry) => !address || isMeant(entry, address), edits, installation?.names);
  if (address && series.length === 0)
    return refuse(
      `No reading is recorded at “${wanted}” in “${named}”${thereInstead(project.files, address)}.`,
      terminal,
    );
  const called = file === whole ? named : disk.shown(file.path);
  const of: HistoryOf = { file: called, ...(wanted === undefined ? {} : { wanted }), edits, series, remarks };
  terminal.out(format === "json" ? jsonText(historyJson(of)) : written(historyReport(of), format, terminal));
  return exit.clean;
}

const readingsIn = ({ model }: LoadedFile): Entry[] =>
  entriesOfFile(model).filter(({ reading }) => reading !== undefined);

/** A board can be in a file of its own. */
const holds = (file: LoadedFile, wanted: Address): boolean => readingsIn(file).some((entry) => isMeant(entry, wanted));

/** Which readings that place has. */
function thereInstead(files: readonly LoadedFile[], { place }: Address): string {
  const there = files.flatMap(readingsIn).filter((entry) => isMeant(entry, { place, blocks: [] }));
  const words = [...new Set(there.map(({ address }) => address.line?.word ?? ""))];
  return words.length === 0 ? "" : `: recorded there are ${listed(words)}`;
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
