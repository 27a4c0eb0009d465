import { metres } from "../../calc/result.ts";
import { longestSpur } from "../../calc/ring.ts";
import { farthestFromSpur, unfusedSpurs } from "../../readings/spurs.ts";
import { usualRingLength } from "../../tables/dead-test-practice.ts";
import { combine } from "../../tables/source.ts";
import { relatedFact } from "../common/dead-words.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/spur-too-long",
  severity: "information",
  since: "0.1",
  title: "An unfused spur is longer than the rule of thumb allows.",
  why: "A rule of thumb of the guides, made for a ring of the usual greatest length: an eighth of the way to its far point. A spur has one cable where the ring has two, so a long one uses up voltage drop and loop impedance. Check both at its end.",
  clauses: ["525"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 15 m S1 15 m S2 15 m S3 15 m A
  run          S1 9 m X1
                      ^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 15 m S1 15 m S2 15 m S3 15 m A
  run          S1 5 m X1
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const [first] = study.facts.all("run");
    for (const spur of unfusedSpurs(study)) {
      const farthest = farthestFromSpur(study, spur);
      const length = spur.place.spur?.length;
      if (spur.offSpur || farthest === undefined || length === undefined) continue;
      // The rule is made for a ring of the usual greatest length; a shorter one has drop and loop to spare.
      const own = longestSpur(Math.max(farthest, usualRingLength.value / 2));
      const limit = { ...own, steps: own.steps, source: combine(own.source, usualRingLength.source) };
      if (length <= limit.value) continue;
      report(valueSpot(spur.fact, spur.place.name), {
        message: `The spur to ${spur.place.name.value} is ${metres(length)} long, above the rule of thumb of ${metres(limit.value)}: check voltage drop and Zs at its end.`,
        value: amount(length, "m"),
        limit: amountOf(limit),
        steps: limit.steps,
        source: limit.source,
        related: first ? [relatedFact(first, "The run of the ring.")] : [],
      });
    }
  },
});
