/** Texts that somebody, or nobody, would write: by the grammar, by accident, and half typed. */
import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Accepts, Param, WordRow } from "../../grammar/params.ts";
import { quantities } from "../../grammar/quantities.ts";
import { units } from "../../grammar/units.ts";
import { type BlockKind, blockKinds, vocabulary } from "../../grammar/vocabulary.ts";
import { rules } from "../../server/rules/list.ts";
import { loft } from "../helpers/cursor.ts";
import { inSetting, unmark } from "../helpers/sample.ts";
import type { Dice } from "./dice.ts";

const root = join(import.meta.dirname, "../../examples");

/** Schedules of some length, sound and faulty, each a file. */
const examples: readonly string[] = [
  loft,
  ...globSync("**/*.ways", { cwd: root })
    .sort()
    .map((name) => readFileSync(join(root, name), "utf8")),
];

/** Those that a whole round of reports takes some milliseconds for. */
const small = examples.filter((text) => text.length < 8_000);

const names = ["A", "B", "1", "2", "12", "1L2", "M1", "M2", "east", "west", "S1", "S2", "twin", "supply", "Ω", "x-y"];
const standards = ["BS EN 60898", "BS 3036", "BS EN 61008", "BS 88-2", "BS EN 60947-3", "BS 1", "BS EN 99999"];
const editions = ["BS 7671:2018+A2:2022", "BS 7671:2008", "BS 7671:2026", "IEE:1981", "BS 7671:1066"];
const days = ["2026-03-05", "1999-12-31", "2026-02-30", "0000-01-01", "9999-12-31"];
const strings = ['"Loft"', '""', '"a \\" b"', '"é 漢 \u202e"', '"x', '"<b>&"'];

/** Figures that no meter shows stand beside those that one does. */
export const figures: readonly string[] = [
  ...["0", "0.00", "0.31", "1", "2.5", "6", "16", "32", "100", "230", "500", "999", "1000000"],
  ...["-1", "-0.02", "1e9", "1e999", "1e-300", "0.0000000001", "99999999999999999999", "Infinity", "NaN", "½", "1,5"],
];

function quantity(of: keyof typeof quantities, dice: Dice): string {
  const unit = dice.chance(0.9) ? dice.pick(quantities[of].units) : dice.pick(units).symbol;
  return `${dice.pick(["", "", "", "", ">", "<"])}${dice.pick(figures)}${dice.pick([" ", " ", ""])}${unit}`;
}

function value(accepts: Accepts, dice: Dice): string {
  switch (accepts.kind) {
    case "quantity":
      return accepts.reading && dice.chance(0.1)
        ? dice.pick(["LIM", "n/a", 'LIM "no access"', 'n/a "none"', ">999 MΩ"])
        : quantity(accepts.of, dice);
    case "choice":
      return dice.pick([...Object.keys(accepts.choices), "LIM"]);
    case "text":
      return dice.pick(strings);
    case "date":
      return dice.pick(days);
    case "standard":
      return dice.pick(accepts.of === "wiring" ? editions : standards);
    case "shorthand":
      return dice.pick(["B32", "C6", "D63", "B0", "C99999", "E16"]);
    case "count":
      return dice.pick(["0", "1", "3", "12", "4294967296", "-1"]);
    case "multiple":
      return dice.pick(["1x", "5x", "0.5x", "2x"]);
    case "roughTime":
      return dice.pick(["1985", "about 1985", "before 2008", "after 2030"]);
    case "rule":
      return dice.pick([dice.pick(rules).id, "411.3.3", "no/such-check"]);
    case "path":
      return dice.pick(['"other.ways"', '"../out.ways"', '"/dev/zero"', '""']);
    default:
      return dice.pick(names);
  }
}

function argument({ accepts, optional, many, label }: Param, dice: Dice): string[] {
  if (optional ? dice.chance(0.6) : dice.chance(0.03)) return [];
  const count = many ? 1 + dice.below(3) : 1;
  const values = dice.times(count, () => value(accepts, dice));
  return [...(label === undefined || dice.chance(0.02) ? [] : [label]), ...values];
}

function statement(word: string, row: WordRow, depth: number, dice: Dice): string[] {
  const indent = "  ".repeat(depth);
  const written = Object.values(row.params).map((param) => argument(param, dice));
  const order = dice.chance(0.1) ? written.toReversed() : written;
  const line = [word, ...order.flat()].join(" ");
  const provenance = dice.chance(0.05) ? ` ${dice.pick(["was 0.3 Ω", "per-record", "# as found", "misread"])}` : "";
  const opens = row.opens !== undefined && (!row.blockOptional || dice.chance(0.7)) && depth < 6;
  if (!opens) return [`${indent}${line}${provenance}`];
  return [`${indent}${line} {`, ...block(row.opens as BlockKind, depth + 1, dice), `${indent}}`];
}

function block(kind: BlockKind, depth: number, dice: Dice): string[] {
  const rows = Object.entries(vocabulary[kind] as Readonly<Record<string, WordRow>>);
  const most = kind === "file" ? 3 : depth > 3 ? 6 : 9;
  return dice
    .times(1 + dice.below(most), () => dice.pick(rows))
    .flatMap(([word, row]) => statement(word, row, depth, dice));
}

/** A text by the grammar: its lines are as they should be, mostly, and mean whatever comes out. */
const byGrammar = (dice: Dice): string => `wayfile 1\n${block("file", 0, dice).join("\n")}\n`;

/** Some ways of an installation that holds together, each line by the grammar. */
function aroundWays(dice: Dice): string {
  const count = 1 + dice.below(4);
  const ways = dice.times(count, () => block("way", 3, dice).join("\n"));
  const kinds = ["ring", "radial", "radial", "feeder", "spare", "nonsense"];
  const lines = ways.map((lines, index) => `    way ${index + 1} ${dice.pick(kinds)} "W" {\n${lines}\n    }\n`);
  return loft.replace(/^ {4}way 3[\s\S]*?^ {4}\}\n/m, lines.join("\n"));
}

const foreign = [
  ...[
    "{",
    "}",
    '"',
    "#",
    "\n",
    "\r",
    "\r\n",
    "}\n}\n",
    "way 7 {\n",
    "board X {\n",
    "supply {\n",
    "\ufeff",
    "\u2028",
    "\0",
  ],
  ...[
    "\n<<<<<<< ours\n",
    "\n=======\n",
    "\n>>>>>>> theirs\n",
    "\ud800",
    "\udc00x",
    "\u202e",
    "Zs 0,4",
    "½",
    '\\"',
    "  ",
  ],
  ...["1e999", "Infinity", "NaN", "-0", ">", "<", "Ω", "toString", "__proto__", "constructor", "é\u0301", "\t", ";"],
];

/** A text after some accidents. */
export function damaged(text: string, dice: Dice): string {
  let now = text;
  for (let left = 1 + dice.below(4); left > 0; left--) {
    const at = dice.below(now.length + 1);
    const length = dice.below(dice.chance(0.2) ? 400 : 12);
    const other = dice.below(now.length + 1);
    now = dice.pick([
      () => now.slice(0, at) + now.slice(at + length),
      () => now.slice(0, at + length) + now.slice(at),
      () => now.slice(0, at) + dice.pick(foreign) + now.slice(at),
      () => now.slice(0, at) + dice.pick(foreign) + now.slice(at + length),
      () => now.slice(0, at) + now.slice(other, other + length) + now.slice(at),
      () => swappedLines(now, dice),
      () => withFigure(now, dice),
    ])();
  }
  return now;
}

function swappedLines(text: string, dice: Dice): string {
  const lines = text.split("\n");
  const [a, b] = [dice.below(lines.length), dice.below(lines.length)];
  return lines
    .with(a, lines[b] ?? "")
    .with(b, lines[a] ?? "")
    .join("\n");
}

/** Another figure in the place of one. */
export function withFigure(text: string, dice: Dice, figure = dice.pick(figures)): string {
  const found = [...text.matchAll(/(?<=[ >])\d+(?:\.\d+)?(?= (?:[kmMG]?Ω|[km]?A|m?m²?|V|ms|s|°C|k?W|%)(?:\s|$))/gm)];
  const at = found[dice.below(found.length)];
  return at ? text.slice(0, at.index) + figure + text.slice(at.index + at[0].length) : text;
}

/** A text that ends where somebody is writing, or holds a line that does. */
export function halfTyped(text: string, dice: Dice): { readonly text: string; readonly offset: number } {
  const offset = dice.below(text.length + 1);
  if (dice.chance(0.3)) return { text: text.slice(0, offset), offset };
  const end = text.indexOf("\n", offset);
  return { text: text.slice(0, offset) + (end < 0 ? "" : text.slice(end)), offset };
}

/** The schedules of the checks: between them they hold every word there is, in a circuit that can be calculated. */
const samples: readonly string[] = rules.flatMap(({ examples: own }) =>
  own.flatMap(({ bad, good, setting }) => [bad, good].map((one) => inSetting(unmark(one).text, setting).text)),
);

const strange = [
  ...[
    "",
    "0",
    "-1",
    "-0",
    "1e309",
    "1e-400",
    "Infinity",
    "NaN",
    "9".repeat(10_000),
    `0.${"0".repeat(400)}1`,
    "1,5",
    "½",
  ],
  ...[
    "LIM",
    "n/a",
    "N/A",
    ">0",
    "<0",
    ">1e308",
    "3 x",
    "2 x",
    "A",
    "supply",
    "none",
    "three",
    "{",
    "}",
    "{ }",
    '"',
    '""',
  ],
  ...[
    "\u05d0\u05d1",
    "\u202e12",
    "e\u0301",
    "Ω",
    "m",
    "mm²",
    "%",
    "0 Ω",
    "0 A",
    "0 m",
    "0 s",
    "0 %",
    "1000000 m",
    "2026-02-29",
  ],
];

/** Such a schedule with one word of it, or a few, replaced, left out or said twice. */
export function oddSample(dice: Dice): string {
  let text = dice.pick(samples);
  for (let left = dice.pick([1, 1, 1, 2, 3]); left > 0; left--) {
    const words = [...text.matchAll(/[^\s{}"]+|"[^"\n]*"/g)];
    const at = words[dice.below(words.length)];
    if (!at) continue;
    const [word] = at;
    const end = at.index + word.length;
    const by = dice.pick([
      () => dice.pick(strange),
      () => dice.pick(strange),
      () => dice.pick(figures),
      () => dice.pick(words)[0],
      () => `${word} ${word}`,
      () => word.slice(0, dice.below(word.length)),
    ])();
    text = text.slice(0, at.index) + by + text.slice(end);
  }
  return text;
}

export const smallExample = (dice: Dice): string => dice.pick(small);

/** Any of them, of some hundred to some thousand signs. */
export function anyText(dice: Dice): string {
  const roll = dice.next();
  if (roll < 0.25) return byGrammar(dice);
  if (roll < 0.4) return aroundWays(dice);
  if (roll < 0.5) return damaged(byGrammar(dice), dice);
  if (roll < 0.6) return damaged(aroundWays(dice), dice);
  if (roll < 0.7) return halfTyped(smallExample(dice), dice).text;
  return damaged(smallExample(dice), dice);
}

/** A few lines: thousands of them are tried in the time of one schedule. */
export function fewLines(dice: Dice): string {
  const roll = dice.next();
  if (roll < 0.3)
    return dice.times(1 + dice.below(12), () => dice.pick([...foreign, ...names, ...figures, " "])).join("");
  const kind = dice.pick(blockKinds);
  const lines = block(kind, 1, dice).slice(0, 3).join("\n");
  return dice.chance(0.5) ? lines : damaged(lines, dice);
}
