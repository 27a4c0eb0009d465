/**
 * Two faults at once, or a fault and a slip. Every plausible pair of the leading ones is held against the readings
 * roughly; the best of them have both their sizes fitted by turns. Bounded, whatever the size of the circuit.
 */
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import {
  coarse,
  type Fitted,
  fitScale,
  isFit,
  type Predict,
  priceOf,
  type Range,
  refine,
  rereadOf,
  type Scale,
} from "./fit.ts";
import type { Hypothesis } from "./hypotheses.ts";
import type { Predictions } from "./predictions.ts";
import type { Judged } from "./rank.ts";
import { limitOf } from "./sheet.ts";

/** Places of each kind that are paired; and in all, of those that are paired with what is read at a point. */
const placesTried = 3;
const basesTried = 18;
/** Pairs whose sizes are worth fitting. */
const pairsFitted = 24;
const turns = 3;
/** Kinds of pair that are tried at every two places where none fits as it is. */
const kindsSettled = 4;
/** Two faults at once are rarer than one. */
const pairPenalty = diagnosisPractice.alikeScore.value;

/** Two hypotheses and what the readings are under both, by the size of each. */
interface Pair {
  readonly kind: string;
  readonly one: Judged;
  readonly other: Judged;
  readonly both: (a: number, b: number) => ArrayLike<number>;
  /** The same two at other places. */
  readonly elsewhere: (one: Judged, other: Judged) => Pair | undefined;
}

export function twoFaults(predictions: Predictions, scale: Scale, leading: readonly Judged[]): Hypothesis[] {
  const pairs = [
    ...twoLegs(
      predictions,
      bestOfEachKind(leading, ({ change }) => change !== undefined),
    ),
    ...withOverlays(scale, bestOfEachKind(leading, ({ reread }) => !reread).slice(0, basesTried), leading),
  ];
  const rough = pairs.map((pair) => ({ pair, cost: roughCost(scale, pair) })).sort((a, b) => a.cost - b.cost);
  const kept = rough.slice(0, pairsFitted).map(({ pair }) => fitted(scale, pair));
  const more = settled(
    scale,
    kept,
    rough.map(({ pair }) => pair),
    leading,
  );
  // Only some were fitted, yet each could be the one: what is tried must not look the likelier for it.
  const left = Math.max(0, 2 * Math.log(pairs.length / Math.max(1, kept.length)));
  const both = [...kept, ...more].map((pair) => hypothesisOf(scale, pair, left));
  return [...both, ...withSlips(predictions, scale, leading)];
}

/** The likeliest places of each kind of fault. */
function bestOfEachKind(leading: readonly Judged[], isWanted: (hypothesis: Hypothesis) => boolean): Judged[] {
  const count = new Map<string, number>();
  return leading.filter(({ hypothesis }) => {
    const before = count.get(hypothesis.kind) ?? 0;
    if (before >= placesTried || hypothesis.kind === "sound" || !isWanted(hypothesis)) return false;
    count.set(hypothesis.kind, before + 1);
    return true;
  });
}

/** A break or joint in one leg and one in another, or in another conductor. */
function twoLegs(predictions: Predictions, bases: readonly Judged[]): Pair[] {
  const legs = bases.filter(({ hypothesis }) => hypothesis.change);
  return legs.flatMap((one, index) => legs.slice(index + 1).flatMap((other) => legPair(predictions, one, other) ?? []));
}

/** A break, which has no size, goes before a joint, whose size is then the one that is looked for. */
function legPair(predictions: Predictions, left: Judged, right: Judged): Pair | undefined {
  const [one, other] = left.hypothesis.range && !right.hypothesis.range ? [right, left] : [left, right];
  const [first, second] = [one.hypothesis.change, other.hypothesis.change];
  if (!first || !second) return undefined;
  const same = first.conductor === second.conductor;
  if (same && first.port.from === second.port.from && first.port.to === second.port.to) return undefined;
  let sizes: readonly [number, number] = [0, 0];
  const predict = predictions.changed([
    { ...first, siemens: () => first.siemens(sizes[0]) },
    { ...second, siemens: () => second.siemens(sizes[1]) },
  ]);
  const both = (a: number, b: number) => {
    sizes = [a, b];
    return predict(0);
  };
  const elsewhere = (next: Judged, last: Judged) => legPair(predictions, next, last);
  return { kind: same ? "two-in-one-conductor" : "two-conductors", one, other, both, elsewhere };
}

/** Anything with the cable, and what is read of it besides: a contact, crossed pins, leads that were not nulled. */
function withOverlays(scale: Scale, bases: readonly Judged[], leading: readonly Judged[]): Pair[] {
  const over = leading.filter(({ hypothesis }) => hypothesis.overlay);
  return bases.flatMap((one) =>
    over.flatMap((other) => (isAskedFor(scale, one, other) ? (overlayPair(one, other) ?? []) : [])),
  );
}

function overlayPair(one: Judged, other: Judged): Pair | undefined {
  const { overlay, where, kind } = other.hypothesis;
  const { hypothesis } = one;
  // Two at one point, or twice the same thing, is one of the single explanations under another name.
  if (!overlay || hypothesis === other.hypothesis || (where !== "" && where === hypothesis.where)) return undefined;
  // Those that only add are paired by least squares elsewhere.
  if (hypothesis.adds && other.hypothesis.adds && kind !== "leads") return undefined;
  if (hypothesis.overlay && other.place < one.place) return undefined;
  const name = kind === "leads" ? "leads-and-fault" : hypothesis.overlay ? "two-points" : "cable-and-point";
  let [at, values]: [number, ArrayLike<number>] = [Number.NaN, []];
  let into = new Float64Array(0);
  const both = (a: number, b: number) => {
    if (a !== at) {
      [at, values] = [a, hypothesis.predict(a)];
      into = new Float64Array(values);
    }
    return overlay(values, b, into);
  };
  return { kind: name, one, other, both, elsewhere: overlayPair };
}

/** Whether the first leaves a reading unexplained that the second would change, and the right way. */
function isAskedFor({ values, open, limits }: Scale, { fitted }: Judged, { hypothesis }: Judged): boolean {
  const before = fitted.predicted;
  const after = hypothesis.overlay?.(before, 1) ?? before;
  let asked = false;
  for (let at = 0; at < values.length; at++) {
    if (after[at] === before[at]) continue;
    if (after[at] === Number.POSITIVE_INFINITY && !open[at]) return false;
    const short = (values[at] ?? 0) - (before[at] ?? 0);
    if (open[at] || Math.abs(short) > (limits[at] ?? 0)) asked = true;
  }
  return asked;
}

const rawSize = ({ hypothesis, size, fitted: { scale } }: Judged): number =>
  hypothesis.parameter?.unit === "Ω" ? size / scale : size;

/** With the first as it was found alone, and the second of any size. */
const roughCost = (scale: Scale, { one, other, both }: Pair): number => {
  const a = rawSize(one);
  return costOf(scale, (size) => both(a, size), other.hypothesis.range);
};

const costOf = (scale: Scale, predict: Predict, range: Range | undefined): number =>
  range ? coarse(scale, predict, range).cost : fitScale(scale, predict(0)).cost;

interface Fit {
  readonly pair: Pair;
  readonly a: number;
  readonly b: number;
  readonly best: Fitted;
}

/** Both sizes, each with the other held, by turns. */
function fitted(scale: Scale, pair: Pair, from?: { readonly a: number; readonly b: number }): Fit {
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
function settled(scale: Scale, kept: readonly Fit[], ordered: readonly Pair[], leading: readonly Judged[]): Fit[] {
  if (kept.some(({ best }) => isFit(scale, best))) return [];
  const kinds = new Map<string, Pair>();
  for (const pair of ordered) {
    const key = `${pair.one.hypothesis.kind} ${pair.other.hypothesis.kind}`;
    if (pair.one.hypothesis.change && !kinds.has(key)) kinds.set(key, pair);
  }
  const places = Map.groupBy(leading, ({ hypothesis }) => hypothesis.kind);
  const found: Fit[] = [];
  for (const pair of [...kinds.values()].slice(0, kindsSettled)) {
    const fit = settle(scale, fitted(scale, pair), places);
    found.push(fit);
    if (isFit(scale, fit.best)) break;
  }
  return found;
}

/** Every place of the one with every place of the other: two legs that hide each other are found only together. */
function settle(scale: Scale, fit: Fit, places: ReadonlyMap<string, readonly Judged[]>): Fit {
  const { one, other, elsewhere } = fit.pair;
  const ofOne = placesOf(places, one);
  const ofOther = placesOf(places, other);
  let best: { readonly pair: Pair; readonly cost: number } | undefined;
  for (const first of ofOne)
    for (const second of ofOther) {
      const pair = elsewhere(first, second);
      if (!pair) continue;
      const cost = costOf(scale, (size) => pair.both(fit.a, size), pair.other.hypothesis.range);
      if (!best || cost < best.cost) best = { pair, cost };
    }
  if (!best) return fit;
  const moved = fitted(scale, best.pair, fit);
  return moved.best.cost < fit.best.cost - 1e-9 ? moved : fit;
}

/** A reading at a point shows which point it is; a leg may be any. */
const placesOf = (places: ReadonlyMap<string, readonly Judged[]>, judged: Judged): readonly Judged[] =>
  judged.hypothesis.change ? (places.get(judged.hypothesis.kind) ?? []) : [judged];

/** The first is the one whose size is fitted once more, with the length. */
function hypothesisOf(scale: Scale, { pair, a, b, best }: Fit, left: number): Hypothesis {
  const { kind, one, other, both } = pair;
  const [first, second] = [one.hypothesis, other.hypothesis];
  const price = second.range ? priceOf(scale, (size) => both(a, size), b, best, second.range) : 0;
  const held = second.parameter?.unit === "Ω" ? b * best.scale : b;
  return {
    kind,
    where: "",
    predict: (size) => both(size, b),
    ...(first.range ? { range: first.range } : {}),
    ...(first.parameter ? { parameter: first.parameter } : {}),
    penalty: pairPenalty + price + left + (first.penalty ?? 0),
    state: (size) => ({ ...first.state(size), faults: [...first.state(size).faults, ...second.state(held).faults] }),
    say: (size, by) => `${placed(first, size, by)} ${placed(second, held, by)}`,
  };
}

function sizeOf(scale: Scale, predict: Predict, range: Range | undefined): number | undefined {
  return range && refine(scale, predict, range, coarse(scale, predict, range)).size;
}

/** What one of the two says, with its place. */
function placed({ where, say }: Hypothesis, size: number, scale: number): string {
  const said = say(size, scale);
  return where === "" ? said : `${said} ${where}.`;
}

const slipsTried = 40;
/** How near a figure must come to what is predicted once its decimal point is moved, in limits of accuracy. */
const near = 3;

/** A fault, and a reading with its decimal point out of place. */
function withSlips(predictions: Predictions, scale: Scale, leading: readonly Judged[]): Hypothesis[] {
  const { sheet } = predictions;
  const bases = leading.filter(({ hypothesis: { kind, reread, links } }) => kind !== "sound" && !reread && !links);
  return bases.slice(0, slipsTried).flatMap((base) =>
    sheet.readings.flatMap(({ name, open }, at) => {
      const written = scale.values[at] ?? 0;
      const asked = base.fitted.predicted[at] ?? 0;
      return [10, 100, 0.1, 0.01].flatMap((power): Hypothesis[] => {
        const away = Math.abs(written / power - asked);
        if (open || away > near * limitOf(sheet.accuracy, written / power)) return [];
        const before = rereadOf(scale, sheet, at, power);
        const { hypothesis } = base;
        const size = sizeOf(before, hypothesis.predict, hypothesis.range) ?? 0;
        const values = hypothesis.predict(size);
        const best = fitScale(before, values);
        const price = hypothesis.range ? priceOf(before, hypothesis.predict, size, best, hypothesis.range) : 0;
        const shown = hypothesis.parameter?.unit === "Ω" ? size * best.scale : size;
        return [
          {
            kind: "fault-and-slip",
            where: "",
            predict: () => values,
            reread: { at, power },
            penalty: pairPenalty + price + (hypothesis.penalty ?? 0),
            state: () => hypothesis.state(shown),
            say: (_, by) =>
              `${placed(hypothesis, shown, by)} Besides, ${name} is written ${power > 1 ? `${power} times too high` : `${1 / power} times too low`}.`,
          },
        ];
      });
    }),
  );
}
