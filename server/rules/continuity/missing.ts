import { ohms } from "../../calc/result.ts";
import { needsNoCpc } from "../../circuit/circuit-kind.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { deadTestsDue } from "../../circuit/supply.ts";
import { hasDead, onlyStated } from "../../readings/dead.ts";
import { ringPattern } from "../../readings/ring-pattern.ts";
import { highestPoint } from "../../readings/ring-r1r2.ts";
import { notReadWords, relatedFact } from "../common/dead-words.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/missing",
  severity: "error",
  since: "0.1",
  title: "Continuity of the protective conductor is not recorded.",
  why: "Every circuit, a distribution circuit included, needs R1+R2 or R2 measured at its far point. Without it nothing proves that exposed metal at the end of the circuit is earthed.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 radial "Water heater" {
^^^
  dead 2026-03-04 {
    polarity     ok
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R2           0.26 Ω
    polarity     ok
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.41 Ω calculated
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    polarity     ok
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2        0.41 Ω
    polarity     ok
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 feeder "Annexe" {
^^^
  dead 2026-03-04 {
    polarity     ok
  }
}`,
      good: `way 1 feeder "Annexe" {
  dead 2026-03-04 {
    R1+R2        LIM "Annexe locked, access refused by the tenant"
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare || study.isBare || !deadTestsDue(study)) return;
    // A circuit without a protective conductor is reported by itself.
    if (study.cable?.cpcBy === "none" || needsNoCpc(study)) return;
    const stated = onlyStated(study, ["R1+R2", "R2", "ends", "at"]);
    if (stated) {
      report(factSpot(stated), {
        ...gradeOfMissing(study),
        message: `Continuity is ${notReadWords(stated)}, not measured, so the protective conductor is not proved: measure R1+R2 or R2.`,
      });
      return;
    }
    // What is marked as not measured, or not applicable, is reported by other checks.
    if (hasDead(study, "R1+R2") || hasDead(study, "R2")) return;
    const highest = study.isRing && !ringPattern(study) ? highestPoint(study) : undefined;
    if (highest) {
      const line = `R1+R2 ${highest.value.toFixed(2)} Ω`;
      report(wordSpot(study.way.header), {
        ...gradeOfMissing(study),
        message: `R1+R2 is not recorded: the highest reading to earth at the points is ${ohms(highest.value)}, at ${highest.point.name}.`,
        severity: "information",
        related: [relatedFact(highest.point.fact, `Highest reading to earth: ${highest.point.name}.`)],
        fixes: [lineAfter(highest.point.fact, line, `Write ${line}`)],
      });
      return;
    }
    report(wordSpot(study.way.header), {
      ...gradeOfMissing(study),
      message:
        "Neither R1+R2 nor R2 is recorded, so the protective conductor is not proved to the far point: measure one of them.",
      related: study.dead ? [relatedFact(study.dead.header, "The latest dead tests.")] : [],
    });
  },
});
