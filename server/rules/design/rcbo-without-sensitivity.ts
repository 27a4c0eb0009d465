import { wordsAfter } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/rcbo-without-sensitivity",
  severity: "warning",
  since: "0.1",
  title: "The rated residual current of an RCBO is not stated.",
  why: "Whether it gives additional protection, and how fast it must trip, depends on that figure.",
  clauses: ["415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Sockets" {
  device       BS EN 61009 B20 6 kA
               ^^^^^^^^^^^
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
}`,
    },
  ],
  check(study, report) {
    const { device } = study;
    if (!device || device.fact.args.sensitivity || !device.standard.includes("61009")) return;
    report(valueSpot(device.fact, device.fact.args.standard), {
      message: "The rated residual current of this RCBO is not stated: read it off the device.",
      fixes: wordsAfter(device.fact, "30 mA type A", "Add 30 mA type A"),
    });
  },
});
