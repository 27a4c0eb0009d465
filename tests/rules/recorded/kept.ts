/** The records as they are kept, a file a family: `# check`, `## sample: part`, and the lines below. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

interface Section {
  readonly rule: string;
  readonly sample: string;
  readonly part: string;
  readonly lines: readonly string[];
}

export const fileOf = (family: string): string => join(import.meta.dirname, `${family}.txt`);

export function recordText(sections: readonly Section[]): string {
  const byRule = Map.groupBy(
    sections.filter(({ lines }) => lines.length > 0),
    ({ rule }) => rule,
  );
  return [...byRule]
    .map(([rule, all]) =>
      [`# ${rule}`, ...all.flatMap(({ sample, part, lines }) => [`## ${sample}: ${part}`, ...lines])].join("\n"),
    )
    .join("\n\n")
    .concat("\n");
}

/** The lines of each part of each check of a family, as `check sample: part`. */
export function keptOf(family: string): ReadonlyMap<string, readonly string[]> {
  const path = fileOf(family);
  const found = new Map<string, string[]>();
  let rule = "";
  let lines: string[] = [];
  for (const line of existsSync(path) ? readFileSync(path, "utf8").trimEnd().split("\n") : []) {
    if (line.startsWith("# ")) rule = line.slice(2);
    else if (line.startsWith("## ")) {
      lines = [];
      found.set(`${rule} ${line.slice(3)}`, lines);
    } else if (line !== "") lines.push(line);
  }
  return found;
}
