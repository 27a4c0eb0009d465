import { stageOf } from "../../circuit/supply.ts";
import { latestInspection } from "../../model/inspections.ts";
import { circuitIn } from "../../readings/inspection-scope.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "inspection/circuit-not-tested",
  severity: "warning",
  since: "0.1",
  title: "A circuit was not tested at the latest periodic inspection.",
  why: "Whoever reads the report takes every circuit in it for one that was looked at. Test it, or state it as sampled out with the reason, or as a limitation with who agreed.",
  clauses: ["651.2", "653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         existing
  inspection periodic 2026-03-05 {
    extent       "All circuits"
  }
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
    ^^^
      live 2016-03-05 {
        Zs           0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         existing
  inspection initial 2016-03-05 {
    work-done    "New board"
  }
  inspection periodic 2026-03-05 {
    extent       "One circuit in two"
    sampled-out  board A  way 1 "Alike to way 2, which was tested"
  }
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2016-03-05 {
        Zs           0.62 Ω
      }
    }
    way 2 radial "Second oven" {
      live 2026-03-05 {
        Zs           0.60 Ω
      }
    }
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    const inspection = latestInspection(context.installation);
    if (inspection?.kind !== "periodic" || inspection.to === "") return;
    if (!["dead-tested", "tested"].includes(stageOf(context))) return;
    for (const study of studies) {
      const { state, before } = circuitIn(inspection, study);
      if (study.isBare || state !== "missing") continue;
      report(wordSpot(study.way.header), {
        message: `Way ${study.way.id} was not tested at the inspection of ${inspection.to}${before === undefined ? "" : `, last on ${before}`}: test it, or state it as sampled-out or under a limitation.`,
        related: [{ spot: wordSpot(inspection.header), message: `The inspection of ${inspection.to}.` }],
      });
    }
  },
});
