/** A figure with a unit that is none: `21 mS`, `0.47 C`. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { unitOf } from "../../grammar/units.ts";
import { provenances } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Problem } from "./problems.ts";
import { spanOf, writeFix } from "./refusals.ts";
import { says } from "./row-shape.ts";

/** A horse-power, W. */
const horsePower = 745.7;

/**
 * `22kw`, `2 hp`, `5 kva`: a power as it is said, in letters of another case or in horse-power. Nothing where the letters
 * are another unit by their case, as mA and MA are.
 */
export function spokenPower(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const wanted = line.free().some(([, { accepts }]) => accepts.kind === "quantity" && accepts.of === "power");
  const next = line.tokens[line.at + 1];
  const isNumber = isToken(token, "Number");
  const glued = /^(\d+(?:\.\d+)?)([a-z]+)$/iu.exec(token.image);
  const [figure, unit] = isNumber ? [token.image, next?.image ?? ""] : [glued?.[1] ?? "", glued?.[2] ?? ""];
  const watts = powers.get(unit.toLowerCase());
  if (!wanted || watts === undefined || unitOf(unit)) return undefined;
  const kilowatts = Number(((Number(figure) * watts) / 1000).toPrecision(3));
  const text = `${kilowatts} kW`;
  const span = isNumber && next ? spanOf(token, next) : { start: token.startOffset, end: endOf(token) };
  const message = `“${figure} ${unit}” is written in kilowatts: ${text}.`;
  return {
    problem: { check: "wrong-unit", message, ...span, fixes: [writeFix(text, span)] },
    upTo: line.at + (isNumber ? 2 : 1),
  };
}

const powers: ReadonlyMap<string, number> = new Map([
  ["kw", 1000],
  ["kva", 1000],
  ["hp", horsePower],
  ["bhp", horsePower],
]);

export function strangeUnit(line: LineBeingRead, of: QuantityName): Slip | undefined {
  const { token: number } = line;
  const unit = line.tokens[line.at + 1];
  const power = unit ? powerOfTen(number, unit) : undefined;
  if (power) return { problem: power, upTo: line.at + 2 };
  if (!unit || !isToken(number, "Number") || !isToken(unit, "Word")) return undefined;
  // “0.9 calculated”, “25 x5”: what stands behind the figure is another part of its line.
  const isOther = (line.shape.hasReading && Object.hasOwn(provenances, unit.image)) || /^[x×][\d½]/.test(unit.image);
  if (isOther) return undefined;
  const free = line.free();
  const elsewhere = free.some((slot) => slot[1].label === unit.image || says(slot, unit));
  const names = free.some(([, { accepts }]) => accepts.kind === "text" || accepts.kind === "ref");
  if (elsewhere || (names && !looksLikeUnit(unit.image))) return undefined;
  const span = spanOf(number, unit);
  const { what, units } = quantities[of];
  const fixes = units.map((one) => writeFix(`${number.image} ${one}`, span));
  const message = `“${unit.image}” is not a unit here: ${what} is written in ${units.join(" or ")}.`;
  return { problem: { check: "wrong-unit", message, ...span, fixes }, upTo: line.at + 2 };
}

/** A unit in other capitals, or with a letter that is not its own: mS, MA, KOHM. */
const looksLikeUnit = (image: string): boolean => image.length <= 4;

/** `1e3 MΩ`: a figure as a calculator shows it. Very large and very small ones have no figures to be written out. */
function powerOfTen(number: IToken, unit: IToken): Problem | undefined {
  const [, sign = "", figure] = /^([<>]?[ \t]?)(\d+(?:\.\d+)?[eE][+-]?\d+)$/.exec(number.image) ?? [];
  if (figure === undefined || !unitOf(unit.image)) return undefined;
  const value = Number(figure);
  const span = spanOf(number, unit);
  const written = `“${number.image} ${unit.image}”`;
  if (value >= 1e15 || (value < 1e-6 && value !== 0))
    return { check: "number-slip", message: `${written} is a figure that no meter shows.`, ...span, fixes: [] };
  const text = `${sign}${Number(value.toPrecision(15))} ${unit.image}`;
  return {
    check: "number-slip",
    message: `${written} is written out: ${text}.`,
    ...span,
    fixes: [writeFix(text, span)],
  };
}
