import { laterRule } from "../../circuit/describe.ts";
import { ownRcd, placeSpot } from "../../circuit/places.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/several-sockets",
  severity: "error",
  since: "0.1",
  title: "Several sockets of a caravan park or marina share one device.",
  why: "Each socket of a pitch or berth needs its own overcurrent device and its own RCD. Several on one way have them only if they are in the pillar: then write the pillar as a board.",
  clauses: ["708.533.1", "708.415.1", "709.533.1", "709.531.2"],
  examples: [
    {
      bad: `way 1 radial "Berths 1 to 4" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  points       4
  ^^^^^^^^^^^^^^
  serves       sockets
  place        marina
}`,
      good: `way 1 radial "Berth 1" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  points       1
  serves       sockets
  place        marina
}`,
    },
  ],
  check(study, report) {
    const need = ownRcd(study);
    const points = study.facts.one("points");
    const several = points ? points.args.count.value > 1 : study.isRing;
    if (!need || !several || study.uses.size > 1) return;
    const later = laterRule(study);
    const spot = points ?? placeSpot(study, need.place);
    report(factSpot(spot), {
      message: `${points ? `${points.args.count.value} sockets share` : "The sockets of a ring share"} one device; each needs its own device and RCD: give each a way, or write the pillar as a board.${later.words}`,
      ...(later.severity ? { severity: later.severity } : {}),
      source: need.source,
      related: study.device ? [{ spot: factSpot(study.device.fact), message: "The device the sockets share." }] : [],
    });
  },
});
