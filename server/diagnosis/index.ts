/** What readings that disagree mean: explanations in order, and the test that distinguishes the leading two. */
import { soundReading, standings } from "../calc/sound-readings.ts";
import { finished, type Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { type NextTest, nextTest } from "./discriminate.ts";
import { evidenceWords } from "./evidence.ts";
import { isThinned } from "./faults.ts";
import { type Fitted, fitScale, isFit, type Scale, scaleOf } from "./fit.ts";
import type { FittedHypothesis, Kind } from "./fitted.ts";
import { mostPoints } from "./most-points.ts";
import { Predictions } from "./predictions.ts";
import { rank, rankSingles } from "./rank.ts";
import type { Sheet } from "./sheet.ts";

interface PredictedReading {
  readonly reading: string;
  /** By the explanation, Ω. */
  readonly predicted: number;
  /** By the same circuit without the fault or slip. */
  readonly sound: number;
}

/** A leg of cable by its two ends, or a point, which then is both. */
export interface FaultPlace {
  readonly from: string;
  readonly to: string;
}

export interface Explanation {
  /** The kind of fault or slip. */
  readonly id: string;
  readonly sentence: string;
  readonly parameter?: {
    readonly name: string;
    readonly value: number;
    readonly unit: "Ω" | "m" | "";
  };
  /** Squared deviations and what the fitted numbers cost; less is better. */
  readonly score: number;
  readonly weight: number;
  /** Whether it explains all the readings within the accuracy of the meter. */
  readonly fits: boolean;
  /** Whether the readings cannot tell it from the first. */
  readonly alike: boolean;
  /** Where on the cable it would be, each place it could be at; none where it is a slip in testing. */
  readonly where: readonly FaultPlace[];
  readonly predicted: readonly PredictedReading[];
}

export interface Diagnosis {
  /** The readings are such as a sound circuit gives; there is nothing to explain. */
  readonly fits: boolean;
  readonly explanations: readonly Explanation[];
  /** The likeliest is shown by how the points differ, however little each reading is out. */
  readonly isPattern?: true;
  readonly nextTest?: NextTest;
  /** Said where the readings do not decide, or nothing explains them. */
  readonly note?: string;
}

const practice = diagnosisPractice;

/** Shares of its expected resistance that a sound protective conductor may differ by, besides none. */
const cpcTried = [0, 0.5, -0.5, 1, -1].map((part) => 1 + part * practice.cpcShare.value);

/** Whether a sound circuit gives these readings. Quick: formulas only, no network is solved. */
export function isSound(sheet: Sheet): boolean {
  if (sheet.readings.length === 0) return true;
  const scale = scaleOf(sheet);
  for (const fitted of asSound(sheet, scale)) if (isFit(scale, fitted)) return true;
  return false;
}

/** The readings beside those of sound circuits, whose protective conductor may differ a little, the likeliest first. */
function* asSound({ circuit, readings }: Sheet, scale: Scale): Generator<Fitted> {
  const places = standings(circuit);
  for (const share of cpcTried) {
    const perMetre = { ...circuit.perMetre, cpc: circuit.perMetre.cpc * share };
    const values = readings.map(({ measurement }) =>
      soundReading({ closed: circuit.closed, perMetre }, places, measurement),
    );
    yield fitScale(scale, values);
  }
}

const leastCost = (fits: readonly Fitted[]): number => Math.min(...fits.map(({ cost }) => cost));

/**
 * Readings that are each such as a sound circuit gives, and together follow what one fault makes of several of them: a
 * meter that is out reads high or low throughout, and does not single out some points in both rounds.
 */
export function diagnosePattern(sheet: Sheet): Diagnosis | undefined {
  const { circuit } = sheet;
  if (!circuit.closed || circuit.places.length > mostPoints.patterned) return undefined;
  for (const { cost } of asSound(sheet, scaleOf(sheet))) if (cost < practice.patternLeast.value) return undefined;
  const predictions = new Predictions(sheet);
  const diagnosis = finished(diagnosisOf(predictions, finished(rankSingles(predictions))));
  return diagnosis.isPattern ? diagnosis : undefined;
}

/** What concerns the ring as a whole, and shows by how its points differ. */
const patterned = /^(bridge|same-leg)/;

/** Whether the likeliest explanation stands so far before a sound circuit and a meter that is out that neither is left. */
function isPattern(sheet: Sheet, kinds: readonly Kind[]): boolean {
  const first = kinds.find(({ kind }) => kind !== "sound");
  if (!first?.fits || !patterned.test(first.kind)) return false;
  const meter = kinds
    .filter(({ kind }) => kind.startsWith("leads"))
    .flatMap(({ members }) => members.map(({ fitted }) => fitted));
  // Where nothing is fitted, an explanation has cost nothing yet.
  const { pattern, fittedNumber } = practice;
  const least = pattern.value + (first.best.hypothesis.range ? 0 : 2 * fittedNumber.value);
  return leastCost([...asSound(sheet, scaleOf(sheet)), ...meter]) - first.score > least;
}

/** How far each reading lies from what the sound circuit that is nearest to them all would give, Ω. */
export function departures(sheet: Sheet): readonly number[] {
  const places = standings(sheet.circuit);
  const values = sheet.readings.map(({ measurement }) => soundReading(sheet.circuit, places, measurement));
  const { predicted } = fitScale(scaleOf(sheet), values);
  return sheet.readings.map(({ value, open }, at) => {
    const expected = predicted[at] ?? value;
    return open && expected < value ? Number.POSITIVE_INFINITY : open ? 0 : value - expected;
  });
}

const mostShown = 6;

export const diagnose = (sheet: Sheet): Diagnosis => finished(diagnosing(sheet));

/** The same, a millisecond or so at a time. */
export function* diagnosing(sheet: Sheet): Steps<Diagnosis> {
  if (isSound(sheet)) return { fits: true, explanations: [] };
  if (sheet.circuit.places.length > mostPoints.diagnosed)
    return { fits: false, explanations: [], note: "The circuit has too many points for a diagnosis: divide it." };
  const predictions = new Predictions(sheet);
  yield;
  const kinds = yield* rank(predictions);
  yield;
  return yield* diagnosisOf(predictions, kinds);
}

function* diagnosisOf(predictions: Predictions, ranked: readonly Kind[]): Steps<Diagnosis> {
  const { sheet } = predictions;
  const kinds = ranked.filter(({ kind }) => kind !== "sound");
  const [first] = kinds;
  if (!first) return { fits: false, explanations: [] };
  const shown = kinds.filter((kind) => kind.weight >= practice.leastWeight.value).slice(0, mostShown);
  // Between two explanations that do not hold, no test is worth the walk.
  const next = first.fits ? yield* nextTest(sheet, kinds) : undefined;
  const note = noteOf(sheet, kinds, next);
  return {
    fits: false,
    explanations: (shown.length > 0 ? shown : [first]).map((kind) => explanationOf(predictions, kind, first)),
    ...(isPattern(sheet, ranked) ? { isPattern: true } : {}),
    ...(next ? { nextTest: next } : {}),
    ...(note ? { note } : {}),
  };
}

/** Explanations as likely as each other, or of which the less likely accounts for the readings at least as well. */
const isAlike = (kind: Kind, first: Kind): boolean =>
  kind.score < first.score + practice.alikeScore.value ||
  (kind.weight >= practice.leastWeight.value && kind.best.fitted.cost <= first.best.fitted.cost);

function explanationOf({ sheet, sound }: Predictions, kind: Kind, first: Kind): Explanation {
  const { best, score, weight, fits } = kind;
  const { parameter, stretch } = best.hypothesis;
  const scale = stretch === "any" ? 1 : best.fitted.scale;
  return {
    id: kind.kind.replace(/:.*/, ""),
    sentence: `${sentenceOf(kind)}${kind === first ? evidenceWords(sheet, best.hypothesis.state(best.size).faults) : ""}`,
    ...(parameter
      ? {
          parameter: {
            ...parameter,
            value: stretch === "any" ? best.fitted.scale : best.size,
          },
        }
      : {}),
    score,
    weight,
    fits,
    alike: isAlike(kind, first),
    where: [best, ...(best.hypothesis.where === "" ? [] : kind.alike)]
      .slice(0, placesNamed)
      .flatMap((one) => placesOf(sheet.circuit, one)),
    predicted: sheet.readings.map(({ name }, at) => ({
      reading: name,
      predicted: best.fitted.predicted[at] ?? 0,
      sound: scale * (sound[at] ?? 0),
    })),
  };
}

const placesNamed = 2;

function placesOf({ legs }: Sheet["circuit"], { hypothesis, size }: FittedHypothesis): FaultPlace[] {
  return hypothesis.state(size).faults.flatMap((fault): FaultPlace[] => {
    if ("leg" in fault)
      return legs[fault.leg] ? [{ from: legs[fault.leg]?.from ?? "", to: legs[fault.leg]?.to ?? "" }] : [];
    return "place" in fault ? [{ from: fault.place, to: fault.place }] : [{ from: fault.from, to: fault.to }];
  });
}

function sentenceOf({ best, alike }: Kind): string {
  const said = saidOf(best);
  const { where } = best.hypothesis;
  if (where === "") return said;
  if (alike.length > placesNamed) return `${said} ${where}, or elsewhere: the readings do not show where.`;
  const places = [where, ...alike.map(({ hypothesis }) => hypothesis.where)];
  // An open leg and one in the wrong terminal read the same.
  const terminal =
    best.hypothesis.kind.startsWith("open-") && places.some((one) => one.includes("the board"))
      ? " It may only be in the wrong terminal there."
      : "";
  return `${said} ${places.join(", or ")}.${terminal}`;
}

const saidOf = ({ hypothesis, size, fitted }: FittedHypothesis): string => hypothesis.say(size, fitted.scale);

function noteOf({ circuit }: Sheet, kinds: readonly Kind[], next: NextTest | undefined): string | undefined {
  const [first, second] = kinds;
  const parts: string[] = [];
  if (!first?.fits)
    parts.push(
      "Nothing that was tried accounts for all the readings; the nearest are named. Null the leads and read again before looking further.",
    );
  else if (second && isAlike(second, first))
    parts.push(
      next && next.telling > 0
        ? "These readings alone cannot tell the leading explanations apart."
        : "Neither these readings nor one more of resistance tell the leading explanations apart.",
    );
  if (circuit.places.length > mostPoints.inPairs)
    parts.push("Two faults at once were not tried: the circuit has too many points.");
  else if (isThinned(circuit)) parts.push("A path across the ring was tried between some of its many points only.");
  if (!circuit.drawn) parts.push("The points were taken as evenly spaced; run lines would make this surer.");
  return parts.length > 0 ? parts.join(" ") : undefined;
}
