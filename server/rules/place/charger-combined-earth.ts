import { laterRule } from "../../circuit/describe.ts";
import { combinedEarth } from "../../circuit/places.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/charger-combined-earth",
  severity: "error",
  since: "0.1",
  title: "A charging point is earthed by a PME supply without protection against an open PEN conductor.",
  why: "The body of the car is connected to the supply's earth. With the PEN conductor open it can rise towards 230 V, and whoever touches it stands on the ground.",
  clauses: ["722.411.4.1"],
  examples: [
    {
      setting: { supply: "earthing TN-C-S\nZe 0.20 Ω\nIpf 1.4 kA" },
      bad: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
  ^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
  open-PEN     "Detector in the charging unit"
}`,
    },
  ],
  check(study, report) {
    const found = combinedEarth(study);
    const serves = study.facts.one("serves");
    if (!found || !serves || found.row.facts.place !== "charger" || study.facts.isUnread("open-PEN")) return;
    const later = laterRule(study);
    const { earthingFact } = study.supply;
    const { what, instead } = found.row.facts;
    // Indoors the rule is of points that a vehicle outdoors might be charged from all the same.
    const indoors = study.places.has("indoors") && !study.places.has("outdoors");
    const grade = later.severity ?? (indoors ? "warning" : undefined);
    report(factSpot(serves), {
      message: indoors
        ? `A charging point indoors may be earthed by a PME supply (TN-C-S) only if its lead reaches no vehicle outdoors: record a departure that says so, or use ${instead}.${later.words}`
        : `${what} may not be earthed by a PME supply (TN-C-S) as it is: use ${instead}.${later.words}`,
      source: found.source,
      ...(grade ? { severity: grade } : {}),
      related: earthingFact ? [{ spot: factSpot(earthingFact), message: "Earthing recorded as TN-C-S (PME)." }] : [],
      fixes: [
        lineAfter(serves, 'open-PEN "what disconnects, and where it is"', "Record the open-PEN protection"),
        lineAfter(serves, "earthing TT", "It has an electrode of its own: write earthing TT"),
      ],
    });
  },
});
