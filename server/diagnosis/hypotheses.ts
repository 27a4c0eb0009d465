/** Everything that is compared with the readings of a circuit: faults of the circuit, and slips of the test or the pen. */
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { costBeside } from "./evidence.ts";
import { circuitFaults, pointFaults } from "./faults.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Predictions } from "./predictions.ts";
import type { Sheet } from "./sheet.ts";
import { slips } from "./slips.ts";

/** Every hypothesis that has a bearing on the readings there are. The first is the sound circuit. */
export function* hypothesesOf(predictions: Predictions): Steps<Hypothesis[]> {
  const ofCircuit = yield* circuitFaults(predictions);
  const ofPoints = yield* pointFaults(predictions);
  const ofTests = yield* slips(predictions);
  const tried = [...ofCircuit, ...ofPoints, ...ofTests];
  const each = yield* eachInSteps(tried, 200, (hypothesis) => weighed(predictions.sheet, hypothesis));
  return [sound(predictions), ...each];
}

/** With what it costs by experience, and beside what the other tests show. */
function weighed(sheet: Sheet, hypothesis: Hypothesis): Hypothesis {
  const cost = costBeside(sheet, hypothesis) + costByExperience(sheet, hypothesis);
  return cost === 0 ? hypothesis : { ...hypothesis, penalty: (hypothesis.penalty ?? 0) + cost };
}

function costByExperience(sheet: Sheet, hypothesis: Hypothesis): number {
  const { rarer, unnoticed, readTwice } = diagnosisPractice;
  const { kind } = hypothesis;
  if (isRarer(sheet, hypothesis)) return rarer.value;
  // Who finds nothing at any point of a radial looks at the link before writing it down.
  if (!sheet.circuit.closed && kind.startsWith("no-link")) return unnoticed.value;
  const isRepeated = kind === "copied-neutral" || kind === "copied-cpc";
  return isRepeated && !isWrittenAgain(sheet) ? readTwice.value : 0;
}

/**
 * What reads the same as something a tester meets far more often. Two conductors crossed at a point read as one that is
 * off its terminal, or as a point of another circuit; of a radial whose far end reads open the protective conductor is
 * looked at first, for the line shows in use.
 */
function isRarer({ circuit, readings }: Sheet, { kind }: Hypothesis): boolean {
  if (kind.startsWith("swapped-")) return true;
  return (
    !circuit.closed &&
    (kind === "open-line" || kind === "pin-line") &&
    readings.every(({ measurement }) => measurement.kind !== "round" || measurement.other === "cpc")
  );
}

/** Whether line to neutral and line to earth are the same at every point, to the digit: who reads them again is a digit out. */
function isWrittenAgain({ readings }: Sheet): boolean {
  const round = (other: "neutral" | "cpc") =>
    new Map(
      readings.flatMap(({ measurement, value }) =>
        measurement.kind === "round" && measurement.other === other ? [[measurement.place, value] as const] : [],
      ),
    );
  const toEarth = round("cpc");
  return [...round("neutral")].every(([place, value]) => toEarth.get(place) === value);
}

const sound = ({ sound: values }: Predictions): Hypothesis => ({
  kind: "sound",
  where: "",
  predict: () => values,
  state: () => ({ faults: [] }),
  say: () => "The circuit is sound and the readings agree.",
});
