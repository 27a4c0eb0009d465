/** Everything that is compared with the readings of a circuit: faults of the circuit, and slips of the test or the pen. */
import { circuitFaults, pointFaults } from "./faults.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { Predictions } from "./predictions.ts";
import { slips } from "./slips.ts";

/** Every hypothesis that has a bearing on the readings there are. The first is the sound circuit. */
export function hypothesesOf(predictions: Predictions): Hypothesis[] {
  return [sound(predictions), ...circuitFaults(predictions), ...pointFaults(predictions), ...slips(predictions)];
}

const sound = ({ sound: values }: Predictions): Hypothesis => ({
  kind: "sound",
  where: "",
  predict: () => values,
  state: () => ({ faults: [] }),
  say: () => "The circuit is sound and the readings agree.",
});
