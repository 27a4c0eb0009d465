import { ohms, remark } from "../../calc/result.ts";
import type { Test } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact, Quantity } from "../../model/values.ts";
import { isAbsent } from "../../model/values.ts";
import { expectedConductorAt, latestDead } from "../../readings/dead.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { lengthRelated, shown } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/negative-or-zero",
  severity: "error",
  since: "0.1",
  title: "A resistance is recorded as zero or negative.",
  why: "No conductor has zero or negative resistance. The leads were nulled on a poor contact, so every reading of that test is too low by the same amount; or both probes were on the same piece of metal. Null again and repeat.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       20 m
  dead 2026-03-04 {
    R1+R2        -0.02 Ω
                 ^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       20 m
  dead 2026-03-04 {
    R1+R2        0.38 Ω
  }
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.00 Ω  rn 0.44 Ω  r2 0.73 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 0.73 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare) return;
    for (const { fact, quantity, test, name } of resistances(study)) {
      if (quantity.sign === ">" || quantity.value > 0 || (quantity.sign === "<" && quantity.value === 0)) continue;
      const negative = quantity.value < 0;
      if (!negative && mayBeNothing(study, test)) continue;
      report(valueSpot(fact, quantity), {
        message: negative
          ? `${name} reads ${shown(quantity)}, below zero: the leads were nulled on a poor contact. Null them again and repeat the test.`
          : `${name} reads ${ohms(0)}, which no conductor has: the leads were over-nulled, or both probes on one piece of metal. Repeat.`,
        value: amount(quantity.value, "Ω"),
        limit: amount(0, "Ω"),
        least: true,
        steps: [remark(`a resistance is more than ${ohms(0)}`)],
        source: deadTestPractice.meterUncertainty.source,
        related: lengthRelated(study),
      });
    }
  },
});

interface Found {
  readonly name: string;
  readonly fact: Fact;
  readonly quantity: Quantity;
  readonly test: Test<"dead">;
}

function resistances(study: WayStudy): Found[] {
  const found: Found[] = [];
  const test = study.dead;
  for (const word of ["R1+R2", "R2", "ends"] as const) {
    const latest = latestDead(study, word);
    if (!latest) continue;
    const { fact } = latest;
    for (const [name, value] of Object.entries(fact.args))
      if (value && "sign" in value)
        found.push({ name: name === "value" ? word : name, fact, quantity: value, test: latest.test });
  }
  for (const fact of test?.facts.all("at") ?? []) {
    for (const round of ["L-N", "L-E", "R2"] as const) {
      const value = fact.args[round];
      if (value && !isAbsent(value) && test)
        found.push({ name: `${fact.args.point.value} ${round}`, fact, quantity: value, test });
    }
  }
  return found;
}

/** A few metres of heavy conductor round to nothing on a meter that shows hundredths. */
function mayBeNothing(study: WayStudy, test: Test<"dead">): boolean {
  const line = expectedConductorAt(study, "line", test);
  return line !== undefined && line.value < deadTestPractice.meterUncertainty.value;
}
