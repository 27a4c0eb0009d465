import { percent } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "demand/charger-without-load-control",
  severity: "error",
  since: "0.1",
  title: "A charging point is counted in part without load control.",
  why: "A car takes its full current for hours, when everything else is on as well. It counts in full unless something limits it.",

  clauses: ["722.311.201"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA" },
      bad: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
  diversity    20 %
  ^^^^^^^^^^^^^^^^^
  Ib           32 A
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
  load-control "Clamp at the meter holds the house below 60 A"
  diversity    20 %
  Ib           32 A
}`,
    },
  ],
  check({ facts, uses, isFinal, context }, report) {
    const diversity = facts.one("diversity");
    if (!diversity || !isFinal || !uses.has("ev-charger") || diversity.args.share.value >= 100) return;
    if (facts.has("load-control")) return;
    const later = laterRule(context);
    report(factSpot(diversity), {
      message: `A charging point counts in full, not with ${percent(diversity.args.share.value)}, unless its load is controlled: write load-control, or take the diversity away.${later.words}`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 722.311.201", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
