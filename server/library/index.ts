/**
 * Wayfile as a library: text in, plain data out. It has no state and no effects, reads no files and no clock, throws on
 * no text, and runs in a browser as in Node.
 */
import { format as formatText } from "../format/format.ts";
import { Engine } from "../model/engine.ts";
import { type Installation, installationsOf } from "../model/installation.ts";
import { comparisonOf } from "../reports/compare/comparison.ts";
import { judgeFiles } from "../results/files.ts";
import { gather, type Sources } from "../workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";
import { resolvePath } from "./paths.ts";
import type { Checked, CheckOptions, Compared, Formatted, SourceFile } from "./types.ts";

export type * from "./types.ts";

type Given = string | SourceFile | readonly SourceFile[];

/** Checks schedules and all they use. A text without a path is `schedule.ways`. */
export function check(given: Given, options: CheckOptions = {}): Checked {
  const { files, sources } = filesOf(given, options);
  const { files: checked, totals } = judgeFiles(files, sources);
  return {
    files: checked.map(({ path, findings }) => ({ path, findings })),
    suppressed: totals.suppressed.map(({ finding, rule, reason }) => ({ finding, rule, reason })),
    errors: totals.counts.error,
    warnings: totals.counts.warning,
    informations: totals.counts.information,
    boards: totals.boards,
    ways: totals.ways,
  };
}

/** Lays a text out. What cannot be read is left as it stands. */
export function format(text: string): Formatted {
  const formatted = formatText(text);
  return formatted ? { text: formatted.text, edits: formatted.edits } : { text, edits: [] };
}

/** Compares two versions, installation by installation: those of one title, else those of one place. */
export function compare(before: Given, after: Given, options: CheckOptions = {}): Compared[] {
  const old = installationsIn(before, options);
  const now = installationsIn(after, options);
  return now.flatMap((installation, index) => {
    const was = old.find(({ head }) => head.title === installation.head.title) ?? old[index];
    return was ? [compared(was, installation)] : [];
  });
}

function compared(was: Installation, now: Installation): Compared {
  const {
    title,
    compared: counts,
    places,
  } = comparisonOf({ called: "before", installation: was }, { called: "after", installation: now });
  return {
    title,
    ...counts,
    changes: places.flatMap(({ where, changes }) =>
      changes.map(({ name, on, old, now: later, effect }) => ({
        where,
        name,
        ...(on === undefined ? {} : { on }),
        ...(old ? { before: old.text } : {}),
        ...(later ? { after: later.text } : {}),
        ...(effect ? { effect } : {}),
      })),
    ),
  };
}

function installationsIn(given: Given, options: CheckOptions): Installation[] {
  const { files, sources } = filesOf(given, options);
  const [root] = files;
  if (!root) return [];
  const { files: all, unread } = gather(root, sources);
  return installationsOf(all, unread);
}

function filesOf(given: Given, { read }: CheckOptions): { files: LoadedFile[]; sources: Sources } {
  const list = typeof given === "string" ? [{ path: "schedule.ways", text: given }] : "text" in given ? [given] : given;
  const engine = new Engine();
  const known = new Map(list.map(({ path, text }) => [path, fileOfText(path, text, engine.lines)]));
  const files = [...known.values()];
  const sources: Sources = {
    engine,
    resolve: resolvePath,
    file: (path) => {
      const before = known.get(path);
      if (before) return before;
      const text = read?.(path);
      if (text === undefined) return { failure: "there is no such file." };
      const file = fileOfText(path, text, engine.lines);
      known.set(path, file);
      return file;
    },
  };
  return { files, sources };
}
