/** Sizes and places of two faults at once, fitted by turns. */
import type { Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { coarse, type Fitted, fitScale, isFit, type Predict, priceOf, type Range, refine, type Scale } from "./fit.ts";
import type { FittedHypothesis } from "./fitted.ts";
import type { Hypothesis } from "./hypothesis.ts";
import { kindOf, type Pair } from "./pair.ts";

const turnsTaken = 3;
/** Kinds of pair that are tried at every two places where none fits as it is. */
const kindsSettled = 4;
/** Two faults at once are rarer than one. */
export const pairPenalty = diagnosisPractice.alikeScore.value;

const rawSize = ({ hypothesis, size, fitted: { scale } }: FittedHypothesis): number =>
  hypothesis.parameter?.unit === "Ω" ? size / scale : size;

/** With the first as it was found alone, and the second of any size. */
export const roughCost = (scale: Scale, { one, other, both }: Pair): number => {
  const a = rawSize(one);
  return costOf(scale, (size) => both(a, size), other.hypothesis.range);
};

const costOf = (scale: Scale, predict: Predict, range: Range | undefined): number =>
  range ? coarse(scale, predict, range).cost : fitScale(scale, predict(0)).cost;

export interface Fit {
  readonly pair: Pair;
  readonly a: number;
  readonly b: number;
  readonly best: Fitted;
}

/** Both sizes, each with the other held, by turns. */
export function fitted(
  scale: Scale,
  pair: Pair,
  from?: { readonly a: number; readonly b: number },
  turns = turnsTaken,
): Fit {
  const { one, other, both } = pair;
  const [first, second] = [one.hypothesis.range, other.hypothesis.range];
  let [a, b] = [from?.a ?? rawSize(one), from?.b ?? rawSize(other)];
  for (let turn = 0; turn < turns; turn++) {
    b = sizeOf(scale, (size) => both(a, size), second) ?? b;
    a = sizeOf(scale, (size) => both(size, b), first) ?? a;
    if (!first || !second) break;
  }
  return { pair, a, b, best: fitScale(scale, both(a, b)) };
}

/** Where none fits as it is: the best pairs of different kinds with the two wherever they explain the most. */
export function* searchedElsewhere(
  scale: Scale,
  kept: readonly Fit[],
  ordered: readonly Pair[],
  leading: readonly FittedHypothesis[],
): Steps<Fit[]> {
  if (kept.some(({ best }) => isFit(scale, best))) return [];
  const first = new Map<string, Pair>();
  for (const pair of ordered) if (!first.has(kindOf(pair))) first.set(kindOf(pair), pair);
  // Two that together explain no more than one of them are not looked for any further.
  const worth = [...first.values()].filter((pair) => {
    const alone = Math.min(pair.one.fitted.cost, pair.other.fitted.cost);
    return pair.one.hypothesis.change && roughCost(scale, pair) < alone;
  });
  const places = Map.groupBy(leading, ({ hypothesis }) => hypothesis.kind);
  const found: Fit[] = [];
  for (const pair of worth.slice(0, kindsSettled)) {
    const fit = yield* settle(scale, fitted(scale, pair), places);
    found.push(fit);
    if (isFit(scale, fit.best)) break;
  }
  return found;
}

/** Every place of the one with every place of the other: two legs that hide each other are found only together. */
function* settle(scale: Scale, fit: Fit, places: ReadonlyMap<string, readonly FittedHypothesis[]>): Steps<Fit> {
  const { one, other, elsewhere } = fit.pair;
  const ofOne = trialOrderOf(places, one);
  const ofOther = trialOrderOf(places, other);
  let best: { readonly pair: Pair; readonly cost: number } | undefined;
  for (const first of ofOne) {
    yield;
    for (const second of ofOther) {
      const pair = elsewhere(first, second);
      if (!pair) continue;
      const cost = costOf(scale, (size) => pair.both(fit.a, size), pair.other.hypothesis.range);
      if (!best || cost < best.cost) best = { pair, cost };
    }
  }
  if (!best) return fit;
  const moved = fitted(scale, best.pair, fit);
  return moved.best.cost < fit.best.cost - 1e-9 ? moved : fit;
}

/** The likeliest places of a leg: of every two of them the pair is tried. */
const placesSettled = 30;

/** A reading at a point shows which point it is; a leg may be any. */
const trialOrderOf = (
  places: ReadonlyMap<string, readonly FittedHypothesis[]>,
  judged: FittedHypothesis,
): readonly FittedHypothesis[] =>
  judged.hypothesis.change ? (places.get(judged.hypothesis.kind) ?? []).slice(0, placesSettled) : [judged];

/** The first is the one whose size is fitted once more, with the length. */
export function hypothesisOf(scale: Scale, { pair, a, b, best }: Fit, left: number): Hypothesis {
  const { one, other, both } = pair;
  const [first, second] = [one.hypothesis, other.hypothesis];
  const price = second.range ? priceOf(scale, (size) => both(a, size), b, best, second.range) : 0;
  const held = second.parameter?.unit === "Ω" ? b * best.scale : b;
  return {
    kind: kindOf(pair),
    where: "",
    predict: (size) => both(size, b),
    ...(first.range ? { range: first.range } : {}),
    ...(first.parameter ? { parameter: first.parameter } : {}),
    penalty: pairPenalty + price + left + (first.penalty ?? 0),
    state: (size) => ({ ...first.state(size), faults: [...first.state(size).faults, ...second.state(held).faults] }),
    say: (size, by) => `${placed(first, size, by)} ${placed(second, held, by)}`,
  };
}

export function sizeOf(scale: Scale, predict: Predict, range: Range | undefined): number | undefined {
  return range && refine(scale, predict, range, coarse(scale, predict, range)).size;
}

/** What one of the two says, with its place. */
export function placed({ where, say }: Hypothesis, size: number, scale: number): string {
  const said = say(size, scale);
  return where === "" ? said : `${said} ${where}.`;
}
