/** Everything that is compared with the readings of a circuit: faults of the circuit, and slips of the test or the pen. */
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import { costBeside } from "./evidence.ts";
import { circuitFaults, pointFaults } from "./faults.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Predictions } from "./predictions.ts";
import type { Sheet } from "./sheet.ts";
import { slips } from "./slips.ts";

/** Every hypothesis that has a bearing on the readings there are. The first is the sound circuit. */
export function hypothesesOf(predictions: Predictions): Hypothesis[] {
  const tried = [...circuitFaults(predictions), ...pointFaults(predictions), ...slips(predictions)];
  return [sound(predictions), ...tried.map((hypothesis) => weighed(predictions.sheet, hypothesis))];
}

/** With what it costs by experience, and beside what the other tests show. */
function weighed(sheet: Sheet, hypothesis: Hypothesis): Hypothesis {
  const cost = costBeside(sheet, hypothesis) + (isRarer(sheet, hypothesis) ? diagnosisPractice.rarer.value : 0);
  return cost === 0 ? hypothesis : { ...hypothesis, penalty: (hypothesis.penalty ?? 0) + cost };
}

/**
 * What reads the same as something a tester meets far more often. Two conductors crossed at a point read as one that is
 * off its terminal, or as a point of another circuit; of a radial whose far end reads open the protective conductor is
 * looked at first, for the line shows in use.
 */
const isRarer = ({ circuit, readings }: Sheet, { kind }: Hypothesis): boolean =>
  kind.startsWith("swapped-") ||
  (!circuit.closed &&
    (kind === "open-line" || kind === "pin-line") &&
    readings.every(({ measurement }) => measurement.kind !== "round" || measurement.other === "cpc"));

const sound = ({ sound: values }: Predictions): Hypothesis => ({
  kind: "sound",
  where: "",
  predict: () => values,
  state: () => ({ faults: [] }),
  say: () => "The circuit is sound and the readings agree.",
});
