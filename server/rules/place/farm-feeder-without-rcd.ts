import { milliamps } from "../../calc/result.ts";
import { rcdsKnown } from "../../circuit/additional-protection.ts";
import { laterRule } from "../../circuit/describe.ts";
import { farmFeederRcd } from "../../circuit/places.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/farm-feeder-without-rcd",
  severity: "warning",
  since: "0.1",
  title: "A distribution circuit in agricultural premises has no RCD.",
  why: "Rodents and straw make of a damaged cable a fire that no fuse sees. “All other circuits” of 705.411.1 have an RCD of 300 mA at most; whether distribution circuits are meant is argued about, and the fire does not ask.",
  clauses: ["705.411.1"],
  examples: [
    {
      bad: `way 1 feeder "Barn" {
  device       BS 88-2 63 A
  place        agricultural
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 feeder "Barn" {
  device       BS 88-2 63 A
  rcd          BS EN 61008 80 A 300 mA type A delayed
  place        agricultural
}`,
    },
  ],
  check(study, report) {
    const limit = farmFeederRcd(study);
    const place = study.placeLine("agricultural");
    if (!limit || !place || study.rcds.length > 0 || !rcdsKnown(study)) return;
    // A board among animals may feed a house as well: its place says nothing of where that cable runs.
    if (place !== study.facts.one("place") && premisesOf(study.context) !== "agricultural") return;
    const later = laterRule(study);
    report(factSpot(place), {
      message: `A distribution circuit on a farm needs an RCD of ${milliamps(limit.value)} or less, delayed: way ${study.way.id} has none.${later.words}`,
      limit: amountOf(limit),
      steps: limit.steps,
      source: limit.source,
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
