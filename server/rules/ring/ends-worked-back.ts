import { remark, round } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { studyRing } from "../../readings/ring.ts";
import { recordedR1R2 } from "../../readings/ring-r1r2.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { relatedFact } from "../common/dead-words.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

const shares = { r1: 1.5, r2: 2.5 } as const;

export default boardRule({
  id: "ring/ends-worked-back",
  severity: "information",
  since: "0.1",
  title: "The ends of every ring are exact multiples of R1+R2.",
  why: "1.5 and 2.5 times R1+R2 is what a ring of 2.5/1.5 mm² gives by the areas of its conductors. Real cable follows its resistances and comes near that, but not to the last digit on every ring of a board.",
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    way 1 ring "Ground floor" {
      dead 2026-03-04 {
        ends         r1 0.60 Ω  rn 0.60 Ω  r2 1.00 Ω
        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
        R1+R2        0.40 Ω
      }
    }
    way 2 ring "First floor" {
      dead 2026-03-04 {
        ends         r1 0.48 Ω  rn 0.48 Ω  r2 0.80 Ω
        R1+R2        0.32 Ω
      }
    }
    way 3 ring "Kitchen" {
      dead 2026-03-04 {
        ends         r1 0.36 Ω  rn 0.36 Ω  r2 0.60 Ω
        R1+R2        0.24 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
    way 1 ring "Ground floor" {
      dead 2026-03-04 {
        ends         r1 0.61 Ω  rn 0.60 Ω  r2 0.98 Ω
        R1+R2        0.41 Ω
      }
    }
    way 2 ring "First floor" {
      dead 2026-03-04 {
        ends         r1 0.48 Ω  rn 0.48 Ω  r2 0.80 Ω
        R1+R2        0.32 Ω
      }
    }
    way 3 ring "Kitchen" {
      dead 2026-03-04 {
        ends         r1 0.36 Ω  rn 0.36 Ω  r2 0.60 Ω
        R1+R2        0.24 Ω
      }
    }
  }
}`,
    },
  ],
  check({ studies }, report) {
    const rings = studies.flatMap((study) => {
      const { ends, values } = studyRing(study);
      return study.isRing && ends && values.r1 && values.r2 && recordedR1R2(study) ? [{ study, ends }] : [];
    });
    const [first, ...others] = rings;
    const { alikeRings } = deadTestPractice;
    if (!first || rings.length < alikeRings.value || !rings.every(({ study }) => workedBack(study))) return;
    report(factSpot(first.ends), {
      message: `r1 and r2 of all ${rings.length} rings are exactly 1.5 and 2.5 × R1+R2: were the ends measured, or calculated?`,
      value: amount(rings.length, "rings"),
      steps: [remark(`r1 = 1.5 × (R1+R2) and r2 = 2.5 × (R1+R2), to the digit, on ${rings.length} rings`)],
      source: alikeRings.source,
      related: others.map(({ ends, study }) => relatedFact(ends, `Way ${study.way.id}: the same exact multiples.`)),
    });
  },
});

function workedBack(study: WayStudy): boolean {
  const recorded = recordedR1R2(study);
  const { values } = studyRing(study);
  return (["r1", "r2"] as const).every((end) => {
    const quantity = values[end]?.quantity;
    return (
      quantity !== undefined &&
      recorded !== undefined &&
      quantity.value === round(shares[end] * recorded.quantity.value, quantity.decimals)
    );
  });
}
