/** What is answered to a word that its block does not have. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { Param, WordRow } from "../../grammar/params.ts";
import type { Statement } from "../../grammar/parser.ts";
import { type BlockKind, blockKinds, rowOf, vocabulary } from "../../grammar/vocabulary.ts";
import { isDay } from "../text/days.ts";
import { listed } from "../text/words.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Problem } from "./problems.ts";
import { problemAt, removeFix, replaceFix, spanOf, writeFix } from "./refusals.ts";
import { couldBe } from "./row-shape.ts";
import { phraseIn, phraseOfLine } from "./site-phrases.ts";
import { suggestionFor, termsFor, wordForSiteTerm, wordInAnyCase } from "./suggestions.ts";

/** The word that is meant, where it can be known; else where the word has its place. */
export function unknownWord(kind: BlockKind, { word, args }: Statement): Problem {
  const words = wordsOf(kind);
  const homes = words.some(isSpelt(word.image)) ? [] : homesOf(word.image);
  const term = wordForSiteTerm(word.image, words);
  const part =
    limitationSaid(kind, word, args) ??
    dayAlone(kind, word, args) ??
    kindOfInstrument(kind, word) ??
    whoTested(kind, word) ??
    voltageOfTest(kind, word) ??
    voltageOfSupply(kind, word, args) ??
    phraseOfLine([word, ...args], words) ??
    (term ? undefined : labelSaid(kind, [word, ...args])) ??
    (term || homes.length > 0
      ? undefined
      : (partOfOpening(kind, word) ??
        kindFirst(kind, word, args) ??
        titleSaid(kind, word) ??
        partOfLine(kind, word, args)));
  if (part) return { ...part, check: "unknown-word" };
  const here = workedOut.test(word.image)
    ? `“${word.image}” is not written: what is permitted or expected is calculated, and shown beside the reading`
    : `“${word.image}” is not a word of ${blockNames[kind]}`;
  if (homes.length > 0)
    return misspelt(word, `${here}, but of ${namesOf(homes)}${term ? `; here the word is “${term}”.` : "."}`, term);
  // What is known by that name elsewhere is no misspelt word of this place: `ip` of a board is not its `Ipf`.
  const elsewhere = term === undefined ? knownElsewhere(kind, word, args) : undefined;
  if (elsewhere !== undefined) return misspelt(word, elsewhere, undefined);
  const near = suggestionFor(word.image, words) ?? wordTaking(kind, args);
  const ending = near ? `: did you mean “${near}”?` : `.${asDetail(kind, word, args)}`;
  return misspelt(word, `${here}${ending}`, near);
}

/**
 * The word that an unknown one counts as, in the order it is answered: a term of the site goes before a part of a line, that
 * before a misspelling, and last what stands behind.
 */
export const meantBy = (kind: BlockKind, image: string, args: readonly IToken[]): string | undefined =>
  wordForSiteTerm(image, wordsOf(kind)) ??
  lineWith(kind, image)?.name ??
  lineWith(kind, termsFor(image)[0] ?? "")?.name ??
  suggestionFor(image, wordsOf(kind)) ??
  wordTaking(kind, args);

const misspelt = (word: IToken, message: string, meant: string | undefined): Problem =>
  problemAt("unknown-word", message, word, meant === undefined ? [] : [replaceFix(word, meant)]);

const knownElsewhere = (kind: BlockKind, word: IToken, args: readonly IToken[]): string | undefined =>
  withoutWord(word) ??
  notMeasured(kind, word, args) ??
  deviceAlone(kind, word) ??
  saidElsewhere([word, ...args]) ??
  labelElsewhere(kind, word, args) ??
  partOfWay(kind, word);

/** More lines than these are read no faster than the reference. */
const mostLines = 4;

/** `mode 3`: what the language has no word for, and can be kept; a figure that was read may be one that it has a word for. */
function asDetail(kind: BlockKind, { image }: IToken, [first, ...others]: readonly IToken[]): string {
  const lines = linesWith(kind, image);
  if (lines.length > 0) return ` It stands on a line of another word: ${listed(lines.slice(0, mostLines), "or")}.`;
  if (!first || !rowOf(kind, "detail") || rowOf(kind, "struck-out") || workedOut.test(image)) return "";
  const last = others.at(-1) ?? first;
  if (last.endLine !== first.startLine) return "";
  const said = [first, ...others].map((token) => token.image.replaceAll('"', "")).join(" ");
  return ` A fact of your own is written: detail ${image.toLowerCase()} "${said}".`;
}

/** What is met in old installations and is counted on no longer. */
function withoutWord({ image }: IToken): string | undefined {
  if (!/^(?:v\.?o\.?-?)?elcb$|^voltage-operated$/i.test(image)) return undefined;
  return `“${image}”: a breaker that compares the currents of line and neutral is an rcd. One that is operated by a voltage to earth is not counted on: leave it out, and state it in an observation or a note.`;
}

/** `not tested` on a line of its own. */
function notMeasured(kind: BlockKind, { image }: IToken, [next]: readonly IToken[]): string | undefined {
  const said = next ? `${image} ${next.image}` : image;
  if (!/^(?:untested\b|not[ -]?(?:tested|verified)\b)/i.test(said)) return undefined;
  return `What was not measured is written where its reading would stand, with LIM and the reason, as in ${limitedReading(kind)}.`;
}

/** `date 2026-03-04`: a day stands on the line of what was done on it. */
function dayAlone(kind: BlockKind, word: IToken, [day]: readonly IToken[]): Problem | undefined {
  if (!/^(?:date|dated|day|test-date|date-of-test|date-tested)$/i.test(word.image)) return undefined;
  const name = dayWords[kind];
  const written = day && isDay(day.image) ? day.image : "2026-03-04";
  const opening = testsOpenedBy[kind];
  const where = opening
    ? `the line that opens these tests: ${opening} ${written} { … }`
    : (name ?? "the line of what was done on it").replaceAll("DAY", written);
  const fix = kind === "supply" ? [writeFix("measured", spanOf(word))] : [];
  return problemAt("unknown-word", `A day stands on ${where}.`, word, fix);
}

/** `type` of an instrument: what it is stands behind its name. */
const kindOfInstrument = (kind: BlockKind, word: IToken): Problem | undefined =>
  kind === "instrument" && /^(?:type|kind)$/i.test(word.image)
    ? problemAt(
        "unknown-word",
        `What an instrument is stands in quotes behind its name, as in: instrument M1 "Insulation tester".`,
        word,
      )
    : undefined;

/** `tester "R.M."`, `instrument M1` among readings: who tested, and with what, stands on the line that opens the tests. */
function whoTested(kind: BlockKind, word: IToken): Problem | undefined {
  const asked =
    /^(?:by|with|(?:tested|done|measured|carried-out)(?:-by)?|tester|engineer|inspector|instrument|meter)$/i;
  const opening = testsOpenedBy[kind];
  if (!opening || !asked.test(word.image)) return undefined;
  const message = `Who tested, and with which instrument, stands on the line that opens the tests: ${opening} 2026-03-04 by "R.M." with M1 {`;
  return problemAt("unknown-word", message, word);
}

const testsOpenedBy: Partial<Record<BlockKind, string>> = {
  dead: "dead",
  live: "live",
  boardDead: "dead",
  boardLive: "live",
  supplyLive: "live",
};

/** `test-voltage 500 V` among readings. */
const voltageOfTest = (kind: BlockKind, word: IToken): Problem | undefined =>
  /^(?:test|insulation)-voltage$/i.test(word.image) && (kind === "dead" || kind === "boardDead")
    ? problemAt(
        "unknown-word",
        "The voltage of the test stands on the line of what was read with it, as in: insulation 500 V L-E 310 MΩ",
        word,
      )
    : undefined;

/** Where the days of a block stand. */
const dayWords: Partial<Record<BlockKind, string>> = {
  installation:
    'the line of who signed for it, as in: tested by "R.M." DAY; the day of a test is that of its block: dead DAY { … }',
  inspection: "the line that opens the inspection: inspection periodic DAY { … }; that of the paper is issued DAY",
  instrument: "the line of its calibration: calibrated DAY, or due DAY",
  supply: "the line of what was measured: measured DAY",
  board: "the line that opens its tests: live DAY { … }",
  way: "the line that opens its tests: dead DAY { … }, or live DAY { … }",
};

const saysNone = /^(?:none|no|nil|n\/a)$/i;

const nothingLimited = (word: IToken, none: IToken): string =>
  `“${word.image} ${none.image}”: where nothing was left out, nothing is written.`;

/** The same where the line is known. */
export function limitedByNothing({ word, token, tokens, at }: LineBeingRead): Slip | undefined {
  if (word.image !== "limitation" || at > 0 || !saysNone.test(token.image)) return undefined;
  const fix = removeFix(`${word.image} ${token.image}`, spanOf(word, token));
  return { problem: problemAt("wrong-argument", nothingLimited(word, token), token, [fix]), upTo: tokens.length };
}

/** `limitation none` on a way: it is no test that is not made, and one that is not made says so in its place. */
function limitationSaid(kind: BlockKind, word: IToken, [first]: readonly IToken[]): Problem | undefined {
  const isNone = first !== undefined && saysNone.test(first.image);
  if (!/^lim(?:itation)?s?$/i.test(word.image) || (rowOf(kind, "limitation") && !isNone)) return undefined;
  const message = isNone
    ? nothingLimited(word, first)
    : `What was not measured is written where its reading would stand, with LIM and the reason, as in ${limitedReading(kind)}. What limits an inspection stands in its own block.`;
  const fixes = isNone ? [removeFix(`${word.image} ${first.image}`, spanOf(word, first))] : [];
  return problemAt("unknown-word", message, word, fixes);
}

const limitedReading = (kind: BlockKind): string =>
  rowOf(kind, "live") ? 'live 2026-03-05 { Zs LIM "no access" }' : 'Zs LIM "no access"';

/** `voltage 241 V`, `voltage 400 V`: of a supply its nominal voltage to earth is stated, and what was read is a test. */
function voltageOfSupply(kind: BlockKind, word: IToken, [figure]: readonly IToken[]): Problem | undefined {
  const volts = /^(\d+(?:\.\d+)?)\s?V$/i.exec(figure?.image ?? "")?.[1];
  if (kind !== "supply" || !figure || !/^volt(?:age|s)$/i.test(word.image) || volts === undefined) return undefined;
  const span = spanOf(word, figure);
  if (betweenLines.includes(volts))
    return problemAt(
      "unknown-word",
      `The voltage of a supply is stated to earth: U0 230 V, as it is taken to be where nothing is written; ${figure.image} is between its lines.`,
      word,
      [writeFix("U0 230 V", span)],
    );
  if (nominal.includes(volts)) return undefined;
  return problemAt(
    "unknown-word",
    `What was measured stands in a block of tests: live 2026-03-05 { voltage ${figure.image} }. The nominal voltage, U0, is taken as 230 V.`,
    word,
  );
}

/** What supplies are and were made for, V: to earth, and between lines. */
const nominal: readonly string[] = ["230", "240", "55", "63.5"];
const betweenLines: readonly string[] = ["400", "415"];

/** `B6 1.0 mm²` on a way: the type and rated current of a breaker. */
export const isDeviceAlone = (kind: BlockKind, { image }: IToken): boolean =>
  rowOf(kind, "device") !== undefined && /^[BCD]\d{1,3}A?$/i.test(image);

function deviceAlone(kind: BlockKind, word: IToken): string | undefined {
  if (!isDeviceAlone(kind, word)) return undefined;
  const label = word.image.toUpperCase().replace(/A$/, "");
  return `“${word.image}” is a part of the device, which stands on a line of its own with its standard: device BS EN 60898 ${label} 6 kA.`;
}

/** `pv 10 kW` of a supply: what a circuit is for is stated by the way it is on. */
function partOfWay(kind: BlockKind, { image }: IToken): string | undefined {
  if (kind === "way") return undefined;
  const all = ["serves", "place"].flatMap((name) =>
    Object.values(rowOf("way", name)?.params ?? {}).flatMap(({ accepts }) =>
      accepts.kind === "choice" ? Object.keys(accepts.choices).map((choice) => ({ name, choice })) : [],
    ),
  );
  const choices = all.map(({ choice }) => choice);
  const ours = wordInAnyCase(image, choices);
  const line = all.find(({ choice }) => choice === ours);
  return line && `“${image}” is stated by the way that it is on: ${line.name} ${line.choice}.`;
}

/** `permitted 1.37 Ω`: a column of the paper that follows from the others. */
const workedOut = /^(?:max|maximum|permitted|limit|expected|volt(?:age)?-?drop|vd|iz|it|c[agi])$/i;

/** In capitals or not: a word whose place is elsewhere is not taken for a misspelt one of this place. */
const isSpelt =
  (word: string) =>
  (other: string): boolean =>
    other.toLowerCase() === word.toLowerCase();

const homesOf = (word: string): BlockKind[] => blockKinds.filter((block) => wordsOf(block).some(isSpelt(word)));

const namesOf = (kinds: readonly BlockKind[]): string =>
  listed([...new Set(kinds.map((kind) => blockNames[kind]))], "or");

/** `supplementary-bonding 4 mm²` on a way: the word says that of a board, on a line of the board's. */
export function saidInAnother(word: string, own: WordRow, takes: (row: WordRow) => boolean): string | undefined {
  for (const kind of blockKinds) {
    const row = rowOf(kind, word);
    if (row && row !== own && takes(row)) return `of ${namesOf([kind])}: ${row.example.split("\n")[0]}`;
  }
  return undefined;
}

/** `rotation ok` among dead tests, `max Zs` among live ones: words of the site for one of ours with its place elsewhere. */
function saidElsewhere(line: readonly [IToken, ...IToken[]]): string | undefined {
  const all = [...new Set(blockKinds.flatMap(wordsOf))];
  const [{ image }] = line;
  const { said, word } = phraseIn(line, all) ?? { said: image, word: wordForSiteTerm(image, all) };
  return word && `“${said}” is written ${word}, and has its place in ${namesOf(homesOf(word))}.`;
}

export const wordsOf = (kind: BlockKind): string[] => Object.keys(vocabulary[kind]);

interface LineWith {
  readonly name: string;
  readonly row: WordRow;
  readonly isLabel: boolean;
}

/** The one line of a block that a word is a part of, by its label or as one of a list. */
export function lineWith(kind: BlockKind, part: string): LineWith | undefined {
  const all = Object.entries<WordRow>(vocabulary[kind]);
  const having = (has: (param: Param) => boolean) => all.filter(([, { params }]) => Object.values(params).some(has));
  const byLabel = having(({ label }) => label === part);
  const isLabel = byLabel.length > 0;
  const rows = isLabel
    ? byLabel
    : having(({ accepts }) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, part));
  // “C2” may be the result of an inspection too: the shorter of two lists says more of it.
  const [whole, ...others] = rows.length > 1 && !isLabel ? withShortestList(rows, part) : rows;
  return whole && others.length === 0 ? { name: whole[0], row: whole[1], isLabel } : undefined;
}

/** Of lines that begin with a closed list which has a word, those whose list is shortest. */
function withShortestList(rows: readonly [string, WordRow][], part: string): readonly [string, WordRow][] {
  const lengthOf = ([, { params }]: [string, WordRow]): number => {
    const [first] = Object.values(params);
    const list = first?.accepts.kind === "choice" ? Object.keys(first.accepts.choices) : [];
    return list.includes(part) ? list.length : Number.POSITIVE_INFINITY;
  };
  const least = Math.min(...rows.map(lengthOf));
  return Number.isFinite(least) ? rows.filter((row) => lengthOf(row) === least) : [];
}

/** The lines of a block that a word can be a part of. */
const linesWith = (kind: BlockKind, part: string): string[] =>
  Object.entries<WordRow>(vocabulary[kind])
    .filter(([, { params }]) =>
      Object.values(params).some(
        ({ label, accepts }) => label === part || (accepts.kind === "choice" && Object.hasOwn(accepts.choices, part)),
      ),
    )
    .map(([name]) => name);

/** `system TN-S`: the one line of a block that begins with a closed list which has the word behind. */
function wordTaking(kind: BlockKind, [first]: readonly IToken[]): string | undefined {
  const found = first && Object.entries<WordRow>(vocabulary[kind]).filter(([, row]) => beginsWith(row, first));
  return found?.length === 1 ? found[0]?.[0] : undefined;
}

function beginsWith({ params }: WordRow, token: IToken): boolean {
  const [first] = Object.values(params);
  return first !== undefined && isWordOf(token)(first);
}

/** `name "Kitchen"`, on a way: what it is called stands on the line that opens it. */
function titleSaid(kind: BlockKind, word: IToken): Problem | undefined {
  const title =
    /^(?:name|title|designation|description|label|(?:circuit|board|way)-(?:name|title|description|designation))$/i;
  if (!title.test(word.image) || !isTitled(kind)) return undefined;
  const message = `What ${blockNames[kind]} is called stands in quotes on its first line, as in: ${titled[kind]}`;
  return problemAt("wrong-argument", message, word);
}

const titled = {
  installation: 'installation "Garden workshop" {',
  board: 'board A "Main board" {',
  way: 'way 1 radial "Lighting" {',
} as const satisfies Partial<Record<BlockKind, string>>;

const isTitled = (kind: BlockKind): kind is keyof typeof titled => Object.hasOwn(titled, kind);

/** `rn 0.31 Ω` on a way: a part of a line that has its place in another block. */
function labelElsewhere(kind: BlockKind, { image }: IToken, [figure]: readonly IToken[]): string | undefined {
  const isOfHere = linesWith(kind, image).some((name) => takes(rowOf(kind, name), image, figure));
  for (const other of isOfHere ? [] : blockKinds) {
    const line = other === kind ? undefined : lineWith(other, image);
    if (line?.isLabel && takes(line.row, image, figure))
      return `“${image}” stands on the line of “${line.name}”, in ${blockNames[other]}: ${sampleOf(line, image)}`;
  }
  return undefined;
}

/** `r1 0.31 Ω` is a reading, and no figure of a cable. */
function takes(row: WordRow | undefined, image: string, figure: IToken | undefined): boolean {
  const labelled = Object.values<Param>(row?.params ?? {}).find(({ label }) => label === image);
  return !labelled || !figure || !isToken(figure, "Quantity") || couldBe(labelled.accepts, figure);
}

function sampleOf({ name, row }: LineWith, image: string): string {
  const [sample = ""] = row.example.split("\n");
  return sample.split(" ").includes(image) ? sample : `${name} … ${image} …`;
}

/** `r1 7.41 mΩ/m`, `cpc 1.5 mm²`, `motor`: what stands on the line of another word, behind it. */
function partOfLine(kind: BlockKind, word: IToken, [figure]: readonly IToken[] = []): Problem | undefined {
  const line = lineWith(kind, word.image);
  if (!line || !takes(line.row, word.image, figure)) return undefined;
  const {
    name,
    isLabel,
    row: { params },
  } = line;
  const shown = isLabel ? sampleOf(line, word.image) : `${name} ${word.image}`;
  // With other words before it, it is not known what belongs there.
  const first = Object.values(params).every(
    ({ label, optional }) => (isLabel ? label !== undefined : true) || optional,
  );
  const edits = [{ start: word.startOffset, end: word.startOffset, text: `${name} ` }];
  const fixes = first ? [{ title: `Begin the line with ${name}`, edits, safe: false }] : [];
  return problemAt("wrong-argument", `“${word.image}” stands on the line of “${name}”: ${shown}`, word, fixes);
}

/** `reference method C`: what is said on site for a part of another line. */
function labelSaid(kind: BlockKind, line: readonly [IToken, ...IToken[]]): Problem | undefined {
  const labels = Object.values<WordRow>(vocabulary[kind]).flatMap(({ params }) =>
    Object.values<Param>(params).flatMap(({ label }) => label ?? []),
  );
  const [word] = line;
  const found = phraseIn(line, labels) ?? labelFor(word, labels);
  if (!found || !lineWith(kind, found.word)) return undefined;
  const part = partOfLine(kind, { ...line[0], image: found.word });
  return (
    part && {
      ...part,
      message: `“${found.said}” is ${found.word}, and ${part.message.slice(part.message.indexOf("stands"))}`,
      fixes: [],
    }
  );
}

/** `installation-method C`: by what it is likeliest to be. What is a label by itself is no term for another. */
function labelFor({ image }: IToken, labels: readonly string[]): { said: string; word: string } | undefined {
  const [word] = labels.includes(image) ? [] : termsFor(image);
  return word !== undefined && labels.includes(word) ? { said: image, word } : undefined;
}

/** `spare` inside a way: it stands on the line that opens it. */
function partOfOpening(kind: BlockKind, word: IToken): Problem | undefined {
  const opening = blockKinds
    .flatMap((block) => Object.entries<WordRow>(vocabulary[block]))
    .find(([, { opens, params }]) => opens === kind && Object.values(params).some(isWordOf(word)));
  if (!opening) return undefined;
  const [name, { example }] = opening;
  const shown = example.split("\n")[0]?.replace(/ ?\{$/, "");
  return problemAt("wrong-argument", `“${word.image}” stands on the line of the ${name} itself, as in: ${shown}`, word);
}

/** `spare 8`, `ring 1 "Sockets"` on a board: the kind of a way stands behind its number. */
function kindFirst(kind: BlockKind, word: IToken, [number]: readonly IToken[]): Problem | undefined {
  if (kind !== "board" || !Object.hasOwn(vocabulary.board.way.params.kind.accepts.choices, word.image))
    return undefined;
  const isNumbered = number !== undefined && isToken(number, "Number");
  const line = `way ${isNumbered ? number.image : "1"} ${word.image}`;
  const fixes = isNumbered ? [writeFix(line, spanOf(word, number))] : [];
  return problemAt("wrong-argument", `A way begins with its word and its number, as in: ${line}`, word, fixes);
}

/** Whether an argument is one of a closed list that has the word. */
const isWordOf =
  ({ image }: IToken) =>
  ({ accepts, label }: Param): boolean =>
    label === undefined && accepts.kind === "choice" && Object.hasOwn(accepts.choices, image);

/** What a person calls each kind of block. */
const blockNames: Readonly<Record<BlockKind, string>> = {
  file: "the file itself",
  installation: "an installation",
  inspection: "an inspection",
  instrument: "an instrument",
  supply: "the supply",
  board: "a board",
  way: "a way",
  circuitType: "a circuit type",
  containment: "a conduit or trunking",
  dead: "the dead tests of a way",
  live: "the live tests of a way",
  boardDead: "the dead tests of a board",
  boardLive: "the live tests of a board",
  supplyLive: "the tests of a supply",
};
