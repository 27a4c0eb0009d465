import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms } from "../../calc/result.ts";
import { exactReading } from "../../circuit/supply.ts";
import { readOnLines } from "../../readings/lines.ts";
import { loopPoints } from "../../readings/loop-points.ts";
import { capital } from "../../text/words.ts";
import { shown } from "../common/dead-words.ts";
import { misread } from "../common/writing.ts";
import { amount, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/highest-not-recorded",
  severity: "warning",
  since: "0.1",
  title: "A point reads a higher Zs than the one recorded for the circuit.",
  why: "The circuit is judged by its worst point, so its Zs is the highest that was read.",
  clauses: ["411.4.4", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    Zs           0.48 Ω
                 ^^^^^^
    at S2        Zs 0.66 Ω
  }
}`,
      good: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    Zs           0.66 Ω
    at S2        Zs 0.66 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.48 Ω L1 0.48 Ω L2 0.66 Ω L3 0.47 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.66 Ω L1 0.48 Ω L2 0.66 Ω L3 0.47 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { Zs } = study;
    const recorded = exactReading(Zs);
    const lines = readOnLines(Zs?.fact).map(({ name, fact, reading }) => ({ name, fact, Zs: reading }));
    const [highest] = [...loopPoints(study), ...lines].toSorted((a, b) => b.Zs.value - a.Zs.value);
    const allowance = practiceOf("loop-below");
    if (!Zs || !recorded || !highest || !exceeds(highest.Zs.value, recorded.value + allowance.value)) return;
    const written = highest.fact.segment.text.slice(highest.Zs.start, highest.Zs.end);
    report(valueSpot(Zs.fact, Zs.value), {
      message: `${capital(highest.name)} reads ${shown(highest.Zs)}, above the Zs of ${ohms(recorded.value)} recorded for the circuit: record the highest.`,
      value: amount(recorded.value, "Ω"),
      steps: allowance.steps,
      source: allowance.source,
      related: [{ spot: factSpot(highest.fact), message: `${highest.name} reads ${shown(highest.Zs)}.` }],
      fixes: [misread(Zs.fact, Zs.value, written, "Not the highest reading", `Record the highest, ${written}`)],
    });
  },
});
