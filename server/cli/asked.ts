/** The files that a command's arguments mean, as far as they can be read. */
import { ceiling, decode } from "../text/decode.ts";
import type { Disk } from "./files.ts";
import type { Houses } from "./house.ts";
import { findFiles } from "./search.ts";
import type { Terminal } from "./terminal.ts";

interface Found {
  readonly paths: readonly string[];
  readonly failures: readonly string[];
}

/** The files that were asked for and can be read. */
export async function findAsked(
  args: readonly string[],
  stdinPath: string | undefined,
  disk: Disk,
  terminal: Terminal,
  houses?: Houses,
): Promise<Found> {
  const fromInput = args.includes("-") || (args.length === 0 && stdinPath !== undefined);
  const paths = new Set<string>();
  const failures: string[] = [];
  if (fromInput) {
    const read = decode(await terminal.input(ceiling));
    const path = disk.path(stdinPath ?? "(standard input)");
    if ("failure" in read) failures.push(`Standard input cannot be read: ${read.failure}`);
    else {
      disk.lend(path, read.text);
      paths.add(path);
    }
  }
  const named = args.filter((arg) => arg !== "-");
  const found = findFiles(named.length > 0 || fromInput ? named : ["."], terminal.cwd, houses);
  for (const folder of found.folders) disk.admit(folder);
  for (const path of found.files.map((file) => disk.path(file))) {
    const text = disk.namedText(path);
    if ("failure" in text) failures.push(`“${disk.shown(path)}” cannot be read: ${text.failure}`);
    else paths.add(path);
  }
  return { paths: [...paths], failures: [...failures, ...found.failures] };
}
