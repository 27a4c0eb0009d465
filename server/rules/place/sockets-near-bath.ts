import { metres, relation } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import { placeSpot, socketDistance, zonesOf } from "../../circuit/places.ts";
import { ruleAlone } from "../../tables/source.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/sockets-near-bath",
  severity: "error",
  since: "0.1",
  title: "Sockets are too near a bath or shower.",
  why: "Equipment plugged in near a bath can fall into it. Only a shaver supply unit and SELV may be nearer.",
  clauses: ["701.512.3"],
  examples: [
    {
      bad: `way 1 radial "Dressing room sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets
  place        bathroom  zone outside  distance 2.2 m
                                                ^^^^^
}`,
      good: `way 1 radial "Dressing room sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets
  place        bathroom  zone outside  distance 2.6 m
}`,
    },
    {
      bad: `way 1 radial "Basin socket" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets
  place        bathroom  zone 2
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Shaver socket" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       shaver
  place        bathroom  zone 2
}`,
    },
  ],
  check(study, report) {
    const limit = socketDistance(study);
    if (!limit || !study.servesSockets || !study.places.has("bathroom") || study.isSpare) return;
    const later = laterRule(study);
    const rest = { source: limit.source, ...(later.severity ? { severity: later.severity } : {}) };
    const line = study.facts.one("place");
    const distance = line?.args.distance;
    if (line && distance && distance.value < limit.value) {
      report(valueSpot(line, distance), {
        message: `The nearest socket is ${metres(distance.value)} from zone 1; at least ${metres(limit.value)} is required.${later.words}`,
        value: amount(distance.value, "m"),
        limit: amountOf(limit),
        least: true,
        steps: [...limit.steps, relation("distance ≥ least", metres(distance.value), metres(limit.value))],
        ...rest,
      });
      return;
    }
    const within = zonesOf(study).find((zone) => zone !== "outside");
    // A circuit may serve other things in a zone, with its sockets far enough away.
    if (within === undefined || distance || study.uses.size > 1) return;
    report(factSpot(placeSpot(study, "bathroom")), {
      message: `Sockets are not allowed in zone ${within}: at least ${metres(limit.value)} from zone 1 is required.${later.words}`,
      limit: amountOf(limit),
      least: true,
      steps: limit.steps,
      ...rest,
      // Inside a zone no distance from zone 1 would be enough.
      source: ruleAlone(limit.source),
    });
  },
});
