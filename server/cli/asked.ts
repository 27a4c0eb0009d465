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

interface Asked {
  readonly args: readonly string[];
  /** The path that standard input stands for. */
  readonly stdinPath?: string | undefined;
}

/** Where they are looked for. */
interface Place {
  readonly disk: Disk;
  readonly terminal: Terminal;
  readonly houses: Houses;
}

/** How the files that are found come in. */
interface Reading {
  /** Reads one, or says why it cannot be read. `plain`: its folder lists it, and it is no link. */
  readonly read: (path: string, plain: boolean) => { readonly failure: string } | undefined;
  /** Called between two of them, with how many there are: whether to go on. Nearly always it is known at once. */
  readonly goesOn: (found: number) => boolean | Promise<boolean>;
}

/**
 * The files that were asked for and can be read. Where reading them is broken off, those that were not read are among
 * the paths all the same.
 */
export async function findAsked(
  { args, stdinPath }: Asked,
  { disk, terminal, houses }: Place,
  { read, goesOn }: Reading,
): Promise<Found> {
  const fromInput = args.includes("-") || (args.length === 0 && stdinPath !== undefined);
  const paths = new Set<string>();
  const failures: string[] = [];
  if (fromInput) {
    const input = decode(await terminal.input(ceiling));
    const path = disk.path(stdinPath ?? "(standard input)");
    if ("failure" in input) failures.push(`Standard input cannot be read: ${input.failure}`);
    else {
      disk.lend(path, input.text);
      paths.add(path);
    }
  }
  const named = args.filter((arg) => arg !== "-");
  const found = await findFiles(named.length > 0 || fromInput ? named : ["."], terminal.cwd, houses);
  for (const folder of found.folders) disk.admit(folder);
  let isWanted = true;
  for (const [listed, plain] of found.files) {
    const path = plain ? disk.plainPath(listed) : disk.path(listed);
    const refused = isWanted ? read(path, plain) : undefined;
    if (refused) failures.push(`“${disk.shown(path)}” cannot be read: ${refused.failure}`);
    else paths.add(path);
    const wanted: boolean | Promise<boolean> = isWanted && goesOn(found.files.size);
    isWanted = typeof wanted === "boolean" ? wanted : await wanted;
  }
  return { paths: [...paths], failures: [...failures, ...found.failures] };
}
