import { ohms, relation } from "../../calc/result.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Quantity, quantityOf } from "../../model/values.ts";
import { latestReadDead, lengthMismatch } from "../../readings/dead.ts";
import { readOnLines } from "../../readings/lines.ts";
import { isBeyondCable } from "../../readings/open-conductor.ts";
import { pointLines } from "../../readings/radial-points.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { shown } from "../common/dead-words.ts";
import { amount, type Report, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/open",
  severity: "error",
  compares: true,
  since: "0.1",
  title: "A protective conductor reads open.",
  why: "Off scale, or tens of ohms, means that no conductor was found. Without one a fault leaves exposed metal live and nothing disconnects. Find the break before anything else is tested.",
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
      bad: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        180 Ω
                 ^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        1.80 Ω
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
      const all = isOpen(study, quantity) ? [{ of: word, reading: quantity }] : lines;
      for (const { of, reading } of all) {
        if (!isOpen(study, reading)) continue;
        report(
          valueSpot(fact, reading),
          open(of, reading, "no continuity. Find the break before the circuit is energised."),
        );
      }
    }
    for (const { name, fact, R2 } of pointLines(study)) {
      if (!R2 || !isOpen(study, R2)) continue;
      const means = "the protective conductor does not reach it. Check its terminals and those before it.";
      report(valueSpot(fact, R2), open(`R2 at ${name}`, R2, means));
    }
  },
});

const { openLeast } = deadTestPractice;

/** Off scale nothing is compared; a figure that was read is, with the most that a cable comes to. */
function open(of: string, reading: Quantity, means: string): Report {
  const value = amount(reading.value, "Ω");
  if (reading.sign === ">") return { message: `${of} is off scale (${shown(reading)}): ${means}`, value };
  return {
    message: `${of} reads ${shown(reading)}: ${means}`,
    value,
    limit: amount(openLeast.value, "Ω"),
    steps: [relation("reading ≤ the most a cable comes to", ohms(reading.value), ohms(openLeast.value))],
    source: openLeast.source,
  };
}

/** Off scale, or more than any cable comes to. A loop that was measured and is low shows the conductor whole: the figure is wrong. */
function isOpen(study: WayStudy, { sign, value }: Quantity): boolean {
  if (sign !== "=") return sign === ">";
  const expected = study.expectedR1R2;
  // Ten or a hundred times what the length gives is a slip of the decimal point, and reported as that.
  if (expected && lengthMismatch({ sign, value }, expected.value)?.slip !== undefined) return false;
  const Zs = exactReading(study.Zs);
  return isBeyondCable(study, value) && !(Zs && Zs.fact.provenance === "measured" && Zs.value < openLeast.value);
}
