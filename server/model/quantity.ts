import { type QuantityKind, type QuantityName, quantities } from "../../grammar/quantities.ts";
import { physicalNames, unitOf } from "../../grammar/units.ts";
import { capital } from "../text/words.ts";
import type { Fix, Problem } from "./problems.ts";
import type { Quantity, Span } from "./values.ts";

const shape = /^([<>]?)[ \t]?([-−]?)(\d+(?:\.\d+)?)\s*(.*)$/;

/** A quantity as it is written, before anything is known of what it should be. */
interface WrittenQuantity extends Span {
  readonly sign: "=" | ">" | "<";
  readonly number: number;
  readonly digits: string;
  readonly unit: string;
}

export function readWritten(image: string, start: number): WrittenQuantity | undefined {
  const match = shape.exec(image);
  if (!match) return undefined;
  const [, bound, minus, digits = "", spelling = ""] = match;
  return {
    sign: bound === ">" || bound === "<" ? bound : "=",
    number: Number(digits) * (minus ? -1 : 1),
    digits,
    unit: unitOf(spelling)?.symbol ?? spelling,
    start,
    end: start + image.length,
  };
}

/** In the base unit of a kind. */
function inBase(number: number, unit: string, kind: QuantityKind): number {
  const factor = (unitOf(unit)?.factor ?? 1) / (unitOf(kind.base)?.factor ?? 1);
  // Decimal powers: dividing by the inverse keeps 18.1 mΩ from becoming 0.018100000000000002 Ω.
  return factor < 1 ? number / Math.round(1 / factor) : number * factor;
}

const decimalsOf = (digits: string): number => (digits.includes(".") ? digits.length - digits.indexOf(".") - 1 : 0);

export type ReadQuantity = { readonly quantity: Quantity } | { readonly problem: Problem };

/** Takes a written quantity for one kind; a unit or magnitude that cannot be meant is a problem with its remedy. */
export function readAs(written: WrittenQuantity, of: QuantityName): ReadQuantity {
  const kind: QuantityKind = quantities[of];
  if (!kind.units.includes(written.unit)) return { problem: wrongUnit(written, kind) };
  const value = inBase(written.number, written.unit, kind);
  const bounded =
    written.sign === ">"
      ? value > kind.most
      : written.sign === "<"
        ? value < kind.least
        : value < kind.least || value > kind.most;
  if (bounded) return { problem: implausible(written, kind) };
  const { sign, unit, start, end, digits } = written;
  return { quantity: { value, sign, unit, decimals: decimalsOf(digits), start, end } };
}

const show = (written: WrittenQuantity, unit = written.unit): string =>
  `${written.sign === "=" ? "" : written.sign}${written.number < 0 ? "-" : ""}${written.digits} ${unit}`;

function wrongUnit(written: WrittenQuantity, kind: QuantityKind): Problem {
  const unit = unitOf(written.unit);
  const usual = kind.units.join(" or ");
  const same = unit?.physical === kind.physical;
  const message =
    unit && !same
      ? `${show(written)} is ${physicalNames[unit.physical]}, but ${kind.what} belongs here, in ${usual}.`
      : `${capital(kind.what)} is written in ${usual}, not ${written.unit}. Which was meant?`;
  return { check: "wrong-unit", message, start: written.start, end: written.end, fixes: unitFixes(written, kind) };
}

function implausible(written: WrittenQuantity, kind: QuantityKind): Problem {
  return {
    check: "implausible",
    message: `${show(written)} cannot be ${kind.what}. Check the unit and the decimal point.`,
    start: written.start,
    end: written.end,
    fixes: unitFixes(written, kind).filter((fix) => !fix.title.endsWith(show(written))),
  };
}

/** Offers the same figure in the units that belong here, and the converted figure where the unit is of the same kind. */
export function unitFixes(written: WrittenQuantity, kind: QuantityKind): Fix[] {
  const plausible = (value: number) => value >= kind.least && value <= kind.most;
  const relabelled = kind.units
    .filter((unit) => unit !== written.unit && plausible(inBase(written.number, unit, kind)))
    .map((unit) => show(written, unit));
  const converted = convertedForm(written, kind);
  const texts = [...new Set([...(converted ? [converted] : []), ...relabelled])];
  return texts.map((text) => ({
    title: `Write ${text}`,
    edits: [{ start: written.start, end: written.end, text }],
    safe: false,
  }));
}

function convertedForm(written: WrittenQuantity, kind: QuantityKind): string | undefined {
  const from = unitOf(written.unit);
  const unit = kind.units[0];
  const to = unit === undefined ? undefined : unitOf(unit);
  if (!from || !to || from.physical !== to.physical || from === to) return undefined;
  const value = Number(((written.number * from.factor) / to.factor).toPrecision(10));
  const inKind = inBase(value, to.symbol, kind);
  if (inKind < kind.least || inKind > kind.most) return undefined;
  return `${written.sign === "=" ? "" : written.sign}${value} ${to.symbol}`;
}
