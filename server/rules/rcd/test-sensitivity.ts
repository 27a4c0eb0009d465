import { milliamps } from "../../calc/result.ts";
import { latestRcdTests, rcdLabel } from "../../readings/rcd-tests.ts";
import { misread } from "../common/writing.ts";
import { boardRule, factSpot, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/test-sensitivity",
  severity: "error",
  since: "0.1",
  title: "An RCD was tested at the wrong IΔn.",
  why: "A 100 mA device tested with 30 mA does not trip, and a pass at 100 mA proves nothing about a 30 mA device. Look at the marking: the schedule or the setting of the instrument is wrong.",
  clauses: ["643.8", "415.1.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          100 mA 1x 24.1 ms
                 ^^^^^^
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
      const { sensitivity } = fact.args;
      if (!device || !sensitivity || sensitivity.value === device.sensitivity) continue;
      const own = milliamps(device.sensitivity);
      report(valueSpot(fact, sensitivity), {
        message: `Tested as a ${milliamps(sensitivity.value)} device, but ${rcdLabel(device)} is rated ${own}. Which is right?`,
        related: [{ spot: factSpot(device.fact), message: `RCD recorded with IΔn ${own}.` }],
        fixes: [
          misread(
            fact,
            sensitivity,
            own,
            "Rated current written wrongly",
            `I wrote it wrongly: it was tested as ${own}`,
          ),
        ],
      });
    }
  },
});
