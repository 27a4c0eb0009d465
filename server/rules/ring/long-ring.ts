import { lengthFromResistance, resistancePerMetre, to20 } from "../../calc/conductor-resistance.ts";
import { metres, ohms, step } from "../../calc/result.ts";
import { studyRing } from "../../readings/ring.ts";
import { deadTestPractice, usualRingLength } from "../../tables/dead-test-practice.ts";
import { cableWords, relatedFact, shown } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/long-ring",
  severity: "information",
  since: "0.1",
  title: "The end-to-end readings give a longer ring than usual.",
  why: "Beyond about this length a 2.5 mm² ring on 30 or 32 A exceeds its voltage drop or loop impedance. Check both at the far point, or look for the joint that makes it read long.",
  clauses: ["525", "411.4.4"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 1.60 Ω  rn 1.60 Ω  r2 2.61 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.74 Ω  rn 0.74 Ω  r2 1.21 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    const { ends, values, temperature } = studyRing(study);
    // Where a joint raises one of the two, the other is the cable's.
    const [least] = (["r1", "rn"] as const)
      .flatMap((end) => {
        const value = values[end]?.value;
        return value === undefined ? [] : [{ end, value }];
      })
      .toSorted((one, other) => one.value - other.value);
    const end = least?.end;
    const quantity = end && values[end]?.quantity;
    const perMetre = cable && resistancePerMetre(cable.line, cable.material);
    if (!study.isRing || !ends || !quantity || !perMetre) return;
    // Where a length is written it is judged by that; here there is only the reading.
    if (study.length || cable.line !== usualRingLength.csa || cable.material !== "copper") return;
    const { meterUncertainty, warmest } = deadTestPractice;
    const cold = to20(quantity.value - meterUncertainty.value, temperature ?? warmest.value);
    if (lengthFromResistance(cold.value, perMetre).value <= usualRingLength.value) return;
    const length = lengthFromResistance(quantity.value, perMetre);
    report(valueSpot(ends, quantity), {
      message: `${end} of ${shown(quantity)} is about ${metres(Math.round(length.value))} of ${cableWords(cable)}, above the usual ${metres(usualRingLength.value)}: check voltage drop and Zs.`,
      value: amount(length.value, "m"),
      limit: amount(usualRingLength.value, "m"),
      steps: [...length.steps, step("at least, warm and with the meter's uncertainty", "", ohms(cold.value))],
      source: usualRingLength.source,
      related: [relatedFact(cable.fact, `Cable: ${cableWords(cable)}.`)],
    });
  },
});
