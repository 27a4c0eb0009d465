import { signatoryOf } from "../../circuit/signatories.ts";
import { workOf } from "../../circuit/supply.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "live/before-installation",
  severity: "warning",
  since: "0.1",
  title: "A live test is dated before the work was finished.",
  why: "What is changed after a test is untested. A dead test during the work is good practice; a live test before it is finished has a wrong date, or has to be made again.",
  clauses: ["641.1", "643.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  installed    by "D.O." 2026-03-12
  live 2026-03-05 {
       ^^^^^^^^^^
    Zs           0.62 Ω
  }
}`,
      good: `way 1 radial "Water heater" {
  installed    by "D.O." 2026-02-27
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { way, facts, live, context } = study;
    if (workOf(study) === "existing") return;
    const installed = signatoryOf("installed", facts, context);
    const finished = installed?.args.on?.value;
    if (!installed || finished === undefined) return;
    const latest = facts.all("live").find((fact) => fact === live?.header);
    const on = latest?.args.on;
    if (!latest || !on || on.value >= finished) return;
    report(valueSpot(latest, on), {
      message: `Way ${way.id} was live tested on ${on.value}, before the work was finished on ${finished}. Which date is right?`,
      related: [{ spot: factSpot(installed), message: `Work finished on ${finished}.` }],
    });
  },
});
