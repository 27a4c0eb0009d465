import { studyRing } from "../../analysis/ring.ts";
import { ringPattern } from "../../analysis/ring-pattern.ts";
import { relatedFact } from "../dead-words.ts";
import { boardRule, wordSpot } from "../rule.ts";

export default boardRule({
  id: "ring/legs-of-two-rings",
  severity: "information",
  since: "0.1",
  title: "Two rings of one board with the same conductors open.",
  why: "Where the legs of two rings were changed over at the board, each reads open, and the conductor of one closes with the other's. Measure between the rings, change the legs back, and repeat both tests.",
  clauses: ["643.2.1", "314.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  board A "Board" {
    fed-from supply
    way 1 ring "Ground floor" {
      dead 2026-03-04 {
        ends  r1 0.44 Ω rn >99.9 Ω r2 0.73 Ω
        ^^^^
      }
    }
    way 2 ring "First floor" {
      dead 2026-03-04 {
        ends  r1 0.36 Ω rn >99.9 Ω r2 0.60 Ω
      }
    }
  }
}
`,
      good: `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  board A "Board" {
    fed-from supply
    way 1 ring "Ground floor" {
      dead 2026-03-04 {
        ends  r1 0.44 Ω rn 0.45 Ω r2 0.73 Ω
      }
    }
    way 2 ring "First floor" {
      dead 2026-03-04 {
        ends  r1 0.36 Ω rn >99.9 Ω r2 0.60 Ω
      }
    }
  }
}
`,
    },
  ],
  check({ studies }, report) {
    const open = studies.flatMap((study) => {
      const pattern = ringPattern(study);
      const { ends } = studyRing(study);
      return pattern?.kind === "open-ends" && ends ? [{ study, ends, which: pattern.ends.join(" ") }] : [];
    });
    for (const [index, one] of open.entries()) {
      const others = open.slice(index + 1).filter(({ which }) => which === one.which);
      if (others.length === 0 || open.slice(0, index).some(({ which }) => which === one.which)) continue;
      report(wordSpot(one.ends), {
        message: `Way ${one.study.way.id} and way ${others.map(({ study }) => study.way.id).join(", ")} are open in the same conductors (${one.which.replaceAll(" ", ", ")}): have their legs changed places at the board?`,
        related: others.map(({ ends, study }) => relatedFact(ends, `The ends of way ${study.way.id}.`)),
      });
    }
  },
});
