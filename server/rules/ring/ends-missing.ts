import { gradeOfMissing } from "../../circuit/describe.ts";
import { deadTestsDue } from "../../circuit/supply.ts";
import { hasDead, latestDead } from "../../readings/dead.ts";
import { factSpot, wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "ring/ends-missing",
  severity: "error",
  since: "0.1",
  title: "The end-to-end readings of a ring are missing.",
  why: "Only the end-to-end readings of all three conductors prove that a ring is continuous. Without them a break stays hidden: every point still works, on half the cable. Isolate and measure r1, rn and r2 with the legs separated at the board.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 ring "Sockets" {
^^^
  dead 2026-03-04 {
    R1+R2        0.29 Ω
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
      setting: { stage: "dead-tested" },
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  dead 2026-03-04 {
    ends         r1 0.44 Ω  rn 0.44 Ω  r2 LIM "Screen not accessible at the far board, agreed with the client"
  }
}`,
    },
  ],
  check(study, report) {
    const { way, cable } = study;
    if (!study.isRing || study.isBare || !deadTestsDue(study)) return;
    const latest = latestDead(study, "ends");
    if (!latest) {
      if (hasDead(study, "ends")) return;
      report(wordSpot(way.header), {
        ...gradeOfMissing(study),
        message:
          "This ring has no end-to-end readings, so it is not proved continuous: isolate, and measure r1, rn and r2 at the board.",
        related: (study.dead ? [study.dead.header] : []).map((fact) => ({
          spot: factSpot(fact),
          message: "The latest dead tests.",
        })),
      });
      return;
    }
    const { fact } = latest;
    if (fact.args.r2 === undefined && cable?.cpc !== undefined) {
      report(factSpot(fact), {
        ...gradeOfMissing(study),
        message: "The protective conductor was not measured end to end: measure r2, which earths every point.",
      });
    }
  },
});
