import { wordAt } from "../../model/fact-values.ts";
import type { Fact } from "../../model/values.ts";
import { liveOfBoard } from "../../readings/rcd-tests.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/test-button-failed",
  severity: "error",
  since: "0.1",
  title: "An RCD or AFDD did not trip when its test button was pressed.",
  why: "A device whose own button does not open it cannot be relied on to open in a fault. Replace it.",
  opens: true,
  clauses: ["643.10"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    test-button  failed
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    test-button  ok
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const onBoard = lastPresses(liveOfBoard(context).map(({ facts }) => facts.all("test-button")));
    const onWays = studies.flatMap(({ liveTests }) => [
      ...lastPresses(liveTests.map(({ facts }) => facts.all("test-button"))),
      ...lastPresses(liveTests.map(({ facts }) => facts.all("afdd-button"))),
    ]);
    for (const fact of [...onBoard, ...onWays]) {
      const { verdict } = fact.args;
      if (!("value" in verdict) || verdict.value !== "failed") continue;
      const device = fact.word === "afdd-button" ? "The AFDD" : "The RCD";
      report(factSpot(fact), {
        message: `${device} did not trip when its test button was pressed: replace it.`,
      });
    }
  },
});

/** The last press of each button; days are given with the latest first. */
function lastPresses<F extends Fact>(days: readonly (readonly F[])[]): F[] {
  const found: F[] = [];
  const nameOf = (fact: F): string => ["name", "point"].map((key) => wordAt(fact, key) ?? "").join("/");
  for (const day of days) found.push(...day.filter((fact) => !found.some((later) => nameOf(later) === nameOf(fact))));
  return found;
}
