/** Holding what a circuit would read against what was read. */
import { standings } from "../calc/sound-readings.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { limitOf, type Sheet } from "./sheet.ts";

const practice = diagnosisPractice;

/** The readings with how far each may be out. */
export interface Scale {
  readonly values: Float64Array;
  readonly open: readonly boolean[];
  /** Accuracy of the meter, and of what is drawn, Ω. */
  readonly limits: Float64Array;
  /** Standard deviation of an error that is anywhere within the limits, Ω. */
  readonly deviations: Float64Array;
  readonly lengthKnown: boolean;
}

export function scaleOf(sheet: Sheet): Scale {
  const { readings, accuracy, circuit } = sheet;
  const values = Float64Array.from(readings, ({ value }) => value);
  const places = standings(circuit);
  const limits = Float64Array.from(
    readings,
    (reading) => limitOf(accuracy, reading.value) + drawingUncertainty(circuit, places, reading.measurement),
  );
  return {
    values,
    open: readings.map(({ open }) => open),
    limits,
    deviations: limits.map((limit) => limit / Math.sqrt(3)),
    lengthKnown: circuit.lengthKnown,
  };
}

/** The readings with one of them as it stood on the meter before its decimal point slipped. */
export function withDecimalSlip(scale: Scale, { accuracy }: Sheet, at: number, power: number): Scale {
  const [values, limits, deviations] = [scale.values.slice(), scale.limits.slice(), scale.deviations.slice()];
  values[at] = (values[at] ?? 0) / power;
  limits[at] = limitOf(accuracy, values[at] ?? 0);
  deviations[at] = (limits[at] ?? 1) / Math.sqrt(3);
  const open = scale.open.with(at, (values[at] ?? 0) >= deadTestPractice.openLeast.value);
  return { ...scale, values, open, limits, deviations };
}

/** What a spur's cable, or a point's unknown place, leaves open, Ω. */
function drawingUncertainty(
  { perMetre, closed, drawn }: Sheet["circuit"],
  { length, of }: ReturnType<typeof standings>,
  measurement: Sheet["readings"][number]["measurement"],
): number {
  if (measurement.kind !== "round") return 0;
  const other = perMetre[measurement.other];
  const branch = (closed ? (of.get(measurement.place)?.branch ?? 0) : 0) * (perMetre.line + other);
  const [first, second] = [length * perMetre.line, length * other];
  const span = (first + second) / 4 - (first * second) / (first + second);
  return branch * deadTestPractice.spurShare.value + (drawn || !closed ? 0 : span / 2);
}

/** What a hypothesis predicts for every reading at the drawn length, by the size of what is fitted. */
export type Predict = (size: number) => ArrayLike<number>;

export interface Fitted {
  /** By how much all the cable is longer than drawn, or warmer. */
  readonly scale: number;
  readonly predicted: Float64Array;
  /** Sum of squared deviations. */
  readonly misfit: number;
  /** The same with what the length's departure costs. */
  readonly cost: number;
  /** The greatest departure, in limits of accuracy. */
  readonly worst: number;
}

/** Cable may be longer or shorter than drawn within the band that is not questioned, or by anything. */
export type LengthTolerance = "usual" | "any";

/** Fits the common factor of all cable, which has a closed answer, and sums up the departures. */
export function fitScale(readings: Scale, shape: ArrayLike<number>, stretch: LengthTolerance = "usual"): Fitted {
  const { values, open, limits, deviations } = readings;
  const scale = factorOf(readings, shape, stretch);
  const predicted = new Float64Array(values.length);
  const most = practice.openDeviations.value;
  let [misfit, worst] = [0, 0];
  for (let at = 0; at < values.length; at++) {
    const value = scale * (shape[at] ?? 0);
    predicted[at] = value;
    const off = departure(value, values[at] ?? 0, open[at] ?? false, deviations[at] ?? 1);
    misfit += Math.min(off, most) ** 2;
    worst = Math.max(worst, off * ((deviations[at] ?? 1) / (limits[at] ?? 1)));
  }
  return { scale, predicted, misfit, cost: misfit + costOfFactor(readings, scale, stretch), worst };
}

/** What such a fit would cost, and nothing else: it is asked for thousands of times. */
function costOf(readings: Scale, shape: ArrayLike<number>): number {
  const { values, open, deviations } = readings;
  const scale = factorOf(readings, shape, "usual");
  const most = practice.openDeviations.value;
  let misfit = 0;
  for (let at = 0; at < values.length; at++) {
    const off = departure(scale * (shape[at] ?? 0), values[at] ?? 0, open[at] ?? false, deviations[at] ?? 1);
    misfit += Math.min(off, most) ** 2;
  }
  return misfit + costOfFactor(readings, scale, "usual");
}

const isHeld = ({ lengthKnown }: Scale, stretch: LengthTolerance): boolean => stretch === "usual" && lengthKnown;

const lengthWeight = 1 / practice.lengthShare.value ** 2;

const costOfFactor = (readings: Scale, scale: number, stretch: LengthTolerance): number =>
  isHeld(readings, stretch) ? lengthWeight * (scale - 1) ** 2 : 0;

function factorOf(readings: Scale, shape: ArrayLike<number>, stretch: LengthTolerance): number {
  const { values, open, deviations } = readings;
  const held = isHeld(readings, stretch);
  let top = held ? lengthWeight : 0;
  let bottom = top;
  for (let at = 0; at < values.length; at++) {
    const [predicted, value, deviation] = [shape[at] ?? 0, values[at] ?? 0, deviations[at] ?? 1];
    if (open[at] || !Number.isFinite(predicted)) continue;
    top += (value * predicted) / deviation ** 2;
    bottom += (predicted * predicted) / deviation ** 2;
  }
  const best = bottom > 0 ? Math.max(top / bottom, 1e-3) : 1;
  const { lowShare, highShare } = deadTestPractice;
  return held ? Math.min(Math.max(best, lowShare.value), highShare.value) : best;
}

function departure(predicted: number, value: number, open: boolean, deviation: number): number {
  // From so much on nobody looks for a joint of just that size.
  if (open && Number.isFinite(predicted) && value >= deadTestPractice.openLeast.value)
    return practice.openDeviations.value;
  if (open) return predicted >= value ? 0 : practice.openDeviations.value;
  return Number.isFinite(predicted) ? Math.abs(value - predicted) / deviation : practice.openDeviations.value;
}

/** Whether departures are such as a sound meter gives: none too great, and not too many of them. */
export function isFit({ values }: Scale, { misfit, worst }: Fitted): boolean {
  const count = values.length;
  const term = 2 / (9 * count);
  const most = count * (1 - term + practice.allReadings.value * Math.sqrt(term)) ** 3;
  return worst <= practice.oneReading.value && misfit <= most;
}

export interface Range {
  readonly least: number;
  readonly most: number;
  /** An offset can be to either side. */
  readonly signed?: boolean;
}

interface Sized extends Fitted {
  readonly size: number;
  /** What fitting the size costs: the more, the more finely it had to be chosen out of all it could be. */
  readonly price: number;
}

const coarseSteps = 9;

/** Coarse search for the size over its range, by equal ratios. */
export function coarse(scale: Scale, predict: Predict, range: Range): Sized {
  const ratio = (range.most / range.least) ** (1 / (coarseSteps - 1));
  const sizes = Array.from({ length: coarseSteps }, (_, step) => range.least * ratio ** step);
  const all = range.signed ? [...sizes, ...sizes.map((size) => -size)] : sizes;
  let best = { size: range.least, cost: Number.POSITIVE_INFINITY };
  for (const size of all) {
    const cost = costOf(scale, predict(size));
    if (cost < best.cost) best = { size, cost };
  }
  return { ...fitScale(scale, predict(best.size)), size: best.size, price: 0 };
}

const golden = (Math.sqrt(5) - 1) / 2;

/** Narrows a coarse size down, and prices it. */
export function refine(scale: Scale, predict: Predict, range: Range, start: Sized): Sized {
  const ratio = (range.most / range.least) ** (1 / (coarseSteps - 1));
  const cost = (log: number) => costOf(scale, predict(Math.sign(start.size) * Math.exp(log)));
  const middle = Math.log(Math.abs(start.size));
  let low = Math.max(Math.log(range.least), middle - Math.log(ratio));
  let high = Math.min(Math.log(range.most), middle + Math.log(ratio));
  let [one, other] = [high - golden * (high - low), low + golden * (high - low)];
  let [costOne, costOther] = [cost(one), cost(other)];
  for (let round = 0; round < 16; round++) {
    if (costOne < costOther) {
      [high, other, costOther] = [other, one, costOne];
      one = high - golden * (high - low);
      costOne = cost(one);
    } else {
      [low, one, costOne] = [one, other, costOther];
      other = low + golden * (high - low);
      costOther = cost(other);
    }
  }
  const size = Math.sign(start.size) * Math.exp((low + high) / 2);
  const fitted = fitScale(scale, predict(size));
  return {
    ...fitted,
    size,
    price: priceOf(scale, predict, size, fitted, range),
  };
}

/** Two numbers of the range are as likely where their ratio to their neighbours is the same. */
export function priceOf(scale: Scale, predict: Predict, size: number, fitted: Fitted, range: Range): number {
  const nudge = 1.01;
  const next = predict(size * nudge);
  let sharpness = 0;
  for (let at = 0; at < fitted.predicted.length; at++) {
    const change = fitted.scale * (next[at] ?? 0) - (fitted.predicted[at] ?? 0);
    if (Number.isFinite(change) && !scale.open[at])
      sharpness += (change / (nudge - 1) / (scale.deviations[at] ?? 1)) ** 2;
  }
  const width = sharpness > 0 ? Math.sqrt((2 * Math.PI) / sharpness) : Number.POSITIVE_INFINITY;
  const whole = Math.log(range.most / range.least) * (range.signed ? 2 : 1);
  return Math.max(practice.fittedNumber.value, 2 * Math.log(whole / width));
}
