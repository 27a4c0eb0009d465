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

/**
 * The files that were asked for and can be read. `each` is told of every one as soon as it is read, with how many were
 * found, and says whether to go on; those that are then not read are among the paths all the same.
 */
export async function findAsked(
  args: readonly string[],
  stdinPath: string | undefined,
  disk: Disk,
  terminal: Terminal,
  houses?: Houses,
  each: (path: string, found: number) => Promise<boolean> = async () => true,
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
  const found = await findFiles(named.length > 0 || fromInput ? named : ["."], terminal.cwd, houses);
  for (const folder of found.folders) disk.admit(folder);
  let goesOn = true;
  for (const path of found.files.map((file) => (found.plain.has(file) ? disk.plainPath(file) : disk.path(file)))) {
    if (!goesOn) {
      paths.add(path);
      continue;
    }
    const text = disk.namedText(path);
    if ("failure" in text) failures.push(`“${disk.shown(path)}” cannot be read: ${text.failure}`);
    else {
      paths.add(path);
      goesOn = await each(path, found.files.length);
    }
  }
  return { paths: [...paths], failures: [...failures, ...found.failures] };
}
