import { liveOfBoard } from "../../analysis/rcd-tests.ts";
import { boardRule, factSpot } from "../rule.ts";

export default boardRule({
  id: "rcd/test-button-failed",
  severity: "error",
  since: "0.1",
  title: "A test button that did not trip its device.",
  why: "A device whose own button does not open it cannot be relied on to open in a fault. It is to be replaced.",
  clauses: ["643.10"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    test-button  failed
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    test-button  ok
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const boardButtons = liveOfBoard(context)[0]?.facts.all("test-button") ?? [];
    const wayButtons = studies.flatMap((study) =>
      study.live ? [...study.live.facts.all("test-button"), ...study.live.facts.all("afdd-button")] : [],
    );
    for (const fact of [...boardButtons, ...wayButtons]) {
      const { verdict } = fact.args;
      if (!("value" in verdict) || verdict.value !== "failed") continue;
      const device = fact.word === "afdd-button" ? "The AFDD" : "The RCD";
      report(factSpot(fact), {
        message: `${device} did not trip when its test button was pressed: it is to be replaced.`,
      });
    }
  },
});
