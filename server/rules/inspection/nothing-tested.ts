import { workOf } from "../../circuit/supply.ts";
import type { Facts } from "../../model/values.ts";
import { hasResult } from "../../readings/inspection-scope.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "inspection/nothing-tested",
  severity: "warning",
  since: "0.1",
  title: "Every test of a circuit is a limitation.",
  why: "A circuit without one result was not tested, whatever stands in its columns. What can be read without opening or isolating it, such as Zs at an accessory, should be; for the rest state the limitation with who agreed, and recommend further investigation where there is cause.",
  clauses: ["651.2", "653.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Freezers" {
^^^
  dead 2026-03-05 {
    R1+R2        LIM "Could not be isolated, stock in use"
    insulation   500 V LIM "Could not be isolated, stock in use"
  }
  live 2026-03-05 {
    Zs           LIM "Plugs behind the cabinets, no access"
  }
}`,
      good: `way 1 radial "Freezers" {
  dead 2026-03-05 {
    R1+R2        LIM "Could not be isolated, stock in use"
    insulation   500 V LIM "Could not be isolated, stock in use"
  }
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { facts, way, isSpare } = study;
    const work = workOf(study);
    // Of new work each limitation is a fault by itself.
    if (isSpare || work === "new" || work === "addition" || facts.isUnread("dead") || facts.isUnread("live")) return;
    const blocks = [...study.deadTests, ...study.liveTests].flatMap(({ facts: tests }): Facts[] =>
      tests ? [tests] : [],
    );
    const limited = blocks.some(({ list }) => list.some(({ args }) => Object.values(args).some(isLimitation)));
    if (!limited || blocks.some(({ broken }) => broken.length > 0) || blocks.some(hasResult)) return;
    report(wordSpot(way.header), {
      message: `Way ${way.id} has no result at all, every test is a limitation: read what can be read, or state who agreed to leave it untested.`,
    });
  },
});

const isLimitation = (value: unknown): boolean =>
  typeof value === "object" && value !== null && "absent" in value && value.absent === "LIM";
