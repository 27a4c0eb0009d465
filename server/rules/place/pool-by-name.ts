import { laterRule } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import { ruleAlone } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

/** “Hot tub”, “Swimming pool plant”, “Spa pool”, and no pool table and no car pool. */
const saysPool =
  /(?<![\p{L}\d])(?:hot[- ]?tub|swim[- ]?spa|(?:swim(?:ming)?|spa|paddling|plunge)[- ]?pool|pool (?:plant|pump|heater|lights?)|fountain)s?(?![\p{L}\d])/iu;

export default wayRule({
  id: "place/pool-by-name",
  severity: "warning",
  since: "0.1",
  title: "A circuit is named as of a pool, and no pool is stated.",
  why: "Beside a pool or a hot tub people stand wet and barefoot: zones, enclosures, RCDs, extra-low voltage and supplementary bonding are required there, and none of it is judged of a circuit that does not state its place.",
  clauses: ["702.410.3", "702.415.2"],
  examples: [
    {
      bad: `way 1 radial "Hot tub" {
^^^^^^^^^^^^^^^^^^^^^^
  device       BS EN 60898 B32 6 kA
  serves       appliance
}`,
      good: `way 1 radial "Hot tub" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       appliance
  place        pool  zone outside
  supplementary-bonding fitted
}`,
    },
  ],
  check(study, report) {
    const { way, places, facts, isSpare, isFinal } = study;
    if (isSpare || !isFinal || isOutsideWork(study) || facts.isUnread("place")) return;
    const stated = facts.one("place")?.args.places.map(({ value }) => value) ?? [];
    if (places.has("pool") || stated.includes("ordinary") || !saysPool.test(way.title)) return;
    const later = laterRule(study);
    report(factSpot(way.header), {
      message: `“${way.title}” is a pool by its name, and none of what is required there is judged: write place pool and its zone (outside, if it is in none), or place ordinary.${later.words}`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, Section 702", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
