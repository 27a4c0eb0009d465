import { amps } from "../../calc/result.ts";
import { ringRule } from "../../calc/ring.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/fused-spur-rating",
  severity: "error",
  since: "0.1",
  title: "A fused connection unit has a fuse above 13 A.",
  why: "The fuse is what allows the cable it supplies to be smaller than the circuit's. No such fuse is made above 13 A, and a link in its place protects nothing.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 9 m S2 8 m A
  fused S2     16 A
               ^^^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 9 m S2 8 m A
  fused S2     13 A
}`,
    },
  ],
  check(study, report) {
    const limit = ringRule("fused-spur");
    for (const fused of study.facts.all("fused")) {
      const { rating } = fused.args;
      if (rating.value <= limit.value) continue;
      report(valueSpot(fused, rating), {
        message: `The fuse of a fused connection unit is ${amps(limit.value)} at most, not ${amps(rating.value)}.`,
        value: amount(rating.value, "A"),
        limit: amountOf(limit),
        steps: limit.steps,
        source: limit.source,
        fixes: [inPlaceOf(rating, `${limit.value} A`, `Make it ${amps(limit.value)}`)],
      });
    }
  },
});
