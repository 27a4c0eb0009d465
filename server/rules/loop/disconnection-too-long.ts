import { exceeds } from "../../calc/compare.ts";
import { seconds } from "../../calc/result.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/disconnection-too-long",
  severity: "error",
  since: "0.1",
  title: "The disconnection time claimed is longer than this circuit is allowed.",
  why: "Five seconds apply to distribution circuits and large fixed loads only. A circuit that supplies equipment held in the hand must disconnect in 0.4 s, or 0.2 s in TT.",
  clauses: ["411.3.2.2", "411.3.2.3", "411.3.2.4"],
  examples: [
    {
      bad: `way 1 radial "Sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  serves       sockets
  disconnect   5 s
               ^^^
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  serves       sockets
  disconnect   0.4 s
}`,
    },
  ],
  check(study, report) {
    const fact = study.facts.one("disconnect");
    const allowed = study.disconnectionTime;
    if (!fact || !allowed) return;
    const { time } = fact.args;
    if (!exceeds(time.value, allowed.value)) return;
    const serves = study.facts.one("serves");
    report(valueSpot(fact, time), {
      message: `Disconnection in ${seconds(time.value)} is claimed; this circuit is allowed ${seconds(allowed.value)} at most.`,
      value: amount(time.value, "s"),
      limit: amountOf(allowed),
      steps: allowed.steps,
      source: allowed.source,
      related: serves
        ? [{ spot: factSpot(serves), message: "The use of the circuit decides the disconnection time." }]
        : [],
      fixes: [inPlaceOf(time, seconds(allowed.value), `Write ${seconds(allowed.value)}`)],
    });
  },
});
