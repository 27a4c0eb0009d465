/** Every hypothesis fitted, those of one kind gathered, and the kinds in order of how well they explain the readings. */
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import {
  coarse,
  type Fitted,
  fitScale,
  isFit,
  priceOf,
  type Range,
  refine,
  type Scale,
  scaleOf,
  withDecimalSlip,
} from "./fit.ts";
import type { FittedHypothesis, Kind } from "./fitted.ts";
import { hypothesesOf } from "./hypotheses.ts";
import type { Hypothesis } from "./hypothesis.ts";
import { mostPoints } from "./most-points.ts";
import { pairsOf } from "./pairs.ts";
import type { Predictions } from "./predictions.ts";
import type { Sheet } from "./sheet.ts";

const practice = diagnosisPractice;

/** How far a coarse fit may stand behind the best and still be worth refining. */
const refineMargin = 60;
/** How far a bridge may stand behind the best and still be tried with a break inside it. */
const bridgeMargin = 20;

/** Every kind of single fault or slip, the likeliest first. */
export function* rankSingles(predictions: Predictions): Steps<Kind[]> {
  const scale = scaleOf(predictions.sheet);
  const hypotheses = yield* hypothesesOf(predictions);
  return gather(scale, yield* fitAll(scale, predictions, hypotheses));
}

export function* rank(predictions: Predictions): Steps<Kind[]> {
  const scale = scaleOf(predictions.sheet);
  const hypotheses = yield* hypothesesOf(predictions);
  const singles = yield* fitAll(scale, predictions, hypotheses);
  yield;
  const kinds = gather(scale, singles);
  const [first] = kinds;
  const bridge = kinds.find(({ kind }) => kind === "bridge");
  const bridged = bridge !== undefined && first !== undefined && bridge.score < first.score + bridgeMargin;
  const tooMany = predictions.sheet.circuit.places.length > mostPoints.inPairs;
  if ((first?.fits && !bridged) || tooMany) return kinds;
  // A single fault does not explain the readings, or a bridge hides a second one: two are tried.
  yield;
  const leading = [...singles].sort(byScore);
  yield;
  const pairs = yield* pairsOf(predictions, scale, leading, first?.fits ?? false);
  return gather(scale, [...singles, ...(yield* fitAll(scale, predictions, pairs))]);
}

/** So many are fitted in about a millisecond. */
const fittedAtOnce = 16;

function* fitAll(scale: Scale, { sheet }: Predictions, hypotheses: readonly Hypothesis[]): Steps<FittedHypothesis[]> {
  const rough = yield* eachInSteps(hypotheses, fittedAtOnce, (hypothesis, place) => ({
    hypothesis,
    judged: fitHypothesis(scale, sheet, hypothesis, place),
  }));
  yield;
  const sized = (hypothesis: Hypothesis, judged: FittedHypothesis): FittedHypothesis =>
    hypothesis.range ? fitSized(scale, hypothesis, hypothesis.range, judged.place) : judged;
  // A coarse size misses a sharp reading by far, and all places of a kind by as much: they are compared among themselves.
  const leaders = new Map(
    [...Map.groupBy(rough, ({ hypothesis }) => hypothesis.kind)].map(([kind, members]) => {
      const first = members.reduce((one, other) => (other.judged.fitted.cost < one.judged.fitted.cost ? other : one));
      const cost = first.judged.fitted.cost;
      return [kind, { cost, refined: sized(first.hypothesis, first.judged).fitted.cost }] as const;
    }),
  );
  const best = Math.min(...[...leaders.values()].map(({ refined }) => refined));
  yield;
  return yield* eachInSteps(rough, fittedAtOnce, ({ hypothesis, judged }) => {
    const { cost, refined } = leaders.get(hypothesis.kind) ?? { cost: 0, refined: 0 };
    const worth = refined < best + refineMargin && judged.fitted.cost < cost + refineMargin;
    return worth ? sized(hypothesis, judged) : judged;
  });
}

function fitHypothesis(scale: Scale, sheet: Sheet, hypothesis: Hypothesis, place: number): FittedHypothesis {
  const { predict, range, stretch, reread } = hypothesis;
  if (reread) return fitReread(scale, sheet, hypothesis, reread, place);
  if (range) {
    const fitted = coarse(scale, predict, range);
    return {
      hypothesis,
      fitted,
      size: fitted.size,
      score: fitted.cost + practice.fittedNumber.value,
      place,
    };
  }
  const fitted = fitScale(scale, predict(0), stretch);
  const price = stretch === "any" ? stretchPrice(scale, hypothesis, fitted) : 0;
  return {
    hypothesis,
    fitted,
    size: 0,
    score: fitted.cost + price + (hypothesis.penalty ?? 0),
    place,
  };
}

/** A slip carries the meter's error with it, so it is judged by the figure before the slip. */
function fitReread(
  scale: Scale,
  sheet: Sheet,
  hypothesis: Hypothesis,
  { at, power }: { readonly at: number; readonly power: number },
  place: number,
): FittedHypothesis {
  const before = withDecimalSlip(scale, sheet, at, power);
  const fitted = fitScale(before, hypothesis.predict(0));
  const predicted = fitted.predicted.slice();
  predicted[at] = (predicted[at] ?? 0) * power;
  const wider = (power * (before.limits[at] ?? 1)) / (scale.limits[at] ?? 1);
  const score = fitted.cost + Math.max(0, 2 * Math.log(wider)) + (hypothesis.penalty ?? 0);
  return { hypothesis, fitted: { ...fitted, predicted }, size: 0, score, place };
}

function fitSized(scale: Scale, hypothesis: Hypothesis, range: Range, place: number): FittedHypothesis {
  const { predict, parameter } = hypothesis;
  const fitted = refine(scale, predict, range, coarse(scale, predict, range));
  const size = parameter?.unit === "Ω" ? fitted.size * fitted.scale : fitted.size;
  return {
    hypothesis,
    fitted,
    size,
    score: fitted.cost + fitted.price + (hypothesis.penalty ?? 0),
    place,
  };
}

/** A length that may be anything costs as much as any other number that is fitted. */
function stretchPrice(scale: Scale, { predict }: Hypothesis, fitted: Fitted): number {
  const shape = Array.from(predict(0), (value) => value * fitted.scale);
  const times = (size: number) => shape.map((value) => value * size);
  return priceOf(scale, times, 1, { ...fitted, scale: 1 }, { least: 0.1, most: 10 });
}

/** What reads alike stays in the order it was tried, whatever the last figures of the sums are. */
const byScore = (one: { readonly score: number }, other: { readonly score: number }): number =>
  Math.round(one.score * 1e6) - Math.round(other.score * 1e6);

/** The score of a kind is that of its places together, each as likely as the next. */
function gather(scale: Scale, judged: readonly FittedHypothesis[]): Kind[] {
  const groups = Map.groupBy(judged, ({ hypothesis }) => hypothesis.kind);
  const kinds = [...groups].flatMap(([kind, unsorted]) => {
    const members = unsorted.sort(byScore);
    const [best] = members;
    if (!best) return [];
    const sum = members.reduce((total, { score }) => total + Math.exp((best.score - score) / 2), 0);
    const score = best.score - 2 * Math.log(sum / members.length);
    const alike = members.slice(1).filter((one) => one.score < best.score + practice.alikeScore.value);
    return [{ kind, members, best, alike, score, fits: isFit(scale, best.fitted) }];
  });
  const least = Math.min(...kinds.map(({ score }) => score));
  const total = kinds.reduce((sum, { score }) => sum + Math.exp((least - score) / 2), 0);
  return kinds
    .map((kind) => ({
      ...kind,
      weight: Math.exp((least - kind.score) / 2) / total,
    }))
    .sort(byScore);
}
