import { electrodeAdvice } from "../../calc/rcd-loop-limit.ts";
import { ohms } from "../../calc/result.ts";
import type { ElectrodeStudy } from "../../readings/electrode.ts";
import type { Uncertainty } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { ofElectrodes } from "../common/electrodes.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { amount, amountOf, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "loop/electrode-unstable",
  severity: "information",
  since: "0.1",
  title: "The earth electrode resistance may not remain stable.",
  why: "Above about 200 Ω the resistance of an electrode changes much when the ground dries or freezes. A longer rod or a second one makes it stable.",
  clauses: ["411.5.3"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod 260 Ω
                     ^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TT
    electrode    rod 84 Ω
  }
}`,
    },
  ],
  ...ofElectrodes(checkElectrode),
});

function checkElectrode({ fact, reading, weakest }: ElectrodeStudy, report: Reporter, meter?: Uncertainty): void {
  const advice = electrodeAdvice();
  if (reading.sign === "<" || reading.value <= advice.value) return;
  // An electrode that is too high for its RCD is reported as that.
  if (weakest && reading.value > weakest.limit.value) return;
  report(valueSpot(fact, reading), {
    message: `An electrode of ${shown(reading)} may not remain stable; up to ${ohms(advice.value)} is advised: consider a longer rod or a second one.${withinUncertainty(meter, reading.value - advice.value)}`,
    value: amount(reading.value, "Ω"),
    limit: amountOf(advice),
    steps: [...advice.steps, ...uncertaintySteps(meter)],
    source: advice.source,
  });
}
