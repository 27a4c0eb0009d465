import { reducedTestVoltage } from "../../calc/insulation.ts";
import { volts } from "../../calc/result.ts";
import { isOutsideWork, workOf } from "../../circuit/supply.ts";
import { boardInsulation, insulationOf } from "../../readings/insulation.ts";
import { quotedIn } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/not-tested-with-equipment",
  severity: "warning",
  since: "0.1",
  title: "A circuit was not tested again once its equipment was connected.",
  why: "Insulation is tested with delicate equipment disconnected, and what is pinched when it is connected again is seen by no test before that. Since 2022 the circuit is then tested once more, live conductors together to earth, at 250 V.",
  opens: true,
  clauses: ["643.3.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Smoke alarms" {
  serves       alarms
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ "Alarms taken off their bases"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Smoke alarms" {
  serves       alarms
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 280 MΩ  N-E 290 MΩ "Alarms taken off their bases"
    insulation   250 V  L-E 280 MΩ joined "Alarms back on their bases"
  }
}`,
    },
  ],
  check(study, report) {
    const { edition } = study.context;
    const test = insulationOf(study);
    // Amendment 2 asked for it, of new work.
    if (!test || study.isSpare || !edition?.typeAcRestricted || workOf(study) !== "new" || isOutsideWork(study)) return;
    if (!test.facts.some(({ args }) => args.why)) return;
    const reduced = reducedTestVoltage();
    const disconnected = test.facts.find(({ args }) => args.why && !args.joined && args.voltage.value > reduced.value);
    const again = [...test.facts, ...(boardInsulation(study.context)?.facts ?? [])].some(
      ({ args }) => args.voltage.value <= reduced.value,
    );
    if (!disconnected || again) return;
    report(factSpot(disconnected), {
      message: `Equipment was disconnected for this test: once it is back, test live conductors together to earth at ${volts(reduced.value)}, and record it.`,
      source: quotedIn("643.3.3"),
    });
  },
});
