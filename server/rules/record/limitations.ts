import { latestInspection } from "../../model/inspections.ts";
import { absencesOnBoard, distinctAbsences } from "../../readings/absences.ts";
import { installationRule, valueSpot, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/limitations",
  severity: "information",
  since: "0.1",
  title: "Some tests were not made.",
  why: "Whoever ordered the report has to know how much of it rests on no test, and why. Agree the limitations beforehand and repeat them in the summary.",
  clauses: ["653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
^^^^^^^^^^^^
  standard     BS 7671:2018+A2:2022
  work         existing
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2026-03-05 {
        Zs           LIM "Oven in use, agreed with the owner"
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  work         existing
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
  check({ head, supply, boards }, report) {
    // On new work each of them is an error of its own.
    if (head.facts.one("work")?.args.work.value === "new") return;
    // An inspection states its limitations itself, and with whom they were agreed.
    if (latestInspection(head)?.facts.has("limitation")) return;
    const all = [
      ...(supply ? distinctAbsences(supply) : []),
      ...boards.flatMap(({ board }) => absencesOnBoard(board).flatMap(({ absences }) => absences)),
    ];
    const limited = all.filter(({ value }) => value.absent === "LIM");
    if (limited.length === 0) return;
    report(wordSpot(head.header), {
      message: `${limited.length === 1 ? "One test was" : `${limited.length} tests were`} not made, for the reasons given: agree the limitations with whoever ordered the report.`,
      related: limited.map(({ fact, value }) => ({
        spot: valueSpot(fact, value),
        message: `${fact.word}: ${value.why ?? "no reason given"}`,
      })),
    });
  },
});
