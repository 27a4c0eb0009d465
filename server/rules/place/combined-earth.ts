import { laterRule } from "../../analysis/describe.ts";
import { combinedEarth, placeSpot } from "../../analysis/places.ts";
import { factSpot, wayRule } from "../rule.ts";
import { lineAfter } from "../writing.ts";

export default wayRule({
  id: "place/combined-earth",
  severity: "error",
  since: "0.1",
  title: "A pitch, a berth or a site earthed by a PME supply.",
  why: "When the supply's combined conductor breaks, its earth terminal rises towards 230 V. Indoors bonding raises all with it; a person who stands on the ground beside a caravan, a boat or a scaffold is killed.",
  clauses: ["708.411.4", "709.411.4", "704.411.3.1"],
  examples: [
    {
      setting: { supply: "earthing TN-C-S\nZe 0.20 Ω\nIpf 1.4 kA" },
      bad: `way 1 radial "Pitch 1" {
  device  BS EN 61009 C16 6 kA 30 mA type A
  serves  sockets
  place   caravan
  ^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Pitch 1" {
  device    BS EN 61009 C16 6 kA 30 mA type A
  serves    sockets
  place     caravan
  earthing  TT
}`,
    },
  ],
  check(study, report) {
    const found = combinedEarth(study);
    if (!found || found.row.facts.place === "charger") return;
    const { place, what, instead } = found.row.facts;
    const later = laterRule(study.context);
    const spot = placeSpot(study, place);
    const { earthingFact } = study.supply;
    report(factSpot(spot), {
      message: `${what} may not be earthed by a PME supply (TN-C-S): it needs ${instead}.${later.words}`,
      source: found.source,
      ...(later.severity ? { severity: later.severity } : {}),
      related: earthingFact
        ? [{ spot: factSpot(earthingFact), message: "The supply's neutral and earth are one." }]
        : [],
      fixes: [lineAfter(spot, "earthing TT", "It has an electrode of its own: write earthing TT")].filter(
        () => spot.inner === undefined,
      ),
    });
  },
});
