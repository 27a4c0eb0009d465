/** What is said where a token cannot be the argument that belongs there, and how it is put right. */

import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { Choices } from "../../grammar/params.ts";
import { type QuantityKind, type QuantityName, quantities } from "../../grammar/quantities.ts";
import { unitOf } from "../../grammar/units.ts";
import { capital, listed } from "../text/words.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Fix, LanguageCheck, Problem } from "./problems.ts";
import { readAs, readWritten, unitFixes } from "./quantity.ts";
import { likest, suggestionFor } from "./suggestions.ts";
import type { Span } from "./values.ts";

export const problemAt = (
  check: LanguageCheck,
  message: string,
  token: IToken,
  fixes: readonly Fix[] = [],
): Problem => ({ check, message: capital(message), start: token.startOffset, end: endOf(token), fixes });

/** The blanks before a line's word, for another line above or below it. */
export const indentOf = ({ startColumn = 1 }: IToken): string => " ".repeat(Math.max(0, startColumn - 1));

/** What is written between a word and its figure elsewhere, and between the parts of a list: `Zs = 0.45 Ω`, `a, b`. */
export const signsBeside = /^[=:,]$/;

/** A figure with a letter or a comma in it. */
export function slipProblem(token: IToken): Problem {
  const image = token.image
    .replace(/[oO](?=[.\d])/g, "0")
    .replace(/(^|[<>\s-])\./, "$10.")
    .replace(/0[oO]/g, "00");
  const text = image.replace(",", ".");
  // A comma before three figures divides thousands on many labels.
  const thousands = /^[<>]?[ \t]?[1-9]\d{0,2},\d{3}(?!\d)/.test(image) ? image.replace(",", "") : undefined;
  if (thousands !== undefined) {
    const message = `“${token.image}” may be ${thousands} or ${text}: write the one that is meant.`;
    return problemAt("number-slip", message, token, [replaceFix(token, thousands), replaceFix(token, text)]);
  }
  const message = `“${token.image}” is not a number: it is written ${text}.`;
  return problemAt("number-slip", message, token, [replaceFix(token, text)]);
}

/** What may be wrong with a figure, likeliest first. */
type FigureSlip = (of: QuantityName, token: IToken) => Problem | undefined;

/** Something else where a figure with its unit belongs. */
export function quantityProblem(of: QuantityName, token: IToken): Problem {
  for (const slip of figureSlips) {
    const found = slip(of, token);
    if (found) return found;
  }
  const { what, units } = quantities[of];
  const message = `“${token.image}” is written where ${what} belongs, such as a figure in ${units[0]}.`;
  return problemAt("wrong-argument", message, token, []);
}

const openReading: FigureSlip = (of, token) => {
  const { physical, units } = quantities[of];
  if (!openWords.test(token.image) || physical !== "resistance") return undefined;
  const message = `“${token.image}” is written as what the meter showed: > and the top of its range, such as >999 ${units[0]}.`;
  return problemAt("off-scale-sign", message, token);
};

/** As it stands on a breaker: 6000 in a frame. */
const capacityInFrame: FigureSlip = (of, token) => {
  const amps = of === "breaking" ? capacityInAmps.exec(token.image)?.[1] : undefined;
  if (amps === undefined) return undefined;
  const text = `${Number(amps) / 1000} kA`;
  const message = `“${token.image}” is in amperes: ${quantities[of].what} is written ${text}.`;
  const check = isToken(token, "Number") ? "missing-unit" : "wrong-unit";
  return problemAt(check, message, token, [replaceFix(token, text)]);
};

const withoutUnit: FigureSlip = (of, token) => {
  if (!isToken(token, "Number")) return undefined;
  const kind = quantities[of];
  const written = readWritten(token.image, token.startOffset);
  // A power factor of 0.8, as it stands on a plate.
  const isShare = of === "share" && written !== undefined && written.number <= 1;
  const asShare = isShare && [replaceFix(token, `${Math.round(written.number * 1e4) / 100} %`)];
  const message = `${token.image} lacks its unit: ${kind.what} is written in ${kind.units.join(" or ")}.`;
  return problemAt("missing-unit", message, token, asShare || (written ? unitFixes(written, kind) : []));
};

/** “0R9” and “0.9R”, as resistors are marked. */
const resistorMark: FigureSlip = (of, token) => {
  const [, sign = "", ohm = "", tenths] = /^([<>]?[ \t]?)(\d+(?:\.\d+)?)R(\d+)?$/i.exec(token.image) ?? [];
  if (ohm === "" || quantities[of].physical !== "resistance" || (tenths !== undefined && ohm.includes(".")))
    return undefined;
  const text = `${sign}${tenths === undefined ? ohm : `${ohm}.${tenths}`} Ω`;
  return problemAt("wrong-unit", `“${token.image}” is written ${text}.`, token, [replaceFix(token, text)]);
};

const unknownUnit: FigureSlip = (of, token) => {
  if (!isToken(token, "NumberWord")) return undefined;
  const [, figure, unit] = /^([<>]?[ \t]?\d+(?:\.\d+)?)([A-Za-zµΩ].*)$/.exec(token.image) ?? [];
  if (unit === undefined || unitOf(unit)) return undefined;
  const { what, units } = quantities[of];
  const message = `“${unit}” is not a unit: ${what} is written in ${units.join(" or ")}.`;
  // Without its power of ten it is another figure.
  const fixes = /^e[+-]?\d/i.test(unit) ? [] : units.map((one) => replaceFix(token, `${figure} ${one}`));
  return problemAt("wrong-unit", message, token, fixes);
};

const apparentPower: FigureSlip = (of, token) => {
  const [, figure, kilo = ""] = (of === "power" && /^(\d+(?:\.\d+)?)\s*(k?)VA$/i.exec(token.image)) || [];
  if (figure === undefined) return undefined;
  const text = `${figure} ${kilo.toLowerCase()}W`;
  const message = `“${token.image}” is written in watts, which at a power factor of one draw the same current: ${text}.`;
  return problemAt("wrong-unit", message, token, [replaceFix(token, text)]);
};

/** “6mm” of copper: among other figures of its line it is none of them, and can only be its size. */
const sizeInMillimetres: FigureSlip = (of, token) => {
  const length = of === "csa" ? readWritten(token.image, token.startOffset) : undefined;
  const size = length?.unit === "mm" ? readAs(length, of) : undefined;
  return size && "problem" in size ? size.problem : undefined;
};

/** “0.024 s” where times are in ms: another power of ten of the same unit, where that can be meant. */
const otherPower: FigureSlip = (of, token) => {
  const { physical, units, least, most }: QuantityKind = quantities[of];
  const written = isToken(token, "Quantity") ? readWritten(token.image, token.startOffset) : undefined;
  const [from, to] = [unitOf(written?.unit ?? ""), unitOf(units[0] ?? "")];
  if (!written || !from || !to || from.physical !== physical || units.includes(written.unit)) return undefined;
  const value = written.number * from.factor;
  if (value < least || value > most) return undefined;
  const sign = written.sign === "=" ? "" : written.sign;
  const text = `${sign}${Number((value / to.factor).toPrecision(12))} ${to.symbol}`;
  return problemAt("wrong-unit", `“${token.image}” is written ${text}.`, token, [replaceFix(token, text)]);
};

const figureSlips: readonly FigureSlip[] = [
  openReading,
  capacityInFrame,
  withoutUnit,
  resistorMark,
  unknownUnit,
  apparentPower,
  sizeInMillimetres,
  otherPower,
];

/** What no rated current is, and many a breaking capacity. */
export const capacityInAmps = /^(\d+[05]00)(?:[ \t]*A)?$/;

/** A list of more words than these is read no faster than the reference. */
const mostListed = 12;

/** A word that is none of a closed list. */
export function choiceProblem(choices: Choices, help: string, token: IToken): Problem {
  const words = Object.keys(choices);
  const near = suggestionFor(token.image, words);
  // What any other equipment is.
  const rest = words.includes("appliance") ? "; what has no word of its own is an appliance" : "";
  const shown =
    words.length > mostListed
      ? `one of ${words.length} words, such as ${listed(likest(token.image, words), "or")}${rest}`
      : listed(words, "or");
  return problemAt(
    "wrong-argument",
    `“${token.image}” does not state ${help}: ${near ? `did you mean “${near}”?` : `it is ${shown}.`}`,
    token,
    near ? [replaceFix(token, near)] : [],
  );
}

/** The sign for an endless reading, which says nothing of the instrument's range. */
export const endlessProblem = (token: IToken, unit = "MΩ"): Problem =>
  problemAt(
    "off-scale-sign",
    `“${token.image.trim()}” loses the range. Write > and the top of the instrument's range, such as >999 ${unit}.`,
    token,
  );

/** What is said of a conductor that no current flows in. */
const openWords = /^(?:open|open-circuit|infinite|infinity|broken)$/i;

/** From one token to the end of another. */
export const spanOf = (first: IToken, last = first): Span => ({ start: first.startOffset, end: endOf(last) });

/** Another text in a place. */
export const writeFix = (text: string, { start, end }: Span): Fix => ({
  title: `Write ${text}`,
  edits: [{ start, end, text }],
  safe: false,
});

export const replaceFix = (token: IToken, text: string): Fix => writeFix(text, spanOf(token));

/** What is in a place is taken away. */
export const removeFix = (what: string, { start, end }: Span): Fix => ({
  title: `Remove ${what}`,
  edits: [{ start, end, text: "" }],
  safe: false,
});

/** Some tokens of a line, and what is written for them. */
export function writtenSo(
  { tokens, at }: LineBeingRead,
  text: string,
  message: string,
  first: IToken,
  last = first,
): Slip {
  const span = spanOf(first, last);
  const problem = { ...problemAt("wrong-argument", message, first, [writeFix(text, span)]), ...span };
  return { problem, upTo: tokens.indexOf(last, at) + 1 };
}
