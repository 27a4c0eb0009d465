/** What is reported where nothing takes a token of a line. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Accepts } from "../../grammar/params.ts";
import { listed } from "../text/words.ts";
import { beyondRange } from "./beyond-range.ts";
import { delayOfDevice } from "./delay-of-device.ts";
import type { LineBeingRead, Slip, SlipReader } from "./line.ts";
import { factBehind, lostLineEnd } from "./lost-line-end.ts";
import { needlessName } from "./needless-name.ts";
import { multipleTurned, twoTimes } from "./not-a-name.ts";
import { isSign, plainly, refusalFor, stopped } from "./not-accepted.ts";
import {
  daysNotYears,
  feederElsewhere,
  linesElsewhere,
  linesInside,
  loadElsewhere,
  powerFactorElsewhere,
  useElsewhere,
} from "./own-line.ts";
import { printedLabel } from "./printed-label.ts";
import type { Fix } from "./problems.ts";
import { indentOf, problemAt } from "./refusals.ts";
import { roughWithoutYear, yearForDay } from "./rough-time.ts";
import { couldBe, type Slot, says } from "./row-shape.ts";
import { filler, labelMissing, labelRespelt, ownNameAgain, phrase, spokenAbsence } from "./site-phrases.ts";
import { spokenCable } from "./spoken-cable.ts";
import { spokenDay } from "./spoken-day.ts";
import { spokenItems } from "./spoken-items.ts";
import { kindOfCircuit, readAtPlace, useAsKind, whereItRuns } from "./spoken-line.ts";
import { spokenPair } from "./spoken-pair.ts";
import { spokenPoles } from "./spoken-poles.ts";
import {
  halfCycle,
  rampOnTimeLine,
  residualNamed,
  spokenProvenance,
  surgeType,
  tickForFigure,
} from "./spoken-result.ts";
import { spokenEdition, spokenStandard } from "./spoken-standard.ts";
import { spokenPower } from "./strange-unit.ts";
import { suggestionFor, wordForSiteTerm } from "./suggestions.ts";
import { isNumberLike } from "./token-values.ts";
import { twoSides } from "./two-sides.ts";
import { limitedByNothing, saidInAnother } from "./unknown-word.ts";
import { unlabelled } from "./unlabelled.ts";
import { nameKinds, needlessQuotes, unquoted } from "./unquoted.ts";

/** Slips of the pen that have an answer of their own, the likeliest reading of a token first. */
const slips: readonly SlipReader[] = [
  beyondRange,
  limitedByNothing,
  multipleTurned,
  twoTimes,
  spokenAbsence,
  spokenProvenance,
  tickForFigure,
  rampOnTimeLine,
  surgeType,
  spokenPoles,
  spokenItems,
  halfCycle,
  daysNotYears,
  spokenDay,
  yearForDay,
  roughWithoutYear,
  printedLabel,
  residualNamed,
  spokenStandard,
  spokenEdition,
  delayOfDevice,
  readAtPlace,
  whereItRuns,
  phrase,
  linesElsewhere,
  linesInside,
  feederElsewhere,
  powerFactorElsewhere,
  loadElsewhere,
  useElsewhere,
  twoSides,
  spokenCable,
  spokenPair,
  needlessName,
  ownNameAgain,
  filler,
  kindOfCircuit,
  useAsKind,
  labelMissing,
  labelRespelt,
  unlabelled,
  factBehind,
  spokenPower,
  unquoted,
  needlessQuotes,
  lostLineEnd,
];

/** More than these are read no faster than an example. */
const mostListed = 2;

/** Nothing takes the token: what it looks like, what belongs here, and how to put it right. */
export function refusal(line: LineBeingRead): Slip {
  const { token } = line;
  for (const slip of slips) {
    const found = slip(line);
    if (found) return found;
  }
  const free = line.free();
  const taken = line.shape.plain.filter((slot) => !free.includes(slot));
  const again = taken.find((slot) => says(slot, token));
  if (again && !isSiteTerm(free, token)) return second(line, again, token);
  const other = lineElsewhere(line, free, token);
  const slot = other === undefined ? slotMeant(line, token) : undefined;
  if (slot) return refusalFor(line, slot);
  if (isSign(token)) return stopped(line);
  const filled = taken.find(([, { accepts }]) => couldBe(accepts, token));
  return filled ? second(line, filled, token) : stranger(line, free, other);
}

/** `rcd 18 ms` on a way: a figure that the word takes in another block, and nothing here does. */
const lineElsewhere = ({ word, row }: LineBeingRead, free: readonly Slot[], token: IToken): string | undefined =>
  isToken(token, "Quantity") && !free.some(([, { accepts }]) => couldBe(accepts, token))
    ? saidInAnother(word.image, row, ({ params }) =>
        Object.values(params).some(({ accepts }) => couldBe(accepts, token)),
      )
    : undefined;

/** “bonding gas none”: a service by itself, and on site another word. */
const isSiteTerm = (free: readonly Slot[], { image }: IToken): boolean =>
  plainly(free).some(
    ([, { accepts }]) =>
      accepts.kind === "choice" && wordForSiteTerm(image, Object.keys(accepts.choices)) !== undefined,
  );

/** What a token was meant for, by what it looks like. */
function slotMeant(line: LineBeingRead, token: IToken): Slot | undefined {
  // “B32” has the rated current with it: a figure behind it is another.
  const plain = plainly(line.free()).filter(([name]) => !(name === "rating" && line.args.curve));
  const figures = isToken(token, "Multiple") ? [] : plain.filter(([, { accepts }]) => accepts.kind === "quantity");
  const reading = isRating(token) ? undefined : line.shape.plain.find(isRead);
  // A second reading is none of what else the line takes.
  const quantity = reading ? figures.find((slot) => slot === reading) : figures[0];
  if (quantity && isNumberLike(token)) return quantity;
  const isWord = isToken(token, "Word") || isToken(token, "NumberWord") || (isToken(token, "Number") && !quantity);
  return isWord ? choiceMeant(plain, token) : undefined;
}

/** mA that RCDs are rated at: a bare figure that is none of them was read on the meter. */
const residualRatings: readonly string[] = ["6", "10", "30", "100", "300", "500", "1000", "3000"];

const isRating = (token: IToken): boolean => !isToken(token, "Number") || residualRatings.includes(token.image);

const isRead = ([, { accepts }]: Slot): boolean => accepts.kind === "quantity" && accepts.reading;

/** Of several closed lists the one that has a word for what is written; else the first. */
function choiceMeant(free: readonly Slot[], { image }: IToken): Slot | undefined {
  const choices = free.filter(([, { accepts }]) => accepts.kind === "choice");
  return (
    choices.find(
      ([, { accepts }]) =>
        accepts.kind === "choice" && suggestionFor(image, Object.keys(accepts.choices)) !== undefined,
    ) ?? choices[0]
  );
}

/** A token that is like nothing the line takes; `other`: the line of another block that it may be meant for. */
function stranger(line: LineBeingRead, free: readonly Slot[], other: string | undefined): Slip {
  const { word, row, token, tokens, at } = line;
  const named = plainly(free).some(([, { accepts }]) => nameKinds.includes(accepts.kind));
  if (isToken(token, "Text") && !named && !Object.values(row.params).some(({ accepts }) => accepts.kind === "text"))
    return asNote(word, token, tokens);
  const wanted = free.map(([, { label, accepts }]) => (label ? `“${label}” with ${accepts.help}` : accepts.help));
  const rest = wanted.length === 0 ? "nothing more" : `no such thing here, only ${listed(wanted)}`;
  const message = other
    ? `Here “${word.image}” takes no “${token.image}”; that is a line ${other}`
    : wanted.length > mostListed
      ? `“${token.image}” does not belong here. The line is written so: ${row.example.split("\n")[0]}`
      : `“${word.image}” takes ${rest}; “${token.image}” does not belong.`;
  // Where nothing more can stand, all that follows is one thing too many.
  const upTo = other || free.length === 0 ? tokens.length : at + 1;
  return { problem: problemAt("wrong-argument", message, token), upTo };
}

/** `polarity wrong "Swapped at the switch"`: what is remarked has a line of its own. */
function asNote(word: IToken, token: IToken, tokens: readonly IToken[]): Slip {
  const before = tokens[tokens.indexOf(token) - 1];
  const indent = indentOf(word);
  const edits = [
    { start: before ? endOf(before) : token.startOffset, end: token.startOffset, text: `\n${indent}note ` },
  ];
  const fixes = before ? [{ title: "Make it a note on a line of its own", edits, safe: false }] : [];
  const message = `“${word.image}” takes no text: write it on a line of its own, as note ${token.image}.`;
  return { problem: problemAt("wrong-argument", message, token, fixes), upTo: tokens.length };
}

/** A second value where the line has one of its kind already: the rest of the line belongs to it. */
function second(line: LineBeingRead, [, { accepts }]: Slot, token: IToken): Slip {
  const { word, row, tokens } = line;
  const often = row.times === "often";
  const remedy = often ? `“${token.image}” needs a line of its own.` : "delete one of the two.";
  const fixes = often ? ownLine(line, accepts, token) : [];
  const message = `“${word.image}” has ${accepts.help} already: ${remedy}`;
  return { problem: problemAt("wrong-argument", message, token, fixes), upTo: tokens.length };
}

/** `rcd 30 mA 1x 24 ms 5x 12 ms`: what stands before the first of its kind is stated of both. */
function ownLine({ word, tokens }: LineBeingRead, accepts: Accepts, token: IToken): Fix[] {
  const at = tokens.indexOf(token);
  const first = tokens.findIndex((one) => couldBe(accepts, one));
  const before = tokens[at - 1];
  if (first < 0 || first >= at || !before) return [];
  const head = [word, ...tokens.slice(0, first)].map(({ image }) => image).join(" ");
  const indent = indentOf(word);
  return [
    {
      title: `Put ${token.image} on a line of its own`,
      edits: [{ start: endOf(before), end: token.startOffset, text: `\n${indent}${head} ` }],
      safe: false,
    },
  ];
}
