import { electrodeAdvice } from "../../calc/rcd-loop-limit.ts";
import { ohms } from "../../calc/result.ts";
import type { ElectrodeStudy } from "../../readings/electrode.ts";
import type { Uncertainty } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { ofElectrodes } from "../common/electrodes.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { amount, amountOf, installationRule, type Report, type Reporter, valueSpot } from "../frame/rule.ts";

const ofEach = ofElectrodes(checkElectrode);

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
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    standby      "Diesel set"  Ze 0.40 Ω  electrode 1200 Ω  neutral linked
                                                    ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    standby      "Diesel set"  Ze 0.40 Ω  electrode 84 Ω  neutral linked
  }
}`,
    },
  ],
  check(installation, report) {
    ofEach.check(installation, report);
    for (const { segment, args } of installation.supply?.all("standby") ?? []) {
      const { electrode, what } = args;
      if (!electrode || electrode.value <= electrodeAdvice().value) continue;
      const name = `The electrode of “${what.value}”, ${ohms(electrode.value)},`;
      report({ segment, start: electrode.start, end: electrode.end }, unstable(name, electrode.value));
    }
  },
  checkBoard: ofEach.checkBoard,
});

function checkElectrode({ fact, reading, weakest }: ElectrodeStudy, report: Reporter, meter?: Uncertainty): void {
  const advice = electrodeAdvice();
  if (reading.sign === "<" || reading.value <= advice.value) return;
  // An electrode that is too high for its RCD is reported as that.
  if (weakest && reading.value > weakest.limit.value) return;
  report(valueSpot(fact, reading), unstable(`An electrode of ${shown(reading)}`, reading.value, meter));
}

function unstable(name: string, value: number, meter?: Uncertainty): Report {
  const advice = electrodeAdvice();
  return {
    message: `${name} may not remain stable; up to ${ohms(advice.value)} is advised: consider a longer rod or a second one.${withinUncertainty(meter, value - advice.value)}`,
    value: amount(value, "Ω"),
    limit: amountOf(advice),
    steps: [...advice.steps, ...uncertaintySteps(meter)],
    source: advice.source,
  };
}
