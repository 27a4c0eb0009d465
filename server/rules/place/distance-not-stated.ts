import { metres } from "../../calc/result.ts";
import { placeSpot, socketDistance, zonesOf } from "../../circuit/places.ts";
import { workOf } from "../../circuit/supply.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/distance-not-stated",
  severity: "information",
  since: "0.1",
  title: "The distance of sockets from the bath or shower is not stated.",
  why: "Whether sockets may be in the room at all depends on this one distance.",
  clauses: ["701.512.3"],
  examples: [
    {
      bad: `way 1 radial "Dressing room sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets
  place        bathroom
  ^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Dressing room sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets
  place        bathroom  distance 3.1 m
}`,
    },
  ],
  check(study, report) {
    const limit = socketDistance(study);
    const line = study.facts.one("place");
    const inside = zonesOf(study).some((zone) => zone !== "outside");
    if (!limit || !study.servesSockets || !study.places.has("bathroom") || study.isSpare) return;
    if (line?.args.distance || (inside && study.uses.size === 1) || workOf(study) === "existing") return;
    report(factSpot(placeSpot(study, "bathroom")), {
      message: `Sockets must be ${metres(limit.value)} or more from zone 1: record the distance of the nearest one.`,
      limit: amountOf(limit),
      source: limit.source,
    });
  },
});
