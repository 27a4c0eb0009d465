import { looked, volts } from "../../calc/result.ts";
import { extraLow } from "../../circuit/circuit-kind.ts";
import { zoneForExtraLow, zoneSource } from "../../circuit/places.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/zone-not-selv",
  severity: "error",
  since: "0.1",
  title: "Low voltage is used in a zone for SELV only.",
  why: "In the water no RCD is fast enough to be relied on. Only SELV of a few volts is allowed there, with its source outside the zones.",
  clauses: ["701.55", "702.410.3.4.1"],
  examples: [
    {
      bad: `way 1 radial "Underwater lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        pool  zone 0
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Underwater lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       selv
  place        pool  zone 0
}`,
    },
  ],
  check(study, report) {
    const row = zoneForExtraLow(study);
    const place = study.facts.one("place");
    if (!row || !place || study.uses.size === 0 || extraLow(study)) return;
    const source = zoneSource(row);
    const most = volts(row.facts.volts);
    report(factSpot(place), {
      message: `Zone ${row.facts.zone} of a ${row.facts.place === "pool" ? "pool" : "bath or shower"} is for SELV of ${most} at most; this circuit is at ${volts(study.supply.U0)}.`,
      value: amount(study.supply.U0, "V"),
      limit: amount(row.facts.volts, "V"),
      steps: [looked(`Zone ${row.facts.zone}, SELV at most`, source.ref, most)],
      source,
    });
  },
});
