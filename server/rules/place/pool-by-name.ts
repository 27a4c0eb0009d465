import { rcdLimit } from "../../calc/practice.ts";
import { meets, rcdsKnown } from "../../circuit/additional-protection.ts";
import { laterRule } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { ruleAlone } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

/** “Hot tub”, “Swimming pool plant”, “Spa pool”, and no pool table and no car pool. */
const saysPool =
  /(?<![\p{L}\d])(?:hot[- ]?tub|swim[- ]?spa|(?:swim(?:ming)?|spa|paddling|plunge)[- ]?pool|pool (?:plant|pump|heater|lights?)|fountain)s?(?![\p{L}\d])/iu;

/** Of these the equipment is the basin itself: somebody sits in it. */
const saysTub = /(?<![\p{L}\d])(?:hot[- ]?tub|swim[- ]?spa)s?(?![\p{L}\d])/iu;

/** What feeds a basin people sit in needs a 30 mA RCD wherever its zones lie, unless it is extra-low voltage or separated. */
const isUnguarded = (study: WayStudy): boolean =>
  saysTub.test(study.way.title) &&
  study.device !== undefined &&
  rcdsKnown(study) &&
  !study.facts.has("protective-measure") &&
  !study.uses.has("selv") &&
  !study.rcds.some((rcd) => meets(rcd, rcdLimit("additional")));

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
    {
      bad: `way 1 radial "Swim spa" {
^^^^^^^^^^^^^^^^^^^^^^^
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       appliance
}`,
      good: `way 1 radial "Swim spa" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       appliance
  place        ordinary
}`,
    },
  ],
  check(study, report) {
    const { way, places, facts, isSpare, isFinal } = study;
    if (isSpare || !isFinal || isOutsideWork(study) || facts.isUnread("place")) return;
    const stated = facts.one("place")?.args.places.map(({ value }) => value) ?? [];
    if (places.has("pool") || stated.includes("ordinary") || !saysPool.test(way.title)) return;
    const later = laterRule(study);
    const stateIt = "write place pool and its zone (outside, if it is in none), or place ordinary";
    report(factSpot(way.header), {
      message: isUnguarded(study)
        ? `“${way.title}” has no RCD of 30 mA, and people sit in it: fit one, and ${stateIt}.${later.words}`
        : `“${way.title}” is a pool by its name, and none of what is required there is judged: ${stateIt}.${later.words}`,
      ...(isUnguarded(study) ? { severity: "error" as const } : {}),
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, Section 702", standing: "memory" }),
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
