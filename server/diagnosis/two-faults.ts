/**
 * Two faults at once, or a fault and a slip. Every plausible pair of the leading ones is compared with the readings
 * roughly; the best of them have both their sizes fitted by turns. Bounded, whatever the size of the circuit.
 */
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import type { Scale } from "./fit.ts";
import type { FittedHypothesis } from "./fitted.ts";
import type { Hypothesis } from "./hypothesis.ts";
import { kindOf, twoLegs, withOverlays } from "./pair.ts";
import { type Fit, fitted, hypothesisOf, roughCost, searchedElsewhere } from "./pair-fit.ts";
import { withSlips } from "./pair-slips.ts";
import type { Predictions } from "./predictions.ts";

/** Places of each kind that are paired; and in all, of those that are paired with what is read at a point. */
const placesTried = 3;
const basesTried = 18;
/** Pairs whose sizes are worth fitting. */
const pairsFitted = 24;
const pairsPolished = 6;
const turnsToPolish = 8;
/** So many are compared with the readings in about a millisecond. */
const pairsAtOnce = 16;

export function* twoFaults(
  predictions: Predictions,
  scale: Scale,
  leading: readonly FittedHypothesis[],
): Steps<Hypothesis[]> {
  const isLeg = ({ change }: Hypothesis) => change !== undefined;
  const sound = leading.find(({ hypothesis }) => hypothesis.kind === "sound");
  // Of two, one at least explains something alone that a sound circuit does not.
  const most = (sound?.fitted.cost ?? Number.POSITIVE_INFINITY) - diagnosisPractice.alikeScore.value;
  const helping = leading.filter(({ fitted: { cost } }) => cost < most);
  const bases = bestOfEachKind(helping, ({ reread }) => !reread).slice(0, basesTried);
  const legs = bestOfEachKind(leading, isLeg);
  const helpful = new Set(helping);
  const hidden = legs.filter((leg) => !bases.includes(leg));
  const leads = leading.filter(({ hypothesis }) => hypothesis.kind === "leads");
  const inLegs = yield* twoLegs(predictions, legs, helpful);
  const beside = yield* withOverlays(scale, bases, leading);
  // What is on every reading hides where a joint lies.
  const hiding = yield* withOverlays(scale, hidden, leads);
  const pairs = [...inLegs, ...beside, ...hiding];
  const unsorted = yield* eachInSteps(pairs, pairsAtOnce, (pair) => ({ pair, cost: roughCost(scale, pair) }));
  const rough = unsorted.sort((a, b) => a.cost - b.cost);
  const first = yield* eachInSteps(rough.slice(0, pairsFitted), 1, ({ pair }) => fitted(scale, pair));
  const kept = yield* refined(scale, first);
  const more = yield* searchedElsewhere(
    scale,
    kept,
    rough.map(({ pair }) => pair),
    leading,
  );
  const found = [...kept, ...more];
  const count = Map.groupBy(found, ({ pair }) => kindOf(pair));
  const both = yield* eachInSteps(found, 1, (fit) => {
    // Only some were fitted, yet each could be the one: what is tried must not look the likelier for it.
    const left = 2 * Math.log(Math.max(1, pairs.length / (count.get(kindOf(fit.pair))?.length ?? 1)));
    return hypothesisOf(scale, fit, left);
  });
  return [...both, ...(yield* withSlips(predictions, scale, leading))];
}

/** The best of them fitted further: two sizes that make up for each other settle slowly. */
function* refined(scale: Scale, fits: readonly Fit[]): Steps<Fit[]> {
  const inOrder = [...fits].sort((one, other) => one.best.cost - other.best.cost);
  return yield* eachInSteps(inOrder, 1, (fit, place) =>
    place < pairsPolished ? fitted(scale, fit.pair, fit, turnsToPolish) : fit,
  );
}

/** The likeliest places of each kind of fault. */
function bestOfEachKind(
  leading: readonly FittedHypothesis[],
  isWanted: (hypothesis: Hypothesis) => boolean,
): FittedHypothesis[] {
  const count = new Map<string, number>();
  return leading.filter(({ hypothesis }) => {
    const before = count.get(hypothesis.kind) ?? 0;
    if (before >= placesTried || hypothesis.kind === "sound" || !isWanted(hypothesis)) return false;
    count.set(hypothesis.kind, before + 1);
    return true;
  });
}
