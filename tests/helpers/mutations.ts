/** One slip of the pen in a sound schedule, of each kind that hands make, and what the language says of it. */
import { globSync, readFileSync } from "node:fs";
import path from "node:path";
import type { Severity } from "../../server/rules/frame/rule.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

const root = path.join(import.meta.dirname, "../../examples");

export const exampleNames: readonly string[] = globSync("**/*.ways", { cwd: root })
  .map((name) => name.replaceAll("\\", "/"))
  .filter((name) => !name.includes("faulty"))
  .sort();

const textsByName = new Map(exampleNames.map((name) => [name, readFileSync(path.join(root, name), "utf8")]));
export const exampleText = (name: string): string => textsByName.get(name) ?? "";

const disk: Sources = {
  file: (name) => fileOfText(name, exampleText(name)),
  resolve: (from, use) => path.posix.normalize(path.posix.join(path.posix.dirname(from), use)),
};

/** What the language says of a text in the place of an example: check and line of each fault. */
export const languageFaults = (name: string, text: string): { check: string; line: number }[] =>
  allFaults(name, text).filter(({ check }) => check.startsWith("language/"));

/** What all checks say of it. */
export function allFaults(name: string, text: string): { check: string; severity: Severity; line: number }[] {
  const { files } = checkProject(fileOfText(name, text), disk);
  return files.flatMap(({ file, findings }) => {
    const starts = new Map<object, number>();
    let line = 1;
    for (const segment of file.document.segments) {
      starts.set(segment, line);
      line += segment.breaks;
    }
    return findings.map(({ check, severity, spot }) => {
      const before = spot.segment.text.slice(0, spot.start).match(/\n/g)?.length ?? 0;
      return { check, severity, line: (starts.get(spot.segment) ?? 0) + before };
    });
  });
}

interface Mutation {
  readonly kind: string;
  /** The line it is made on, from 1. */
  readonly line: number;
  readonly text: string;
}

/** What a kind of slip makes of a line; nothing where the line has no place for it. */
type Slip = (line: string) => string | undefined;

const replaced =
  (pattern: RegExp, by: string): Slip =>
  (line) =>
    line.startsWith("#") || !pattern.test(line) ? undefined : line.replace(pattern, by);

const blockLine = /\{\s*$/;

const slips: Readonly<Record<string, Slip>> = {
  "lost }": (line) => (/^\s*\}\s*$/.test(line) ? "" : undefined),
  "lost {": (line) => (blockLine.test(line) ? line.replace(/\s*\{\s*$/, "") : undefined),
  "extra } in column 0": (line) => (line.trim() === "" || line.startsWith("#") ? undefined : `${line}\n}`),
  "extra } as the line is indented": (line) =>
    line.trim() === "" || line.startsWith("#") ? undefined : `${line}\n${/^\s*/.exec(line)?.[0] ?? ""}}`,
  "extra {": (line) => (/^\s+[A-Za-z][^{}#]*$/.test(line) ? `${line} {` : undefined),
  "a } twice": (line) => (/^\s*\}\s*$/.test(line) ? `${line}\n${line}` : undefined),
  "lost quote": (line) => (/^\s*use /.test(line) ? undefined : replaced(/"(?=[^"]*$)/, "")(line)),
  "lost quote on use": (line) => (/^\s*use /.test(line) ? line.replace(/"\s*$/, "") : undefined),
  "lost quotes": replaced(/^(\s*(?!use)\S.*?)"([^"]*)"/, "$1$2"),
  "lost unit": replaced(/(\d) (?:MΩ|Ω|mm²|kA|mA|ms|A|m|V)(?= |$)/, "$1"),
  "wrong unit": replaced(/(\d) (?:Ω|mm²|ms)(?= |$)/, "$1 kg"),
  "decimal comma": replaced(/(\d)\.(\d+ (?:Ω|A|mm²))/, "$1,$2"),
  "day that is none": replaced(/\d{4}-\d\d-\d\d/, "2026-02-31"),
  "misspelt word": replaced(/^(\s*)(\w)(\w)(\w+)/, "$1$3$2$4"),
  "limitation without reason": replaced(/ (?:>?\d+(?:\.\d+)? (?:MΩ|Ω)|>999 MΩ)$/, " LIM"),
  "stray sign": replaced(/ (?=\d)/, " ; "),
  "{ on a line of its own": (line) =>
    blockLine.test(line) ? line.replace(/^(\s*)(.*?)\s*\{\s*$/, "$1$2\n$1{") : undefined,
  "lost line end": replaced(/^(\s*)(Ib|length|serves|Zs)\b.*$/, "$& R1+R2 0.4 Ω"),
};

export const kinds: readonly string[] = Object.keys(slips);

/** Every mutation of one kind of an example. */
export function mutationsOf(kind: string, name: string): Mutation[] {
  const lines = exampleText(name).split("\n");
  return lines.flatMap((line, index) => {
    const made = slips[kind]?.(line);
    if (made === undefined) return [];
    return [{ kind, line: index + 1, text: lines.with(index, made).join("\n") }];
  });
}
