import type { WordRow } from "../../grammar/params.ts";
import { proseOf } from "../../grammar/prose.ts";
import {
  absences,
  type BlockKind,
  blockKinds,
  corrections,
  provenances,
  vocabulary,
} from "../../grammar/vocabulary.ts";
import { suggestionFor } from "../model/suggestions.ts";
import { type CheckPage, nearestPages, pageOf, pages } from "../rules/frame/catalogue.ts";
import { reasonOf } from "../rules/frame/reasons.ts";
import type { Setting } from "../rules/frame/rule.ts";
import { grades, lighter } from "../rules/frame/severities.ts";
import { lines, type TerminalText, term } from "../text/terminal.ts";
import { counted, listed } from "../text/words.ts";
import { type Colours, coloursFor, tintOf } from "./colours.ts";
import { wrapped as wrappedAt } from "./columns.ts";
import { exit } from "./exit.ts";
import { refuse } from "./say.ts";
import { tableNumbers, tablePage, tablesNamed } from "./table-page.ts";
import type { Terminal } from "./terminal.ts";

/** `wayfile explain`: the page of a check, the meaning of a word, the checks of a family or of a regulation, or all. */
export async function explain(text: string | undefined, terminal: Terminal): Promise<number> {
  const colours = coloursFor(terminal.colour);
  const page = text === undefined ? undefined : pageOf(text);
  const words = text === undefined ? [] : wordsNamed(text);
  const members = text === undefined ? pages : membersOf(text);
  const held = text === undefined || page || words.length > 0 ? [] : tablesNamed(text);
  if (text === undefined) terminal.out(listing(pages, colours));
  else if (text === "severities") terminal.out(severitiesText(colours));
  else if (page) terminal.out(await pageText(page, colours));
  else if (words.length > 0)
    terminal.out(
      term.join(
        words.map((word) => wordText(word, colours)),
        "\n",
      ),
    );
  else if (held.length > 0)
    terminal.out(
      term.join(
        held.map((table) => tablePage(table, colours, terminal.width)),
        "\n",
      ),
    );
  else if (members.length > 0) terminal.out(term`${introduction(text, members)}\n\n${listing(members, colours)}`);
  else {
    return refuse(`There is no check, no word and no table “${text}”. ${hintFor(text)}`, terminal);
  }
  return exit.clean;
}

/** What may have been meant. */
function hintFor(text: string): string {
  if (/^tables?\s/i.test(text)) return `Tables held are ${listed(tableNumbers())}.`;
  const near = new Set([...wordsLike(text), ...nearestPages(text).map(({ id }) => id)]);
  const families = [...new Set(pages.map(({ id }) => id.slice(0, id.indexOf("/"))))];
  if (near.size === 0) for (const known of [families, allWords]) near.add(suggestionFor(text, known) ?? "");
  near.delete("");
  return near.size > 0 ? `Did you mean ${listed([...near], "or")}?` : "“wayfile explain” alone lists all checks.";
}

/** The checks of a family, or those that rest on a regulation or a table. */
function membersOf(text: string): readonly CheckPage[] {
  const ofFamily = pages.filter(({ id }) => id.startsWith(`${text}/`));
  return ofFamily.length > 0
    ? ofFamily
    : pages.filter(({ clauses }) => clauses.some((clause) => isPartOf(clause, text)));
}

const isPartOf = (clause: string, text: string): boolean =>
  clause.toLowerCase() === text.toLowerCase() || clause.toLowerCase().startsWith(`${text.toLowerCase()}.`);

function introduction(text: string, members: readonly CheckPage[]): TerminalText {
  const isFamily = members.every(({ id }) => id.startsWith(`${text}/`));
  return isFamily
    ? term`The checks of ${text}.`
    : term`The checks that rest on ${text}, and what a departure from ${text} suppresses.`;
}

function listing(pages: readonly CheckPage[], colours: Colours): TerminalText {
  const width = Math.max(...pages.map(({ id }) => id.length));
  const families = Map.groupBy(pages, ({ id }) => id.slice(0, id.indexOf("/")));
  const parts = [...families].map(([family, members]) => {
    const rows = members.map(
      ({ id, severity, title }) =>
        term`  ${id.padEnd(width)}  ${tintOf(severity, colours)(marks[severity])}  ${title}\n`,
    );
    return term`${colours.bold(family)}\n${term.join(rows)}`;
  });
  return term.join(
    [...parts, term`${counted(pages.length, "check")}. E is an error, W a warning, i for information.\n`],
    "\n",
  );
}

const marks = { error: "E", warning: "W", information: "i" } as const;

/** Which checks are what, and why: every check once, a line a family. */
function severitiesText(colours: Colours): TerminalText {
  const parts = grades.map(({ severity, means, families }) => {
    const width = Math.max(...families.map(({ family }) => family.length));
    const rows = families.map(({ family, checks }) => {
      const text = wrapped(checks.join(", "))
        .split("\n")
        .join(`\n${" ".repeat(width + 4)}`);
      return term`  ${family.padEnd(width)}  ${lines(text)}\n`;
    });
    const count = families.reduce((sum, { checks }) => sum + checks.length, 0);
    return term`${tintOf(severity, colours)(severity)}  ${counted(count, "check")}\n${lines(wrapped(means))}\n\n${term.join(rows)}`;
  });
  const rules = lighter.map(([when, what]) => term`${colours.bold(when)}\n${lines(wrapped(what))}\n`);
  const end = term`${colours.bold("Lighter than it stands above")}\n\n${term.join(rules, "\n")}`;
  return term`${term.join([...parts, end], "\n")}\nThe page of a check says what it rests on: wayfile explain loop/zs-over-limit\n`;
}

async function pageText({ id, severity, since, title, clauses }: CheckPage, colours: Colours): Promise<TerminalText> {
  const { samplesOf } = await import("../rules/frame/samples.ts");
  const parts = [
    term`${colours.bold(id)}  ${tintOf(severity, colours)(severity)}  ${colours.dim(`since ${since}`)}`,
    colours.bold(title),
    lines(wrapped(reasonOf(id))),
    ...(clauses.length > 0 ? [term`Rests on ${clauses.join(", ")}.`] : []),
  ];
  for (const { bad, good, setting } of samplesOf(id)) {
    const where = setting ? ` (${settingText(setting)})` : "";
    parts.push(
      term`${colours.red("Fails")}${where}\n${lines(indented(bad))}`,
      term`${colours.green("Passes")}\n${lines(indented(good))}`,
    );
  }
  return term`${term.join(parts, "\n\n")}\n`;
}

/** What a sample's surroundings say, in one line. */
function settingText({ standard, stage, work, premises, supply, board, before }: Setting): string {
  const lines = (text = "") => text.split("\n").map((line) => line.trim().replace(/\s+/g, " "));
  return [
    ...(standard ? [`standard ${standard}`] : []),
    ...(stage ? [`stage ${stage}`] : []),
    ...(work ? [`work ${work}`] : []),
    ...(premises ? [`premises ${premises}`] : []),
    ...lines(before),
    ...lines(supply),
    ...lines(board),
  ]
    .filter((line) => line !== "")
    .join("; ");
}

const indented = (text: string): string =>
  text
    .split("\n")
    .map((line) => `  ${line}`.trimEnd())
    .join("\n");

interface NamedWord {
  readonly word: string;
  readonly block: string;
  readonly row: Pick<WordRow, "means"> & Partial<WordRow>;
}

/** A word in every block it stands in, each meaning once. */
function wordsNamed(word: string): NamedWord[] {
  const marksOf: Readonly<Record<string, string>> = { ...provenances, ...absences, ...corrections };
  const mark = Object.hasOwn(marksOf, word) ? marksOf[word] : undefined;
  const rows: NamedWord[] = mark === undefined ? [] : [{ word, block: "readings", row: { means: mark } }];
  for (const block of blockKinds) {
    const words: Readonly<Record<string, WordRow>> = vocabulary[block];
    const row = Object.hasOwn(words, word) ? words[word] : undefined;
    if (!row) continue;
    const same = rows.findIndex((other) => other.row.means === row.means && other.row.example === row.example);
    const before = rows[same];
    if (before) rows[same] = { ...before, block: `${before.block}, ${blockNames[block]}` };
    else rows.push({ word, block: blockNames[block], row });
  }
  return rows;
}

/** Words that differ from the text in nothing but large and small letters. */
const wordsLike = (text: string): string[] => allWords.filter((word) => word.toLowerCase() === text.toLowerCase());

const allWords = [...new Set(Object.values(vocabulary).flatMap((rows) => Object.keys(rows)))];

const blockNames: Readonly<Record<BlockKind, string>> = {
  file: "the file",
  installation: "installation",
  inspection: "inspection",
  instrument: "instrument",
  supply: "supply",
  board: "board",
  way: "way",
  circuitType: "circuit type",
  containment: "containment",
  dead: "dead tests of a way",
  live: "live tests of a way",
  boardDead: "dead tests of a board",
  boardLive: "live tests of a board",
  supplyLive: "tests of a supply",
};

function wordText({ word, block, row }: NamedWord, colours: Colours): TerminalText {
  const { means, background, limits, example } = row;
  const parts = [
    term`${colours.bold(word)}  ${colours.dim(`in ${block}`)}`,
    lines(wrapped(proseOf(means))),
    ...(background ? [lines(wrapped(proseOf(background)))] : []),
    ...(limits ? [lines(wrapped(`Limits: ${proseOf(limits)}`))] : []),
    ...(example ? [lines(indented(example))] : []),
  ];
  return term`${term.join(parts, "\n\n")}\n`;
}

/** A paragraph at the width a page is comfortable to read in. */
const wrapped = (text: string): string => wrappedAt(text.replace(/\s+/g, " "), 88).join("\n");
