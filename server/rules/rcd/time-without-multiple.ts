import { milliseconds } from "../../calc/result.ts";
import { latestRcdTests } from "../../readings/rcd-tests.ts";
import { boardRule, valueSpot } from "../frame/rule.ts";

const multiples = ["1x", "5x"];

export default boardRule({
  id: "rcd/time-without-multiple",
  severity: "warning",
  since: "0.1",
  title: "The test current of an RCD trip time is not stated.",
  why: "28 ms is fine at 1 × IΔn and proves nothing about 5 × IΔn. Without the multiple the time cannot be judged, nor the test repeated.",
  clauses: ["643.7.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 24.1 ms
                       ^^^^^^^
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
    for (const { fact, time, multiple } of latestRcdTests(context, studies)) {
      if (!time || multiple) continue;
      report(valueSpot(fact, time), {
        message: `The test current of ${milliseconds(time.value)} is not stated: write 1x or 5x before the time.`,
        fixes: multiples.map((text) => ({
          title: `Write ${text}`,
          edits: [{ start: time.start, end: time.start, text: `${text} ` }],
          safe: false,
        })),
      });
    }
  },
});
