import { ruleAlone } from "../../tables/source.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

const linesOpened = { "single-pole": 1, "double-pole": 1, "three-pole": 3, "four-pole": 3 } as const;

export default wayRule({
  id: "coordination/device-poles",
  severity: "warning",
  since: "0.1",
  title: "A device does not open every line of its circuit.",
  why: "A line that stays connected keeps a three-phase motor live and running on what is left, and whoever switched off believes that all is dead.",
  clauses: ["431.1.1"],
  examples: [
    {
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 single-pole 10 kA
                               ^^^^^^^^^^^
  phase        three
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 three-pole 10 kA
  phase        three
}`,
    },
  ],
  check(study, report) {
    const fact = study.device?.fact;
    const poles = fact?.args.poles;
    // Fuses are single: each opens its own line, and a motor has a relay against the loss of one.
    const breaker = study.device?.family?.endsWith("breaker");
    if (!fact || !poles || !breaker || !study.threePhase || linesOpened[poles.value] === 3) return;
    report(valueSpot(fact, poles), {
      message: `A ${poles.value} device cannot open the three lines of way ${study.way.id}: fit a three-pole or four-pole one.`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 431.1.1", standing: "memory" }),
    });
  },
});
