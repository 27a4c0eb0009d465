import { quantityOf } from "../../model/values.ts";
import { latestReadDead } from "../../readings/dead.ts";
import { readOnLines } from "../../readings/lines.ts";
import { pointLines } from "../../readings/radial-points.ts";
import { shown } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/open",
  severity: "error",
  compares: true,
  since: "0.1",
  title: "A protective conductor reads open.",
  why: "Off scale means that no path was found. Without one a fault leaves exposed metal live and nothing disconnects. Find the break before anything else is tested.",
  opens: true,
  clauses: ["643.2.1", "411.3.1.1"],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        >99.9 Ω
                 ^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.41 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Car park columns" {
  dead 2026-03-04 {
    at C1        R2 0.13 Ω
    at C2        R2 >99.9 Ω
                    ^^^^^^^
  }
}`,
      good: `way 1 radial "Car park columns" {
  dead 2026-03-04 {
    at C1        R2 0.13 Ω
    at C2        R2 0.21 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R1+R2        0.33 Ω L1 0.33 Ω L2 >99.9 Ω L3 0.32 Ω
                                     ^^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  phase        three
  dead 2026-03-04 {
    R1+R2        0.33 Ω L1 0.33 Ω L2 0.33 Ω L3 0.32 Ω
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare) return;
    for (const word of ["R1+R2", "R2"] as const) {
      const fact = latestReadDead(study, word);
      const quantity = quantityOf(fact?.args.value);
      if (!fact || !quantity) continue;
      const lines = readOnLines(fact).map(({ name, reading }) => ({ of: `${word} of ${name}`, reading }));
      const all = quantity.sign === ">" ? [{ of: word, reading: quantity }] : lines;
      for (const { of, reading } of all) {
        if (reading.sign !== ">") continue;
        report(valueSpot(fact, reading), {
          message: `${of} is off scale (${shown(reading)}): no continuity. Find the break before the circuit is energised.`,
          value: amount(reading.value, "Ω"),
        });
      }
    }
    for (const { name, fact, R2 } of pointLines(study)) {
      if (R2?.sign !== ">") continue;
      report(valueSpot(fact, R2), {
        message: `R2 at ${name} is off scale (${shown(R2)}): the protective conductor does not reach it. Check its terminals and those before it.`,
        value: amount(R2.value, "Ω"),
      });
    }
  },
});
