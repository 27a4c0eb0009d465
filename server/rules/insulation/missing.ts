import { gradeOfMissing } from "../../circuit/describe.ts";
import { deadTestsDue } from "../../circuit/supply.ts";
import { hasDead, onlyStated } from "../../readings/dead.ts";
import { boardInsulation } from "../../readings/insulation.ts";
import { notReadWords, relatedFact } from "../common/dead-words.ts";
import { factSpot, wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "insulation/missing",
  severity: "error",
  since: "0.1",
  title: "Insulation resistance is not recorded.",
  why: "Damaged insulation is found either by the test or by the first fault. Test between all conductors and to earth before energising, or record what prevented it.",
  opens: true,
  clauses: ["643.3"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 radial "Lights" {
^^^
  dead 2026-03-04 {
    R1+R2        0.61 Ω
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    R1+R2        0.61 Ω
    insulation   500 V LIM "Live supply could not be interrupted, agreed with the client"
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare || study.isBare || !deadTestsDue(study)) return;
    const stated = onlyStated(study, ["insulation"]);
    if (stated && !boardInsulation(study.context)) {
      report(factSpot(stated), {
        ...gradeOfMissing(study),
        message: `Insulation resistance is ${notReadWords(stated)}, not measured: test between all conductors and to earth.`,
      });
      return;
    }
    if (hasDead(study, "insulation") || boardInsulation(study.context)) return;
    report(wordSpot(study.way.header), {
      ...gradeOfMissing(study),
      message: "Insulation resistance is not recorded: test between all conductors and to earth.",
      related: study.dead ? [relatedFact(study.dead.header, "The latest dead tests.")] : [],
    });
  },
});
