/**
 * What is written in several words on site and is one word here: `main switch`, `twin and earth`, `EV charger`. Each is
 * answered once, for all of its words.
 */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Problem } from "./problems.ts";
import { problemAt, removeFix, spanOf, writeFix, writtenSo } from "./refusals.ts";
import { mayBeAbsent, type Slot } from "./row-shape.ts";
import { wordForSiteTerm, wordInAnyCase } from "./suggestions.ts";

/** The longest phrase that is known: `flat twin and earth`. */
const mostWords = 4;

interface Phrase {
  readonly said: string;
  readonly word: string;
  readonly last: IToken;
  /** How many words it takes. */
  readonly length: number;
}

/** The longest run of words that is one word of a list, in the list's own spelling or as it is said on site. */
export function phraseIn(tokens: readonly IToken[], words: readonly string[]): Phrase | undefined {
  const end = tokens.findIndex((token) => !isToken(token, "Word"));
  const run = tokens.slice(0, Math.min(mostWords, end < 0 ? tokens.length : end));
  for (let length = run.length; length >= 2; length--) {
    const images = run.slice(0, length).map(({ image }) => image);
    const word = wordInAnyCase(images.join("-"), words);
    const last = run[length - 1];
    if (word !== undefined && last) return { said: images.join(" "), word, last, length };
  }
  return undefined;
}

/** A line whose first words are one word of its block. */
export function phraseOfLine(tokens: readonly IToken[], words: readonly string[]): (Phrase & Problem) | undefined {
  const [first] = tokens;
  const phrase = first && (sumIn(tokens, words) ?? phraseIn(tokens, words));
  return phrase && first ? { ...phrase, ...phraseProblem(first, phrase) } : undefined;
}

/** `R1 + R2`: a word that holds the sign. */
function sumIn([one, sign, other]: readonly IToken[], words: readonly string[]): Phrase | undefined {
  if (!one || !other || sign?.image !== "+") return undefined;
  const said = `${one.image}+${other.image}`.toLowerCase();
  const word = words.find((known) => known.toLowerCase() === said);
  return word === undefined ? undefined : { said: `${one.image} + ${other.image}`, word, last: other, length: 3 };
}

function phraseProblem(first: IToken, { said, word, last }: Phrase): Problem {
  const span = spanOf(first, last);
  return { ...problemAt("wrong-argument", `“${said}” is written ${word}.`, first, [writeFix(word, span)]), ...span };
}

const choicesOf = ([, { accepts }]: Slot): readonly string[] =>
  accepts.kind === "choice" ? Object.keys(accepts.choices) : [];

/** `serves EV charger`, `cable twin and earth`: words of a closed list. */
export function phrase(line: LineBeingRead): Slip | undefined {
  const tokens = line.tokens.slice(line.at);
  const [first] = tokens;
  const words = line.free().flatMap((slot) => (slot[1].label === undefined ? choicesOf(slot) : []));
  const found = first && phraseIn(tokens, words);
  return found && first ? { problem: phraseProblem(first, found), upTo: line.at + found.length } : phraseTaken(line);
}

/** `route clipped direct`: the first word was understood and says it all. `serves door entry`: it says something else. */
function phraseTaken({ tokens, token, at, shape }: LineBeingRead): Slip | undefined {
  const before = tokens[at - 1];
  if (!before || !isToken(before, "Word") || !isToken(token, "Word")) return undefined;
  const said = `${before.image} ${token.image}`;
  const list = shape.plain.map(choicesOf).find((words) => words.includes(before.image)) ?? [];
  const word = wordForSiteTerm(said.replace(" ", "-"), list);
  if (word === undefined) return undefined;
  const span = spanOf(before, token);
  const isSame = word === before.image;
  const fix = isSame ? removeFix(token.image, { start: endOf(before), end: endOf(token) }) : writeFix(word, span);
  const message = `“${said}” is written ${word}${isSame ? `: leave out “${token.image}”` : ""}.`;
  const problem = problemAt("wrong-argument", message, token, [fix]);
  return { problem: isSame ? problem : { ...problem, ...span }, upTo: at + 1 };
}

/** Words that join others on site, and that a line does without. */
const fillers: ReadonlySet<string> = new Set([
  "and",
  "with",
  "of",
  "the",
  "is",
  "plus",
  "approx",
  "about",
  "circa",
  "circuits",
]);

/** `serves lighting and sockets`. */
export function filler(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!fillers.has(token.image.toLowerCase())) return undefined;
  return leftOut(line, token, `The parts of a line follow one another: leave out “${token.image}”.`);
}

/** `device MCB B32`: what is said on site for the line's own word. */
export function ownNameAgain(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (wordForSiteTerm(token.image, [line.word.image]) === undefined) return undefined;
  // “inspection EICR”: it says which of them.
  const choices = line.free().flatMap(choicesOf);
  if (wordForSiteTerm(token.image, choices) !== undefined) return undefined;
  return leftOut(line, token, `“${line.word.image}” means that already: leave out “${token.image}”.`);
}

/** A token that the line does without, with the blank on one side of it. */
function leftOut({ tokens, at, word }: LineBeingRead, token: IToken, message: string): Slip {
  const next = tokens[at + 1];
  const span = next
    ? { start: token.startOffset, end: next.startOffset }
    : { start: endOf(tokens[at - 1] ?? word), end: endOf(token) };
  return { problem: problemAt("wrong-argument", message, token, [removeFix(token.image, span)]), upTo: at + 1 };
}

/** `n/a`, `lim`, `not tested`: what stands for a reading that is not there. */
export function spokenAbsence(line: LineBeingRead): Slip | undefined {
  const [first, second] = line.tokens.slice(line.at, line.at + 2);
  if (!first || !line.free().some(([, { accepts }]) => mayBeAbsent(accepts))) return undefined;
  const pair = second && `${first.image} ${second.image}`;
  const both = pair === undefined ? undefined : absences.get(pair.toLowerCase());
  const word = both ?? absences.get(first.image.toLowerCase());
  if (word === undefined) return undefined;
  const [said, last] = both && pair && second ? [pair, second] : [first.image, first];
  const message =
    word === "LIM" ? `“${said}” is written LIM, with the reason in quotes.` : `“${said}” is written ${word}.`;
  const text = word === "LIM" && !line.tokens.some((token) => isToken(token, "Text")) ? `${word} "why"` : word;
  // A reason behind it belongs to it.
  return { ...writtenSo(line, text, message, first, last), upTo: line.tokens.length };
}

const absences: ReadonlyMap<string, "LIM" | "N/A"> = new Map([
  ["n/a", "N/A"],
  ["na", "N/A"],
  ["not applicable", "N/A"],
  ["lim", "LIM"],
  ["not tested", "LIM"],
  ["not verified", "LIM"],
  ["n/v", "LIM"],
  ["nv", "LIM"],
  ["n/t", "LIM"],
  ["nt", "LIM"],
]);

/** `route C`: a word that stands behind another on this line. */
export function labelMissing(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!isToken(token, "Word")) return undefined;
  const able = line.free().filter((slot) => slot[1].label !== undefined && choicesOf(slot).includes(token.image));
  const said = line.free().some((slot) => slot[1].label === undefined && wordForSiteTerm(token.image, choicesOf(slot)));
  const [label, ...others] = said ? [] : able.flatMap(([, one]) => one.label ?? []);
  if (label === undefined || others.length > 0) return undefined;
  // “device BS EN 60898 B” is half of B32, and no type of an RCD.
  if (token.image.length === 1 && line.free().some(([name]) => name === "curve")) {
    const message = `“${token.image}” is followed by the rated current: ${token.image}32.`;
    return { problem: problemAt("wrong-argument", message, token, []), upTo: line.at + 1 };
  }
  const text = `${label} ${token.image}`;
  return writtenSo(line, text, `“${token.image}” stands behind “${label}”: ${text}.`, token);
}

/** `L/N` and `LN` for the label `L-N`: the same letters in another spelling. */
export function labelRespelt(line: LineBeingRead): Slip | undefined {
  const { tokens, token, at, shape } = line;
  if (!isToken(token, "Word")) return undefined;
  const labels = [...shape.labelled.keys()].filter((one) => one !== token.image);
  const label = labels.find((one) => bare(one) === bare(token.image)) ?? wordForSiteTerm(token.image, labels);
  if (label === undefined) return undefined;
  // What stands behind a label belongs to it.
  const upTo = tokens[at + 1] && !shape.labelled.has(tokens[at + 1]?.image ?? "") ? at + 2 : at + 1;
  return { ...writtenSo(line, label, `“${token.image}” is written ${label}.`, token), upTo };
}

const bare = (text: string): string => text.toLowerCase().replaceAll(/[^\p{L}\d]/gu, "");
