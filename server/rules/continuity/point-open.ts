import { radialPoints } from "../../readings/radial-points.ts";
import { shown } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/point-open",
  severity: "error",
  compares: true,
  since: "0.1",
  title: "A conductor does not reach one point of a radial.",
  why: "The far point may read well while the earth is missing at one switch or luminaire on the way, where metalwork is then not protected in a fault. Isolate, and look at the terminals there and at the point before it.",
  opens: true,
  clauses: ["643.2.1", "411.3.1.1", "412.2.3.2", "643.6"],
  examples: [
    {
      bad: `way 1 radial "Hall lights" {
  run          A 6 m S1 5 m S2 5 m S3
  dead 2026-03-04 {
    at S1        L-N 0.15 Ω  L-E 0.18 Ω
    at S2        L-N 0.27 Ω  L-E >99.9 Ω
                                 ^^^^^^^
    at S3        L-N 0.39 Ω  L-E 0.48 Ω
  }
}`,
      good: `way 1 radial "Hall lights" {
  run          A 6 m S1 5 m S2 5 m S3
  dead 2026-03-04 {
    at S1        L-N 0.15 Ω  L-E 0.18 Ω
    at S2        L-N 0.27 Ω  L-E 0.33 Ω
    at S3        L-N 0.39 Ω  L-E 0.48 Ω
  }
}`,
    },
  ],
  check(study, report) {
    for (const point of radialPoints(study)) {
      const earth = point["L-E"];
      const neutral = point["L-N"];
      const open = earth?.sign === ">" ? earth : neutral?.sign === ">" ? neutral : undefined;
      if (!open) continue;
      const both = earth?.sign === ">" && neutral?.sign === ">";
      const missing = both ? "line, or both the others," : open === earth ? "protective conductor" : "neutral";
      report(valueSpot(point.fact, open), {
        message: `${point.name} is off scale ${open === earth ? "to earth" : "to neutral"} (${shown(open)}): the ${missing} does not reach it. Check its terminals and those before it.`,
        value: amount(open.value, "Ω"),
      });
    }
  },
});
