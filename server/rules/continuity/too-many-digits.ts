import { plain, remark } from "../../calc/result.ts";
import type { Fact, Quantity } from "../../model/values.ts";
import { isAbsent } from "../../model/values.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/too-many-digits",
  severity: "information",
  since: "0.1",
  title: "A reading has more decimals than a meter shows.",
  why: "A low-resistance ohmmeter shows hundredths of an ohm, some thousandths. More decimals come from a calculator: mark the figure as calculated, or write what was read.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.2347 Ω
                 ^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.2347 Ω calculated
  }
}`,
    },
  ],
  check(study, report) {
    const most = deadTestPractice.meterDecimals;
    for (const test of study.deadTests) {
      for (const fact of test.facts.list) {
        if (fact.provenance !== "measured" || fact.word === "insulation") continue;
        for (const quantity of resistancesOf(fact)) {
          if (quantity.unit !== "Ω" || quantity.decimals <= most.value) continue;
          report(valueSpot(fact, quantity), {
            message: `${plain(quantity.value, quantity.decimals)} Ω has ${quantity.decimals} decimals where a meter shows ${most.value}: was it measured, or calculated?`,
            value: amount(quantity.decimals, "decimals"),
            limit: amount(most.value, "decimals"),
            steps: [remark(`a meter shows ${most.value} decimals`)],
            source: most.source,
          });
        }
      }
    }
  },
});

const resistancesOf = (fact: Fact): Quantity[] =>
  Object.values(fact.args).flatMap((value) => {
    if (value === undefined || Array.isArray(value) || !("sign" in value) || isAbsent(value)) return [];
    return [value];
  });
