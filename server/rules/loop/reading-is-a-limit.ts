import { rcdName } from "../../circuit/describe.ts";
import { rcdLimitAs } from "../../circuit/stated-limit.ts";
import { exactReading } from "../../circuit/supply.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/reading-is-a-limit",
  severity: "warning",
  since: "0.1",
  title: "A limit is recorded in place of the reading.",
  why: "A record of 1667 Ω shows that the loop was not measured. The limit belongs to max-Zs.",
  clauses: ["411.5.3", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested", supply: "earthing TT\nIpf 1.2 kA" },
      bad: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           1667 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           84 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const Zs = exactReading(study.Zs);
    const likeness = Zs && rcdLimitAs(study, Zs.value);
    if (!Zs || !likeness) return;
    const rcd = study.rcds[0];
    report(factSpot(Zs.fact), {
      message: `${likeness}, not a reading. What did the meter show?`,
      value: amount(Zs.value, "Ω"),
      related: rcd ? [{ spot: factSpot(rcd.fact), message: `RCD whose limit it is: ${rcdName(rcd)}.` }] : [],
    });
  },
});
