import { runReaching, spurPoints } from "../../readings/spurs.ts";
import { relatedFact } from "../common/dead-words.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/spur-off-spur",
  severity: "warning",
  since: "0.1",
  title: "A second point on an unfused spur.",
  why: "The spur's one cable carries all that is plugged in along it, while the device is set for two cables in parallel. One unfused spur feeds one single or one twin socket; more than that goes behind a fused connection unit, or on the ring.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run  A 7 m S1 6 m S2 8 m A
  run  S2 4 m X1 3 m X2
                     ^^
}`,
      good: `way 1 ring "Sockets" {
  run    A 7 m S1 6 m S2 8 m A
  run    S2 4 m X1 3 m X2
  fused  X1 13 A
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  run  A 7 m S1 6 m S2 8 m A
  run  S2 4 m X1
  run  X1 3 m X2
              ^^
}`,
      good: `way 1 ring "Sockets" {
  run  A 7 m S1 6 m S2 8 m A
  run  S2 4 m X1
  run  S1 3 m X2
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    for (const { place, from, fact, offSpur } of spurPoints(study)) {
      if (!offSpur) continue;
      const parent = study.runs?.places.get(from);
      const before = parent && runReaching(study, parent.name);
      report(valueSpot(fact, place.name), {
        message: `${place.name.value} is a spur off the spur to ${from}: an unfused spur feeds one point. Put a fused connection unit of 13 A or less at ${from}, or take ${place.name.value} into the ring.`,
        related: before && before !== fact ? [relatedFact(before, `The spur to ${from}.`)] : [],
      });
    }
  },
});
