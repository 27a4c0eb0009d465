import { testDaysOf } from "../../analysis/instruments.ts";
import { megohms } from "../../calc/result.ts";
import type { AnyValue, Facts, Quantity } from "../../model/values.ts";
import { amount, installationRule, valueSpot } from "../rule.ts";

/** Off-scale insulation readings of a block, each with the voltage it was taken at. */
function bounds(facts: Facts | undefined) {
  return (facts?.list ?? [])
    .filter((fact) => fact.word === "insulation")
    .flatMap((fact) => {
      const volts = (fact.args.voltage as Quantity | undefined)?.value;
      const over = (Object.values(fact.args).flat() as (AnyValue | undefined)[]).filter(
        (value): value is Quantity => value !== undefined && "sign" in value && value.sign === ">",
      );
      return over.map((bound) => ({ fact, volts, bound }));
    });
}

export default installationRule({
  id: "instrument/two-ranges",
  severity: "information",
  since: "0.1",
  title: "One instrument that goes off scale at two different figures.",
  why: "A meter's range at one voltage ends at one figure. Two of them mean two meters, or a figure that was not read off the display.",
  clauses: ["643.3"],
  examples: [
    {
      setting: { stage: "tested", before: 'instrument M1 "Multifunction tester"' },
      bad: `way 1 radial "Oven" {
  dead 2026-03-04 with M1 {
    insulation  500 V  L-E >999 MΩ
  }
}
way 2 radial "Kiln" {
  dead 2026-03-04 with M1 {
    insulation  500 V  L-E >200 MΩ
                           ^^^^^^^
  }
}`,
      good: `way 1 radial "Oven" {
  dead 2026-03-04 with M1 {
    insulation  500 V  L-E >999 MΩ
  }
}
way 2 radial "Kiln" {
  dead 2026-03-04 with M1 {
    insulation  500 V  L-E >999 MΩ
  }
}`,
    },
  ],
  check(installation, report) {
    const first = new Map<string, ReturnType<typeof bounds>[number]>();
    for (const day of testDaysOf(installation)) {
      const [name] = day.with;
      // With two instruments in one block it is not known which was used.
      if (!name || day.with.length > 1) continue;
      for (const here of bounds(day.facts)) {
        const key = `${name.value} ${here.volts}`;
        const before = first.get(key);
        if (!before) first.set(key, here);
        else if (before.bound.value !== here.bound.value) {
          report(valueSpot(here.fact, here.bound), {
            message: `${name.value} goes off scale at ${megohms(here.bound.value)} here and at ${megohms(before.bound.value)} elsewhere, at the same voltage. Which meter was it?`,
            value: amount(here.bound.value, "Ω"),
            related: [{ spot: valueSpot(before.fact, before.bound), message: "The other range." }],
          });
        }
      }
    }
  },
});
