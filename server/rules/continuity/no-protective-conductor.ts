import { workOf } from "../../circuit/supply.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/no-protective-conductor",
  severity: "error",
  since: "0.1",
  title: "A circuit without a protective conductor that is not limited to class II equipment.",
  why: "Metal switches and lights on such a circuit become live in a fault and stay so. A protective conductor runs to every point; where an old circuit has none, only class II equipment may be on it, and the board says so.",
  clauses: ["411.3.1.1", "412.2.3.2"],
  examples: [
    {
      bad: `way 1 radial "Old lights" {
  cable   singles line 1.5 mm² cpc-by none
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves  lighting
}`,
      good: `way 1 radial "Old lights" {
  cable     singles line 1.5 mm² cpc-by none
  class-II  "Plastic accessories and class II lights only; label at the board"
  serves    lighting
}`,
    },
  ],
  check(study, report) {
    const { cable, facts } = study;
    if (cable?.cpcBy !== "none" || study.isSpare || study.uses.has("selv") || facts.has("class-II")) return;
    report(factSpot(cable.fact), {
      message: `This circuit has no protective conductor, and nothing limits it to class II equipment. ${workOf(study.context) === "existing" ? "Run one, or make sure of class II throughout and say so with class-II." : "Run one to every point."}`,
      related: facts.one("serves")
        ? [{ spot: factSpot(facts.one("serves") ?? cable.fact), message: "What it serves." }]
        : [],
    });
  },
});
