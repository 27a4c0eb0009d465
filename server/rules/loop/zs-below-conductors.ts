import { practiceOf } from "../../calc/practice.ts";
import { metres, ohms, relation } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { bandSource, bandSteps } from "../../readings/dead.ts";
import { interchangedWords, type LoopAgreement, lineAlone, loopAgreement } from "../../readings/loop.ts";
import { lengthRelated } from "../common/dead-words.ts";
import { loopUncertainty } from "../common/loop-uncertainty.ts";
import { beyondTolerance, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, amountOf, factSpot, type Reporter, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-below-conductors",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "Zs is lower than the circuit's own R1+R2.",
  why: "The loop includes those conductors. Bonded metal in parallel explains it; so does a poor contact that shows only at the low voltage of the dead test.",
  clauses: ["411.4.4", "643.2.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  dead 2026-03-04 {
    R1+R2        0.92 Ω
  }
  live 2026-03-05 {
    Zs           0.51 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  dead 2026-03-04 {
    R1+R2        0.42 Ω
  }
  live 2026-03-05 {
    Zs           0.71 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Lathe" {
  device       BS EN 60898 B6 6 kA
  cable        flat-twin  line 1.0 mm²  cpc 1.0 mm²
  length       20 m
  parallel-path "Steel frame"
  live 2026-03-05 {
    Zs           0.10 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Lathe" {
  device       BS EN 60898 B6 6 kA
  cable        flat-twin  line 1.0 mm²  cpc 1.0 mm²
  length       20 m
  parallel-path "Steel frame"
  live 2026-03-05 {
    Zs           0.45 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const found = loopAgreement(study);
    if (found?.verdict === "below-line") return belowLine(study, found, report);
    if (found?.verdict !== "below-conductors" || !found.R1R2) return;
    const { Zs, R1R2 } = found;
    const meter = loopUncertainty(study, { Zs, R1R2 });
    const by = R1R2.value - practiceOf("loop-below").value - Zs.value;
    report(factSpot(Zs.fact), {
      message:
        interchangedWords(study, found) ??
        `Zs ${found.atMost ? "<" : ""}${ohms(Zs.value)} is below the circuit's own R1+R2 ${ohms(R1R2.value)}: record metal in parallel if there is any, or repeat the dead test.${beyondTolerance(meter, by)}`,
      value: amount(Zs.value, "Ω"),
      limit: amount(R1R2.value, "Ω"),
      least: true,
      steps: [relation("Zs ≥ R1+R2", ohms(Zs.value), ohms(R1R2.value)), ...uncertaintySteps(meter)],
      source: practiceOf("loop-below").source,
      related: [{ spot: factSpot(R1R2.fact), message: `R1+R2 ${ohms(R1R2.value)}.` }],
    });
  },
});

/** Where metal in parallel is recorded, what is left for certain is the line. */
function belowLine(study: WayStudy, { Zs, atMost }: LoopAgreement, report: Reporter): void {
  const line = lineAlone(study);
  if (!line || !study.length) return;
  report(factSpot(Zs.fact), {
    message: `Zs ${atMost ? "<" : ""}${ohms(Zs.value)} is below the ${ohms(line.value)} of ${metres(study.length.value)} of its line alone, and no metal in parallel lowers that: read it again at the far point, or correct the length.`,
    value: amount(Zs.value, "Ω"),
    limit: amountOf(line),
    least: true,
    steps: bandSteps(line),
    source: bandSource(line),
    related: lengthRelated(study),
  });
}
