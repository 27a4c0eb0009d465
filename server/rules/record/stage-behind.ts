import { hasBlock } from "../../circuit/blocks.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/stage-behind",
  severity: "information",
  since: "0.1",
  title: "Tests are recorded beyond the stated stage.",
  why: "A missing test is reported only from its stage on: in a schedule left at the design stage no missing test is reported.",
  clauses: ["644.1"],
  examples: [
    {
      setting: {},
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        installed
               ^^^^^^^^^
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2026-03-05 {
        Zs           0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2026-03-05 {
        Zs           0.62 Ω
      }
    }
  }
}`,
    },
  ],
  check(installation, report) {
    const fact = installation.head.facts.one("stage");
    if (!fact || fact.args.stage.value === "tested") return;
    const live = hasBlock(installation, "live") || hasBlock(installation, "boardLive");
    const dead = hasBlock(installation, "dead") || hasBlock(installation, "boardDead");
    const stage = fact.args.stage.value;
    if (!live && (!dead || stage === "dead-tested")) return;
    const reached = live ? "tested" : "dead-tested";
    report(valueSpot(fact, fact.args.stage), {
      message: `${live ? "Live" : "Dead"} tests are recorded, but the stage is ${stage}: missing tests are reported only from stage ${reached} on.`,
      fixes: [inPlaceOf(fact.args.stage, reached)],
    });
  },
});
