import { runReaching, spurPoints } from "../../readings/spurs.ts";
import { relatedFact } from "../common/dead-words.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/spur-off-spur",
  severity: "warning",
  since: "0.1",
  title: "An unfused spur feeds a second point.",
  why: "The single cable of the spur carries everything plugged in along it, while the device is rated for two cables in parallel. An unfused spur feeds one single or one twin socket; more than that needs a fused connection unit, or a place on the ring.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S2 4 m X1 3 m X2
                             ^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S2 4 m X1 3 m X2
  fused X1     13 A
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S2 4 m X1
  run          X1 3 m X2
                      ^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S2 4 m X1
  run          S1 3 m X2
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
        message: `${place.name.value} is a spur off the spur to ${from}: fit a 13 A fused connection unit at ${from}, or take ${place.name.value} into the ring.`,
        related: before && before !== fact ? [relatedFact(before, `Spur to ${from}.`)] : [],
      });
    }
  },
});
