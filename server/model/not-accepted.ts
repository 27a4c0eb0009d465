/** What is reported where a token is not what the argument it was meant for accepts. */
import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { Accepts } from "../../grammar/params.ts";
import { quantities } from "../../grammar/quantities.ts";
import { capital } from "../text/words.ts";
import { beyondRange } from "./beyond-range.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { routeMeant } from "./not-a-name.ts";
import type { Problem } from "./problems.ts";
import {
  choiceProblem,
  endlessProblem,
  problemAt,
  quantityProblem,
  slipProblem,
  spanOf,
  writeFix,
} from "./refusals.ts";
import { mayBeAbsent, type Slot, says } from "./row-shape.ts";
import { noFigure } from "./spoken-result.ts";
import { strangeUnit } from "./strange-unit.ts";
import { suggestionFor, wordForSiteTerm } from "./suggestions.ts";
import { isName } from "./token-values.ts";
import { depthBehind } from "./two-sides.ts";
import { nameInQuotes, nameKinds, quoted } from "./unquoted.ts";

/** What has been reported where the signs of the line were read. */
const reported: Problem = { check: "stray", message: "", start: 0, end: 0, fixes: [] };

/** The syntax has already reported this token: the statement is broken, but one message is enough. */
export const stopped = ({ tokens }: LineBeingRead): Slip => ({ problem: reported, upTo: tokens.length });

/** A sign behind which the line goes on as it should. */
export const passedOver = ({ at }: LineBeingRead): Slip => ({ problem: reported, upTo: at + 1 });

export const isSign = (token: IToken): boolean => isToken(token, "Stray") || isToken(token, "OpenText");

export const plainly = (slots: readonly Slot[]): Slot[] => slots.filter(([, { label }]) => label === undefined);

/** The token is not what this argument accepts. */
export function refusalFor(line: LineBeingRead, [, { accepts }]: Slot): Slip {
  const { token } = line;
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
  const { token } = line;
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
  const { token } = line;
  const word = routeMeant(line, token);
  if (label.image !== "in" || word === undefined) return undefined;
  const whole = spanOf(label, token);
  const message = `“in ${token.image}” is written ${word}: behind “in” stands the name of a conduit or trunking.`;
  return { problem: { check: "wrong-argument", message, ...whole, fixes: [writeFix(word, whole)] }, upTo: line.at + 1 };
}

/** `insulated ceiling`: the figure behind a label is left out, and the line goes on. */
function figureLost(line: LineBeingRead, [, { accepts }]: Slot, label: IToken): Slip | undefined {
  const { token } = line;
  const goesOn = line.shape.plain.some((slot) => says(slot, token)) || line.shape.labelled.has(token.image);
  if (accepts.kind !== "quantity" || !goesOn) return undefined;
  const { units }: { readonly units: readonly string[] } = quantities[accepts.of];
  const message = `“${label.image}” has ${accepts.help} behind it, a figure in ${units[0]}, and here it has none.`;
  return { problem: problemAt("missing-argument", message, label), upTo: line.at };
}

/** What is said after a label on site but stands alone here: a `type S` RCD is one that is `delayed`. */
function labelledForm(line: LineBeingRead, label: IToken): Slip | undefined {
  const { token } = line;
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
