/** Figures without the words that say which is which: `ends 0.3 Ω 0.3 Ω 0.5 Ω`. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import { quantities } from "../../grammar/quantities.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import type { Fix } from "./problems.ts";
import { readWritten } from "./quantity.ts";
import { problemAt } from "./refusals.ts";
import { mayBeAbsent, type Slot } from "./row-shape.ts";

export function unlabelled(line: LineBeingRead): Slip | undefined {
  const figures = figuresFrom(line);
  const [first] = figures;
  if (!first) return undefined;
  const places = line.free().filter((slot) => slot[1].label !== undefined && takes(slot, first));
  const plain = line
    .free()
    .some((slot) => slot[1].label === undefined && takes(slot, first) && !isReading(slot, first));
  if (places.length === 0 || plain) return undefined;
  const example = line.row.example.split("\n")[0] ?? "";
  const alike = alikeIn(places) && figures.length === 1 ? `; or ${alikeLabel}, where all read alike` : "";
  const message = hasFigure(line)
    ? `“${line.word.image}” has its figure: that of one line stands behind its name, such as ${places[0]?.[1].label} ${first.image}.`
    : `“${line.word.image}” says of each figure which it is: ${example}${alike}`;
  const problem = problemAt("wrong-argument", message, first, fixesFor(line, places, figures));
  return { problem: { ...problem, end: endOf(figures.at(-1) ?? first) }, upTo: line.at + figures.length };
}

/** `Zs 0.57 Ω 0.55 Ω`: the one that needs no label is there. */
const hasFigure = ({ shape, args }: LineBeingRead): boolean =>
  shape.plain.some(
    ([name, { accepts }]) => accepts.kind === "quantity" && mayBeAbsent(accepts) && args[name] !== undefined,
  );

function figuresFrom({ tokens, at }: LineBeingRead): IToken[] {
  const end = tokens.findIndex((token, index) => index >= at && !isToken(token, "Quantity") && !isBare(token));
  return tokens.slice(at, end < 0 ? undefined : end);
}

/** V that insulation is tested at: any other figure without its unit is what was read. */
const testVoltages: readonly string[] = ["50", "100", "250", "500", "1000", "2500"];

/** `insulation >200`: a test voltage has no sign before it, and is one of few. */
const isReading = ([, { accepts }]: Slot, { image }: IToken): boolean =>
  accepts.kind === "quantity" && accepts.of === "testVoltage" && /^[<>\d]/.test(image) && !testVoltages.includes(image);

/** The label that stands for all the others. */
const alikeLabel = "each";

const alikeIn = (places: readonly Slot[]): boolean => places.some(([, { label }]) => label === alikeLabel);

const isBare = (token: IToken): boolean => isToken(token, "Number");

function takes([, { accepts }]: Slot, token: IToken): boolean {
  if (isBare(token)) return accepts.kind === "quantity";
  const unit = readWritten(token.image, token.startOffset)?.unit;
  if (accepts.kind !== "quantity" || unit === undefined) return false;
  const { units }: { readonly units: readonly string[] } = quantities[accepts.of];
  return units.includes(unit);
}

/** The labels in the order of the example, where there are as many figures as it has, or as must be there. */
function fixesFor({ row }: LineBeingRead, places: readonly Slot[], figures: readonly IToken[]): Fix[] {
  const labels = places.map(([, { label = "" }]) => label);
  const usual = row.example.split(/\s+/).filter((word) => labels.includes(word));
  const needed = places.flatMap(([, { label = "", optional }]) => (optional ? [] : [label]));
  const order = [usual, needed].find((list) => list.length === figures.length);
  if (order) return [labelFix(places, figures, order)];
  // One figure may be any of those that are usually read, or all of them.
  if (figures.length > 1 || !alikeIn(places)) return [];
  return [alikeLabel, ...usual].map((label) => labelFix(places, figures, [label]));
}

function labelFix(places: readonly Slot[], figures: readonly IToken[], order: readonly string[]): Fix {
  const edits = figures.flatMap((figure, index) => {
    const label = order[index] ?? "";
    const { startOffset: start } = figure;
    const unit = isBare(figure) ? unitFor(places, label) : undefined;
    const before = { start, end: start, text: `${label} ` };
    return unit === undefined ? [before] : [before, { start: endOf(figure), end: endOf(figure), text: ` ${unit}` }];
  });
  return { title: `Write ${order.join(", ")}`, edits, safe: false };
}

function unitFor(places: readonly Slot[], label: string): string | undefined {
  const accepts = places.find(([, param]) => param.label === label)?.[1].accepts;
  return accepts?.kind === "quantity" ? quantities[accepts.of].units[0] : undefined;
}
