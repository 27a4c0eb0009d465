/** What is recorded of figures: those of every check's samples, and those of a few schedules without each of their lines and under other words. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { rules } from "../../../server/rules/list.ts";
import { differences } from "../../helpers/differences.ts";
import { blockEnd, samplesOf } from "../../rules/recorded/record.ts";
import { type Base, bases } from "./bases.ts";
import { figuresIn } from "./figures.ts";

interface Record {
  readonly name: string;
  /** Blocks that a blank line stands between, each under its heading. */
  readonly text: () => string;
}

const block = (heading: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : [[`# ${heading}`, ...lines].join("\n")];

/** A family's samples one after another: what one repeats of those before is left out. */
function ofFamily(family: string): string {
  const seen = new Set<string>();
  const own = rules.filter(({ id }) => id.startsWith(`${family}/`));
  return own
    .flatMap((rule) =>
      samplesOf(rule).flatMap(({ name, text }) => {
        const fresh = (figuresIn(text) ?? []).filter((line) => !seen.has(line));
        for (const line of fresh) seen.add(line);
        return block(`${rule.id} ${name}`, fresh);
      }),
    )
    .join("\n\n");
}

function ofBase({ text, instead }: Base): string {
  const base = figuresIn(text) ?? [];
  const seen = new Set(base);
  // How many are gone, and what is new: what another change makes as well is not written twice.
  const changed = (heading: string, other: string): string[] => {
    const found = figuresIn(other);
    if (!found) return [];
    const gone = differences(base, found).filter((line) => line.startsWith("− ")).length;
    const fresh = [...new Set(found)].filter((line) => !seen.has(line));
    for (const line of fresh) seen.add(line);
    return gone + fresh.length === 0 ? [] : [[`# ${heading}: ${gone} gone`, ...fresh].join("\n")];
  };
  const lines = text.split("\n");
  const without = lines.flatMap((line, at) => {
    const last = blockEnd(lines, at);
    if (line === "" || line === "}" || last === undefined) return [];
    return changed(`without “${line}”`, [...lines.slice(0, at), ...lines.slice(last + 1)].join("\n"));
  });
  const others = instead.flatMap(([words, ...values]) =>
    values.flatMap((value) =>
      changed(`“${oneLine(value)}” instead of “${oneLine(words)}”`, text.replace(words, value)),
    ),
  );
  return [...block("as it stands", base), ...without, ...others].join("\n\n");
}

const oneLine = (words: string): string => words.trim().replaceAll("\n", " ⏎ ");

const families = [...new Set(rules.map(({ id }) => id.slice(0, id.indexOf("/"))))];

export const records: readonly Record[] = [
  ...families.map((family) => ({ name: `samples of ${family}`, text: () => ofFamily(family) })),
  ...bases.map((base) => ({ name: base.name, text: () => ofBase(base) })),
];

export const pathOf = (name: string): string => join(import.meta.dirname, `${name}.txt`);

export const keptOf = (name: string): string => readFileSync(pathOf(name), "utf8");
