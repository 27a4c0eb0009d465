import { laterRule } from "../../circuit/describe.ts";
import { ruleAlone } from "../../tables/source.ts";
import { listed } from "../../text/words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/charger-shares-circuit",
  severity: "error",
  since: "0.1",
  title: "A charging point shares its circuit with other loads.",
  why: "It draws its full current for hours, and neither cable nor RCD was chosen for anything beside it.",

  clauses: ["722.314.101"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA" },
      bad: `way 1 radial "Garage" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger lighting
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
}`,
    },
  ],
  check({ facts, uses, isFinal, context }, report) {
    const serves = facts.one("serves");
    if (!serves || !isFinal || uses.size < 2 || !uses.has("ev-charger")) return;
    const others = [...uses].filter((use) => use !== "ev-charger" && use !== "control");
    if (others.length === 0) return;
    const later = laterRule(context);
    report(factSpot(serves), {
      message: `A charging point needs a circuit of its own: this one serves ${listed(others)} as well.${later.words}`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 722.314.101", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
