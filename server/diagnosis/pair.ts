/** Two faults at once: which go together, and what the readings are under both. */
import { eachInSteps, type Steps } from "../memo/steps.ts";
import type { Scale } from "./fit.ts";
import type { FittedHypothesis } from "./fitted.ts";
import type { Predictions } from "./predictions.ts";

/** Two hypotheses and what the readings are under both, by the size of each. */
export interface Pair {
  readonly kind: string;
  readonly one: FittedHypothesis;
  readonly other: FittedHypothesis;
  readonly both: (a: number, b: number) => ArrayLike<number>;
  /** The same two at other places. */
  readonly elsewhere: (one: FittedHypothesis, other: FittedHypothesis) => Pair | undefined;
}

/** What two there are, wherever they are. */
export const kindOf = ({ kind, one, other }: Pair): string =>
  `${kind}: ${one.hypothesis.kind}, ${other.hypothesis.kind}`;

/** A break or joint in one leg and one in another, or in another conductor. */
export function* twoLegs(
  predictions: Predictions,
  legs: readonly FittedHypothesis[],
  helpful: ReadonlySet<FittedHypothesis>,
): Steps<Pair[]> {
  const each = yield* eachInSteps(legs, 1, (one, index) =>
    legs
      .slice(index + 1)
      .flatMap((other) => (helpful.has(one) || helpful.has(other) ? (legPair(predictions, one, other) ?? []) : [])),
  );
  return each.flat();
}

/** A break, which has no size, goes before a joint, whose size is then the one that is looked for. */
function legPair(predictions: Predictions, left: FittedHypothesis, right: FittedHypothesis): Pair | undefined {
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
  const elsewhere = (next: FittedHypothesis, last: FittedHypothesis) => legPair(predictions, next, last);
  return { kind: same ? "two-in-one-conductor" : "two-conductors", one, other, both, elsewhere };
}

/** Anything with the cable, and what is read of it besides: a contact, crossed pins, leads that were not nulled. */
export function* withOverlays(
  scale: Scale,
  bases: readonly FittedHypothesis[],
  leading: readonly FittedHypothesis[],
): Steps<Pair[]> {
  const over = leading.filter(({ hypothesis }) => hypothesis.overlay);
  const each = yield* eachInSteps(bases, 1, (one) =>
    over.flatMap((other) => (isAskedFor(scale, one, other) ? (overlayPair(one, other) ?? []) : [])),
  );
  return each.flat();
}

function overlayPair(one: FittedHypothesis, other: FittedHypothesis): Pair | undefined {
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
function isAskedFor(
  { values, open, limits }: Scale,
  { fitted }: FittedHypothesis,
  { hypothesis }: FittedHypothesis,
): boolean {
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
