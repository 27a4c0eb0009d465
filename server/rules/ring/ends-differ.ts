import { ohms, plain, step } from "../../calc/result.ts";
import { ringTolerance } from "../../calc/ring.ts";
import { studyRing } from "../../readings/ring.ts";
import { lineNeutral } from "../../readings/ring-ends.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { cableWords, relatedFact } from "../common/dead-words.ts";
import { beyondTolerance, together, uncertaintySteps } from "../common/uncertainty-words.ts";
import { misread } from "../common/writing.ts";
import { amount, amountOf, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/ends-differ",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "r1 and rn of a ring do not agree.",
  why: "Line and neutral run together through the same points, so the higher one has a loose terminal, a broken strand or a length of smaller cable, which heats up under load. Until it is found, the points need not read (r1 + r2)/4.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.94 Ω  rn 0.44 Ω  r2 0.73 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.46 Ω  rn 0.44 Ω  r2 0.73 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  cable        singles  line 4 mm²  neutral 2.5 mm²  cpc 2.5 mm²
  dead 2026-03-04 {
    ends         r1 0.28 Ω  rn 0.28 Ω  r2 0.45 Ω
                               ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        singles  line 4 mm²  neutral 2.5 mm²  cpc 2.5 mm²
  dead 2026-03-04 {
    ends         r1 0.28 Ω  rn 0.45 Ω  r2 0.45 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const { ends, values } = studyRing(study);
    const pair = lineNeutral(study);
    if (!ends || !pair?.uneven) return;
    const { r1, rn, expected, difference } = pair;
    const sized = Math.abs(expected - r1) > Number.EPSILON;
    const higher = !sized && r1 > rn ? "r1" : "rn";
    const quantity = values[higher]?.quantity;
    if (!quantity) return;
    const lower = Math.min(r1, rn);
    const tenfold =
      !sized && lower > 0 && Math.abs(quantity.value / lower / 10 - 1) <= deadTestPractice.slipShare.value;
    const words = sized
      ? `rn reads ${ohms(rn)} where r1 gives ${ohms(expected)}, more than ${plain(ringTolerance.value)} Ω apart.`
      : `r1 and rn differ by ${ohms(difference)}, more than ${plain(ringTolerance.value)} Ω.`;
    const remedy = tenfold
      ? `Check the decimal point first, then look for a poor joint.`
      : `Look for a loose terminal, or a length of smaller cable.`;
    const meters = [values.r1, values.rn].map((one) => one && uncertaintyOnWay(study, ends, one.quantity));
    const meter = together(meters, ohms);
    report(valueSpot(ends, quantity), {
      message: `${words} ${remedy}${beyondTolerance(meter, difference - ringTolerance.value)}`,
      value: amount(difference, "Ω"),
      limit: amountOf(ringTolerance),
      steps: [
        step("difference", `${ohms(Math.max(rn, expected))} − ${ohms(Math.min(rn, expected))}`, ohms(difference)),
        ...ringTolerance.steps,
        ...uncertaintySteps(meter),
      ],
      source: ringTolerance.source,
      related: [
        relatedFact(ends, "End-to-end readings of the ring."),
        ...(study.cable ? [relatedFact(study.cable.fact, `Cable: ${cableWords(study.cable)}.`)] : []),
      ],
      fixes: tenfold ? [misread(ends, quantity, `${(quantity.value / 10).toFixed(2)} Ω`, "Decimal point misread")] : [],
    });
  },
});
