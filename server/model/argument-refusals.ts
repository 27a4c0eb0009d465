/** What is reported where nothing takes a token of a line, or where something is missing from it. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Accepts } from "../../grammar/params.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { capital, listed } from "../text/words.ts";
import { beyondRange } from "./beyond-range.ts";
import type { LineBeingRead, Slip, SlipReader } from "./line.ts";
import { factBehind, lostLineEnd } from "./lost-line-end.ts";
import { figureTakenForName, multipleTurned, routeMeant } from "./not-a-name.ts";
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
import type { Fix, Problem } from "./problems.ts";
import {
  choiceProblem,
  endlessProblem,
  indentOf,
  problemAt,
  quantityProblem,
  slipProblem,
  spanOf,
  writeFix,
} from "./refusals.ts";
import { roughWithoutYear, yearForDay } from "./rough-time.ts";
import { couldBe, mayBeAbsent, type Slot, says } from "./row-shape.ts";
import { filler, labelMissing, labelRespelt, ownNameAgain, phrase, spokenAbsence } from "./site-phrases.ts";
import { spokenCable } from "./spoken-cable.ts";
import { spokenDay } from "./spoken-day.ts";
import { spokenItems } from "./spoken-items.ts";
import { spokenPoles } from "./spoken-poles.ts";
import {
  halfCycle,
  noFigure,
  rampOnTimeLine,
  residualNamed,
  spokenProvenance,
  surgeType,
  tickForFigure,
} from "./spoken-result.ts";
import { spokenEdition, spokenStandard } from "./spoken-standard.ts";
import { strangeUnit } from "./strange-unit.ts";
import { suggestionFor, wordForSiteTerm } from "./suggestions.ts";
import { isName, isNumberLike } from "./token-values.ts";
import { depthBehind, twoSides } from "./two-sides.ts";
import { limitedByNothing, saidInAnother } from "./unknown-word.ts";
import { unlabelled } from "./unlabelled.ts";
import { nameInQuotes, nameKinds, needlessQuotes, quoted, unquoted } from "./unquoted.ts";
import { isAbsent } from "./values.ts";

/** Slips of the pen that have an answer of their own, the likeliest reading of a token first. */
const slips: readonly SlipReader[] = [
  beyondRange,
  limitedByNothing,
  multipleTurned,
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
  phrase,
  linesElsewhere,
  linesInside,
  feederElsewhere,
  powerFactorElsewhere,
  loadElsewhere,
  useElsewhere,
  twoSides,
  spokenCable,
  ownNameAgain,
  filler,
  labelMissing,
  labelRespelt,
  unlabelled,
  factBehind,
  unquoted,
  needlessQuotes,
  lostLineEnd,
];

/** What has been reported where the signs of the line were read. */
const reported: Problem = { check: "stray", message: "", start: 0, end: 0, fixes: [] };

/** A sign behind which the line goes on as it should. */
export const passedOver = ({ at }: LineBeingRead): Slip => ({ problem: reported, upTo: at + 1 });

/** The syntax has already reported this token: the statement is broken, but one message is enough. */
const stopped = ({ tokens }: LineBeingRead): Slip => ({ problem: reported, upTo: tokens.length });

const isSign = (token: IToken): boolean => isToken(token, "Stray") || isToken(token, "OpenText");

/** More than these are read no faster than an example. */
const mostListed = 2;

/** Of more words than these none is offered by itself. */
const mostOffered = 4;

/** Nothing takes the token: what it looks like, what belongs here, and how to put it right. */
export function refusal(line: LineBeingRead): Slip {
  const token = line.tokens[line.at] as IToken;
  for (const slip of slips) {
    const found = slip(line);
    if (found) return found;
  }
  const free = line.free();
  const taken = line.shape.plain.filter((slot) => !free.includes(slot));
  const again = taken.find((slot) => says(slot, token));
  if (again && !isSiteTerm(free, token)) return second(line, again, token);
  const slot = slotMeant(line, token);
  if (slot) return refusalFor(line, slot);
  if (isSign(token)) return stopped(line);
  const filled = taken.find(([, { accepts }]) => couldBe(accepts, token));
  return filled ? second(line, filled, token) : stranger(line, free, token);
}

/** “bonding gas none”: a service by itself, and on site another word. */
const isSiteTerm = (free: readonly Slot[], { image }: IToken): boolean =>
  plainly(free).some(
    ([, { accepts }]) =>
      accepts.kind === "choice" && wordForSiteTerm(image, Object.keys(accepts.choices)) !== undefined,
  );

const plainly = (slots: readonly Slot[]): Slot[] => slots.filter(([, { label }]) => label === undefined);

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

/** A token that is like nothing the line takes. */
function stranger({ word, row, tokens, at }: LineBeingRead, free: readonly Slot[], token: IToken): Slip {
  const named = plainly(free).some(([, { accepts }]) => nameKinds.includes(accepts.kind));
  if (isToken(token, "Text") && !named && !Object.values(row.params).some(({ accepts }) => accepts.kind === "text"))
    return asNote(word, token, tokens);
  const other = isToken(token, "Quantity")
    ? saidInAnother(word.image, row, ({ params }) =>
        Object.values(params).some(({ accepts }) => couldBe(accepts, token)),
      )
    : undefined;
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

/** The token is not what this argument accepts. */
function refusalFor(line: LineBeingRead, [, { accepts }]: Slot): Slip {
  const token = line.tokens[line.at] as IToken;
  const isText = accepts.kind === "text" && isName(token);
  const slip =
    beyondRange(line) ??
    figureOnly(line, accepts) ??
    (isText ? quoted(line, `${capital(accepts.help)} is written in quotes`) : undefined) ??
    (accepts.kind === "quantity" ? strangeUnit(line, accepts.of) : undefined);
  if (slip) return slip;
  if (isSign(token)) return stopped(line);
  return strangers(line, accepts) ?? { problem: notAccepted(accepts, token), upTo: line.at + 1 };
}

/** `Zs tbc`: a word that says nothing of how it was read stands in the place of the figure. */
function figureOnly(line: LineBeingRead, accepts: Accepts): Slip | undefined {
  const token = line.tokens[line.at] as IToken;
  const isNear = accepts.kind === "choice" && suggestionFor(token.image, Object.keys(accepts.choices)) !== undefined;
  const wantsFigure = plainly(line.free()).some(
    ([, one]) => !one.optional && one.accepts.kind === "quantity" && mayBeAbsent(one.accepts),
  );
  if (accepts.kind !== "choice" || isNear || !wantsFigure || !isToken(token, "Word")) return undefined;
  const { problem } = noFigure(line, token);
  return { problem: { ...problem, fixes: [] }, upTo: line.at + 1 };
}

/** `serves hand dryer`: several words in a row that are like none of the list are one answer. */
function strangers(line: LineBeingRead, accepts: Accepts): Slip | undefined {
  if (accepts.kind !== "choice") return undefined;
  const words = Object.keys(accepts.choices);
  const run = line.tokens.slice(line.at);
  const end = run.findIndex(
    (token) =>
      !isToken(token, "Word") ||
      words.includes(token.image) ||
      line.shape.labelled.has(token.image) ||
      suggestionFor(token.image, words) !== undefined,
  );
  const [first, ...others] = end < 0 ? run : run.slice(0, end);
  const last = others.at(-1);
  if (!first || !last) return undefined;
  const image = [first, ...others].map((token) => token.image).join(" ");
  const problem = { ...choiceProblem(accepts.choices, accepts.help, { ...first, image }), ...spanOf(first, last) };
  return { problem, upTo: line.at + 1 + others.length };
}

/** What stands behind the label of an argument is not what it accepts. */
export const refusalBehind = (line: LineBeingRead, slot: Slot, label: IToken): Slip =>
  depthBehind(line, label) ??
  placeBehind(line, label) ??
  figureLost(line, slot, label) ??
  labelledForm(line, label) ??
  refusalFor(line, slot);

/** `in wall`, `in loft`: how it runs is one word, and `in` the name of what is described elsewhere. */
function placeBehind(line: LineBeingRead, label: IToken): Slip | undefined {
  const token = line.tokens[line.at] as IToken;
  const word = routeMeant(line, token);
  if (label.image !== "in" || word === undefined) return undefined;
  const whole = spanOf(label, token);
  const message = `“in ${token.image}” is written ${word}: behind “in” stands the name of a conduit or trunking.`;
  return { problem: { check: "wrong-argument", message, ...whole, fixes: [writeFix(word, whole)] }, upTo: line.at + 1 };
}

/** `insulated ceiling`: the figure behind a label is left out, and the line goes on. */
function figureLost(line: LineBeingRead, [, { accepts }]: Slot, label: IToken): Slip | undefined {
  const token = line.tokens[line.at] as IToken;
  const goesOn = line.shape.plain.some((slot) => says(slot, token)) || line.shape.labelled.has(token.image);
  if (accepts.kind !== "quantity" || !goesOn) return undefined;
  const { units }: { readonly units: readonly string[] } = quantities[accepts.of];
  const message = `“${label.image}” has ${accepts.help} behind it, a figure in ${units[0]}, and here it has none.`;
  return { problem: problemAt("missing-argument", message, label), upTo: line.at };
}

/** What is said after a label on site but stands alone here: a `type S` RCD is one that is `delayed`. */
function labelledForm(line: LineBeingRead, label: IToken): Slip | undefined {
  const token = line.tokens[line.at] as IToken;
  for (const [, { accepts, label: own }] of line.free()) {
    if (accepts.kind !== "choice") continue;
    const exact = own !== undefined && Object.hasOwn(accepts.choices, token.image);
    const ours = exact ? `${own} ${token.image}` : wordForSiteTerm(token.image, Object.keys(accepts.choices));
    if (ours === undefined) continue;
    const whole = spanOf(label, token);
    const message = `“${label.image} ${token.image}” is written “${ours}”.`;
    const problem: Problem = { check: "wrong-argument", message, ...whole, fixes: [writeFix(ours, whole)] };
    return { problem, upTo: line.at + 1 };
  }
  return undefined;
}

/** `device BS EN 61009 C32 300 mA delayed`. */
function delayOfDevice({ word, shape, tokens, at }: LineBeingRead): Slip | undefined {
  const token = tokens[at];
  if (!token || word.image !== "device" || shape.labelled.has("delayed")) return undefined;
  if (token.image !== "delayed" && wordForSiteTerm(token.image, ["delayed"]) === undefined) return undefined;
  const message =
    "A delay is stated of an RCD on its own line: rcd BS EN 61008 63 A 100 mA type A delayed. An RCBO for additional protection has none.";
  return { problem: problemAt("wrong-argument", message, token), upTo: at + 1 };
}

/** How what belongs there is written. */
const forms: Readonly<Partial<Record<Accepts["kind"], string>>> = {
  name: "one word without quotes",
  ref: "its name without quotes",
  define: "one word without quotes",
  text: "in quotes",
  date: "such as 2026-03-05",
  count: "a whole number",
  multiple: "such as 1x",
};

/** Why a token is not what an argument accepts. */
function notAccepted(accepts: Accepts, token: IToken): Problem {
  if (isToken(token, "Slip")) return slipProblem(token);
  if (isToken(token, "Endless"))
    return endlessProblem(
      token,
      accepts.kind === "quantity" && accepts.reading ? quantities[accepts.of].units[0] : undefined,
    );
  if (accepts.kind === "quantity") return quantityProblem(accepts.of, token);
  if (accepts.kind === "choice" && !isToken(token, "Quantity"))
    return choiceProblem(accepts.choices, accepts.help, token);
  const form = forms[accepts.kind];
  const bare = nameKinds.includes(accepts.kind) ? nameInQuotes(token) : undefined;
  return problemAt(
    "wrong-argument",
    `“${token.image}” is written where ${accepts.help} belongs${form ? `, ${form}` : ""}.`,
    token,
    bare === undefined ? [] : [writeFix(bare, spanOf(token, token))],
  );
}

/** What a line that was read to its end lacks; nothing if it is whole. */
export function missingFrom(line: LineBeingRead): Problem | undefined {
  const { word, row, shape, args } = line;
  const missing = shape.slots.filter(([name, param]) => !param.optional && args[name] === undefined);
  if (missing.length === 0) return row.params.power && row.figures === "load" ? loadWithoutFigure(line) : undefined;
  const bare = figureTakenForName(line, missing);
  if (bare) return bare;
  const known = notTested(line, missing) ?? standardNotStated(line, missing);
  if (known) return known;
  const wanted = missing.map(([, { label, accepts }]) => (label ? `“${label}” and ${accepts.help}` : accepts.help));
  const example = row.example.split("\n")[0]?.replace(/ ?\{$/, "");
  const message = `“${word.image}” needs ${listed(wanted)}, as in: ${example}`;
  return problemAt("missing-argument", message, word, choicesFor(word, missing));
}

/** `load "Kiln"`: what a load is comes to nothing without what it takes. */
function loadWithoutFigure({ word, row, args }: LineBeingRead): Problem | undefined {
  if (args.power || args.current) return undefined;
  return problemAt("missing-argument", `“${word.image}” needs its power or its current, as in: ${row.example}`, word);
}

/** `device B32`: of what is made so today there are two, and the residual current tells them apart. */
function standardNotStated({ word, args }: LineBeingRead, missing: readonly Slot[]): Problem | undefined {
  const [only, ...others] = missing;
  const { curve } = args;
  if (others.length > 0 || only?.[1].accepts.kind !== "standard" || !curve || !("curve" in curve)) return undefined;
  const standard = args.sensitivity ? "BS EN 61009" : "BS EN 60898";
  const label = `${curve.curve}${curve.rating}`;
  const message = `“${word.image}” needs the standard that is on the device, as in: ${word.image} ${standard} ${label}`;
  const edits = [{ start: endOf(word), end: endOf(word), text: ` ${standard}` }];
  return problemAt("missing-argument", message, word, [{ title: `Write ${standard}`, edits, safe: false }]);
}

/** `insulation LIM "Lamps in"`: how the test would be made is stated of one that was not made too. */
function notTested({ word, row, args }: LineBeingRead, missing: readonly Slot[]): Problem | undefined {
  const [only, ...others] = missing;
  const accepts = only?.[1].accepts;
  const written = Object.values(args).flat();
  const absent = written.find((value) => isAbsent(value));
  if (others.length > 0 || accepts?.kind !== "quantity" || !absent || !written.every((value) => isAbsent(value)))
    return undefined;
  const usual = exampleOf(accepts.of, row.example);
  if (usual === undefined) return undefined;
  const message = `“${word.image}” states ${accepts.help} of a test that was not made too: ${word.image} ${usual} ${absent.absent}`;
  const edits = [{ start: endOf(word), end: endOf(word), text: ` ${usual}` }];
  return problemAt("missing-argument", message, word, [{ title: `Write ${usual}`, edits, safe: false }]);
}

/** The first figure of its kind in an example: `500 V`. */
const exampleOf = (of: QuantityName, example: string): string | undefined => {
  const { units }: { readonly units: readonly string[] } = quantities[of];
  return units.flatMap((unit) => new RegExp(`\\d+(?:\\.\\d+)? ${unit}(?![\\p{L}\\d])`, "u").exec(example) ?? [])[0];
};

/** Where one word of a short list is all that is missing, and it is no result of a test. */
function choicesFor(word: IToken, [only, ...others]: readonly Slot[]): Fix[] {
  const { accepts, label } = only?.[1] ?? {};
  if (others.length > 0 || label !== undefined || accepts?.kind !== "choice" || accepts.absent) return [];
  const words = Object.keys(accepts.choices);
  const at = endOf(word);
  if (words.length > mostOffered) return [];
  return words.map((one) => ({
    title: `Write ${one}`,
    edits: [{ start: at, end: at, text: ` ${one}` }],
    safe: false,
  }));
}
