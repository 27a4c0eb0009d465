import { ohms } from "../../calc/result.ts";
import { r2BelowLoop } from "../../readings/r2.ts";
import { combine } from "../../tables/source.ts";
import { relatedFact } from "../common/dead-words.ts";
import { lineAfter } from "../common/writing.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/r2-against-loop",
  severity: "warning",
  since: "0.1",
  title: "R2 is far below its share of what Zs leaves for the circuit.",
  why: "Zs less the impedance of the board is R1+R2, and the sizes of the cable give the share of R2 in it. A much lower R2 may have been read through the appliance and its pipework: the conductor itself is then not proved continuous.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Hot press" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    R2           0.02 Ω
                 ^^^^^^
  }
  live 2026-03-05 {
    Zs           0.71 Ω
  }
}`,
      good: `way 1 radial "Hot press" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    R2           0.25 Ω
  }
  live 2026-03-05 {
    Zs           0.71 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const found = r2BelowLoop(study);
    const { cable } = study;
    if (!found || !cable) return;
    const { R2, own, Zs, board, expected, tolerance } = found;
    report(valueSpot(own, R2), {
      message: `R2 ${ohms(R2.value)} is far below its ${ohms(expected.value)} share of Zs: was it read through pipework? Disconnect the far end and repeat.`,
      value: amount(R2.value, "Ω"),
      limit: amountOf(expected),
      least: true,
      steps: [...expected.steps, ...tolerance.steps],
      source: combine(expected.source, tolerance.source),
      related: [
        relatedFact(Zs.fact, `Zs ${ohms(Zs.value)}.`),
        relatedFact(board.fact, `${board.name} ${ohms(board.value)}.`),
      ],
      fixes: [lineAfter(cable.fact, 'parallel-path "…"', "Record a parallel path")],
    });
  },
});
