import { testName } from "../../../grammar/readings.ts";
import { workOf } from "../../circuit/supply.ts";
import { asBlock } from "../../model/values.ts";
import { type AbsenceAt, absencesOnBoard, distinctAbsences } from "../../readings/absences.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/limitation-on-new",
  severity: "error",
  since: "0.1",
  title: "A test is left out on new work.",
  why: "A limitation is for an installation already in service. New work can be tested in full, and is not certified without it.",
  clauses: ["641.1", "643.1", "644.1"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Oven" {
  live 2026-03-05 {
    Zs           LIM "Oven could not be moved, agreed with the owner"
                 ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Oven" {
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
  ],
  check({ head, supply: facts }, report) {
    // The supply of an addition was there before it.
    const supply = head.facts.one("work")?.args.work.value === "new" ? head.facts.one("supply")?.inner : undefined;
    if (!supply) return;
    // Where an electrode was read in its place, the loop of a TT supply is one of two ways to the same figure.
    const byElectrode = facts?.one("earthing")?.args.system.value === "TT" && facts.has("electrode");
    const absences = distinctAbsences(supply).filter(({ fact }) => !(byElectrode && fact.word === "Ze"));
    checkAll("new", absences, report);
  },
  checkBoard({ board, context }, report) {
    for (const { facts, absences } of absencesOnBoard(board)) {
      const ofBoard = facts === board.head.facts;
      checkAll(ofBoard ? workOf(context) : workOf({ context, facts: asBlock<"way">(facts) }), absences, report);
    }
  },
});

function checkAll(work: string | undefined, absences: readonly AbsenceAt[], report: Reporter): void {
  if (work !== "new" && work !== "addition") return;
  for (const { fact, value } of absences) {
    if (value.absent !== "LIM") continue;
    report(valueSpot(fact, value), {
      message:
        work === "new"
          ? `New work cannot have a limitation: complete the test of ${testName(fact.word)} before it is certified.`
          : `A limitation on ${testName(fact.word)} of an addition: new circuits must be tested. Is this circuit part of the old work?`,
      ...(work === "new" ? {} : { severity: "warning" as const }),
    });
  }
}
