import { ohms } from "../../calc/result.ts";
import { ringTolerance } from "../../calc/ring.ts";
import { studyRing } from "../../readings/ring.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { highestPoint, type R1R2Mismatch, r1r2Mismatch, recordedR1R2 } from "../../readings/ring-r1r2.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { combine } from "../../tables/source.ts";
import { endsRelated, relatedFact, shown } from "../common/dead-words.ts";
import { misread } from "../common/writing.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/r1r2-against-ring",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "R1+R2 of a ring does not agree with its ends and points.",
  why: "R1+R2 of a ring is the highest reading to earth at its points, which is about a quarter of r1 + r2 unless a spur reads more. The sum itself, or half of it, makes the circuit look far worse than it is; too little hides the worst point.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    R1+R2        1.17 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    R1+R2        0.29 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at X1        L-N 0.30 Ω  L-E 0.39 Ω
    R1+R2        0.29 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
    at S1        L-N 0.22 Ω  L-E 0.29 Ω
    at X1        L-N 0.30 Ω  L-E 0.39 Ω
    R1+R2        0.39 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const recorded = recordedR1R2(study);
    const pattern = ringPattern(study);
    if (!study.isRing || !recorded || pattern?.kind === "open-ends") return;
    const ring = studyRing(study);
    const { fact, quantity } = recorded;
    const quarter = ring.quarter["L-E"];
    const highest = pattern ? undefined : highestPoint(study);
    const mismatch = r1r2Mismatch(study, quantity.value);
    const expected = highest?.value ?? quarter?.value;
    if (!mismatch || expected === undefined) return;
    if (pattern && mismatch !== "undivided" && mismatch !== "halved") return;
    const text = `${expected.toFixed(2)} Ω`;
    report(valueSpot(fact, quantity), {
      message: `R1+R2 reads ${shown(quantity)}. ${words(mismatch, expected, highest?.point.name, overWhole(quantity.value, quarter?.value))}`,
      value: amount(quantity.value, "Ω"),
      limit: amount(expected, "Ω"),
      least: mismatch === "below",
      steps: quarter?.steps ?? ringTolerance.steps,
      source: quarter ? combine(quarter.source, ringTolerance.source) : ringTolerance.source,
      related: [
        ...endsRelated(ring),
        ...(highest ? [relatedFact(highest.point.fact, `Highest reading to earth: ${highest.point.name}.`)] : []),
      ],
      fixes:
        mismatch === "above" || !highest
          ? []
          : [misread(fact, quantity, text, "Not the highest reading", `Record the highest reading, ${text}`)],
    });
  },
});

/** Whether a reading is more than both conductors end to end. */
const overWhole = (value: number, quarter: number | undefined): boolean =>
  quarter !== undefined && value > 4 * quarter * (1 + deadTestPractice.sameShare.value);

function words(mismatch: R1R2Mismatch, expected: number, point: string | undefined, over: boolean): string {
  const where =
    point === undefined ? `(r1 + r2) / 4 is ${ohms(expected)}` : `the highest point, ${point}, reads ${ohms(expected)}`;
  switch (mismatch) {
    case "undivided":
      return `That is ${over ? "more than" : "about"} r1 + r2, end to end: ${where}.`;
    case "halved":
      return `That is half of r1 + r2, not a quarter: ${where}.`;
    case "below":
      return point === undefined
        ? `That is less than a sound ring can give: ${where}.`
        : `Record the highest reading to earth: ${where}.`;
    case "above":
      return point === undefined
        ? `That is more than the ring gives: ${where}. If it is from a spur, write its run.`
        : `No point reads that much: ${where}. Where was it taken?`;
  }
}
