/** Two faults at once, built from the single ones that explain most. */
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { conductorWords } from "./conductors.ts";
import { conductorsRead } from "./faults.ts";
import type { Scale } from "./fit.ts";
import type { FittedHypothesis } from "./fitted.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Predictions } from "./predictions.ts";
import { twoFaults } from "./two-faults.ts";

const bridgesTried = 4;
const pointsTried = 10;
/** Two faults at once are rarer than one. */
const pairPenalty = diagnosisPractice.alikeScore.value;

export function* pairsOf(
  predictions: Predictions,
  scale: Scale,
  leading: readonly FittedHypothesis[],
  bridgesOnly: boolean,
): Steps<Hypothesis[]> {
  const bridges = leading.filter(({ hypothesis }) => hypothesis.bridge);
  // Only some are tried, yet each could be the one: what is tried must not look the likelier for it.
  const left = Math.max(0, 2 * Math.log(bridges.length / bridgesTried));
  const inside: Hypothesis[] = [];
  for (const { hypothesis } of bridges.slice(0, bridgesTried))
    inside.push(...(yield* breaksInside(predictions, hypothesis, left)));
  if (bridgesOnly) return inside;
  const points = bestByPlace(leading);
  const both = yield* eachInSteps(points, 1, (one, index) =>
    points.slice(index + 1).flatMap((other) => twoPoints(predictions, one, other)),
  );
  return [...inside, ...both.flat(), ...(yield* twoFaults(predictions, scale, leading))];
}

/** Breaks in so many legs are worked out in about a millisecond. */
const legsAtOnce = 2;

/** A break between the ends of a bridge hides: the ends still read through it. */
function* breaksInside(predictions: Predictions, bridged: Hypothesis, penalty: number): Steps<Hypothesis[]> {
  const { circuit } = predictions.sheet;
  const { bridge } = bridged;
  if (!bridge) return [];
  const first = circuit.legs.findIndex(({ main, from }) => main && from === bridge.from);
  const last = circuit.legs.findIndex(({ main, to }) => main && to === bridge.to);
  const changes = (["line", "neutral", "cpc"] as const).map((conductor) =>
    predictions.between(conductor, bridge.from, bridge.to, (size) => size * circuit.perMetre[conductor]),
  );
  const each = yield* eachInSteps(circuit.legs, legsAtOnce, ({ main }, leg) => {
    if (!main || leg < first || leg > last) return [];
    return conductorsRead(predictions).map(
      (conductor): Hypothesis => ({
        ...bridged,
        penalty,
        kind: `bridge-open-${conductor}`,
        predict: predictions.changed([...changes, predictions.ofLeg(conductor, leg, "break")]),
        state: (size) => {
          const { faults } = bridged.state(size);
          return {
            faults: [...faults, { kind: "open", conductors: [conductor], leg }],
          };
        },
        say: (size, scale) => `${bridged.say(size, scale)}, and the ${conductorWords[conductor]} is open inside it,`,
      }),
    );
  });
  return each.flat();
}

/** The best of what only adds to the readings of a point, one for each point and kind. */
function bestByPlace(leading: readonly FittedHypothesis[]): FittedHypothesis[] {
  return leading.filter(({ hypothesis }) => hypothesis.adds && hypothesis.kind !== "leads").slice(0, pointsTried);
}

/** Both sizes by least squares; the first is then fitted with the length, the second held. */
function twoPoints(predictions: Predictions, one: FittedHypothesis, other: FittedHypothesis): Hypothesis[] {
  const [first, second] = [one.hypothesis, other.hypothesis];
  const held = secondSize(predictions, first, second);
  if (held === undefined || held < (second.range?.least ?? 0)) return [];
  const base = second.predict(held);
  const spurs = first.kind === "spur" && second.kind === "spur";
  const faults = (size: number) => [...first.state(size).faults, ...second.state(held).faults];
  return [
    {
      kind: spurs ? "two-spurs" : "two-points",
      where: "",
      predict: (size) => Array.from(base, (value, at) => value + size * (first.adds?.[at] ?? 0)),
      ...(first.range ? { range: first.range } : {}),
      parameter: { name: "first", unit: first.parameter?.unit ?? "Ω" },
      penalty: Math.max(other.score - other.fitted.cost, 0) + pairPenalty,
      state: (size) => ({ faults: faults(size) }),
      say: (size) =>
        `${first.say(size, 1)} ${first.where}. ${second.say(held, 1)} ${second.where}.${
          spurs ? " It may be one spur off the other, or two spurs." : ""
        }`,
    },
  ];
}

/** What the readings of the second ask for once those of the first are allowed for. The other readings give the length. */
function secondSize({ sound, sheet }: Predictions, first: Hypothesis, second: Hypothesis): number | undefined {
  const rows = sheet.readings.flatMap(({ value, open }, at) => {
    const [a, b] = [first.adds?.[at] ?? 0, second.adds?.[at] ?? 0];
    return open ? [] : [{ value, sound: sound[at] ?? 0, a, b }];
  });
  const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((total, row) => total + of(row), 0);
  const clear = (row: (typeof rows)[number]) => (row.a === 0 && row.b === 0 ? 1 : 0);
  const whole = sum((row) => clear(row) * row.sound ** 2);
  const scale = whole > 0 ? sum((row) => clear(row) * row.sound * row.value) / whole : 1;
  const over = (row: (typeof rows)[number]) => row.value / scale - row.sound;
  const [aa, ab, bb] = [sum(({ a }) => a * a), sum(({ a, b }) => a * b), sum(({ b }) => b * b)];
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 1e-12)) return undefined;
  return (aa * sum((row) => row.b * over(row)) - ab * sum((row) => row.a * over(row))) / determinant;
}
