import { latestRcdTests } from "../../readings/rcd-tests.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/test-without-result",
  severity: "warning",
  since: "0.1",
  title: "The result of an RCD test is not recorded.",
  why: "A test current without a time proves nothing. Write the time that was read, or no-trip where the device did not trip.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x
    ^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    for (const { fact, device } of latestRcdTests(context, studies)) {
      // A name that no RCD has is reported there: it may be the figure.
      if (fact.args.time || fact.args.noTrip || (fact.args.name && !device)) continue;
      report(factSpot(fact), {
        message: "The result of the test is missing: write the trip time, or no-trip if the RCD did not trip.",
      });
    }
  },
});
