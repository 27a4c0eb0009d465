/** A figure with a unit that is none: `21 mS`, `0.47 C`. */
import { endOf, isToken } from "../../grammar/lexer.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { says } from "./row-shape.ts";

export function strangeUnit(line: LineBeingRead, of: QuantityName): Slip | undefined {
  const number = line.tokens[line.at];
  const unit = line.tokens[line.at + 1];
  if (!number || !unit || !isToken(number, "Number") || !isToken(unit, "Word")) return undefined;
  const free = line.free();
  const elsewhere = free.some((slot) => slot[1].label === unit.image || says(slot, unit));
  const names = free.some(([, { accepts }]) => accepts.kind === "text" || accepts.kind === "ref");
  if (elsewhere || (names && !looksLikeUnit(unit.image))) return undefined;
  const span = { start: number.startOffset, end: endOf(unit) };
  const { what, units } = quantities[of];
  const fixes = units.map((one) => {
    const text = `${number.image} ${one}`;
    return { title: `Write ${text}`, edits: [{ ...span, text }], safe: false };
  });
  const message = `“${unit.image}” is not a unit here: ${what} is written in ${units.join(" or ")}.`;
  return { problem: { check: "wrong-unit", message, ...span, fixes }, upTo: line.at + 2 };
}

/** A unit in other capitals, or with a letter that is not its own: mS, MA, KOHM. */
const looksLikeUnit = (image: string): boolean => image.length <= 4;
