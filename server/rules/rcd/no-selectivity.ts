import { rcdName } from "../../analysis/describe.ts";
import { factSpot, wayRule } from "../rule.ts";

export default wayRule({
  id: "rcd/no-selectivity",
  severity: "information",
  since: "0.1",
  title: "Two RCDs in a row that trip together.",
  why: "A fault on one circuit takes out everything behind the upstream device. Upstream, a time-delayed RCD of at least three times the rating lets the nearer one act first.",
  clauses: ["536.4.1.4"],
  examples: [
    {
      setting: { board: "fed-from supply\nmain-switch BS EN 61008 80 A 30 mA type A" },
      bad: `way 1 ring "Sockets" {
  device  BS EN 61009 B32 6 kA 30 mA type A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device  BS EN 60898 B32 6 kA
}`,
    },
  ],
  check(study, report) {
    const [own, ...above] = study.rcds;
    if (!own || study.isSpare || (own.at !== "device" && own.at !== "way")) return;
    const rival = above.find(({ delayed, sensitivity }) => !delayed && sensitivity <= own.sensitivity);
    if (!rival || own.delayed) return;
    report(factSpot(own.fact), {
      message: `This RCD and the ${rcdName(rival)} upstream trip together: a fault here takes out more than this circuit.`,
      related: [{ spot: factSpot(rival.fact), message: `Upstream: ${rcdName(rival)}.` }],
    });
  },
});
