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
    {
      setting: { supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA" },
      bad: `way 1 radial "Bays 1 and 2" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  points       2
  ^^^^^^^^^^^^^^
  serves       ev-charger
}`,
      good: `way 1 radial "Bay 1" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  points       1
  serves       ev-charger
}`,
    },
  ],
  check({ facts, uses, isFinal, context }, report) {
    const serves = facts.one("serves");
    if (!serves || !isFinal || !uses.has("ev-charger")) return;
    const later = laterRule(context);
    const source = ruleAlone({ ref: "BS 7671:2018+A2:2022, 722.314.101", standing: "memory" });
    const others = [...uses].filter((use) => use !== "ev-charger" && use !== "control");
    const points = facts.one("points");
    if (others.length > 0)
      report(factSpot(serves), {
        message: `A charging point needs a circuit of its own: this one serves ${listed(others)} as well.${later.words}`,
        source,
        ...(later.severity ? { severity: later.severity } : {}),
      });
    // One unit with two leads is two points to some and one to others: it is asked about.
    else if (points && points.args.count.value > 1)
      report(factSpot(points), {
        message: `Each charging point needs a circuit of its own, and this one has ${points.args.count.value}: give each a way. If it is one unit that shares its current between its leads, write points 1.${later.words}`,
        source,
        severity: later.severity ?? "warning",
      });
  },
});
