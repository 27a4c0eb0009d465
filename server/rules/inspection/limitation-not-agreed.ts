import { latestInspection } from "../../model/inspections.ts";
import { absencesOnBoard } from "../../readings/absences.ts";
import { wordsAfter } from "../common/writing.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

export default installationRule({
  id: "inspection/limitation-not-agreed",
  severity: "warning",
  since: "0.1",
  title: "It is not stated who agreed a limitation.",
  why: "What is left out of an inspection is agreed with whoever ordered it, before it begins. The report names the limitation, the reason and the person.",
  clauses: ["653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  work         existing
  inspection periodic 2026-03-05 {
    limitation   agreed "Freezer circuits not isolated"  why "Stock would spoil"
    ^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  work         existing
  inspection periodic 2026-03-05 {
    limitation   agreed "Freezer circuits not isolated"  why "Stock would spoil"  with "The manager"
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  work         existing
  inspection periodic 2026-03-05 {
  ^^^^^^^^^^
    extent       "All circuits"
  }
  board A {
    way 1 radial "Oven" {
      live 2026-03-05 {
        Zs           LIM "Oven in use all day"
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  work         existing
  inspection periodic 2026-03-05 {
    limitation   operational  board A  way 1 "Zs of the oven"  why "Oven in use all day"  with "The cook"
  }
  board A {
    way 1 radial "Oven" {
      live 2026-03-05 {
        Zs           LIM "Oven in use all day"
      }
    }
  }
}`,
    },
  ],
  check({ head, boards }, report) {
    const inspection = latestInspection(head);
    if (inspection?.kind !== "periodic") return;
    const lines = inspection.facts.all("limitation");
    for (const line of lines)
      if (line.args.kind.value === "agreed" && !line.args.with)
        report(wordSpot(line), {
          message: "An agreed limitation names the person it was agreed with: write “with” and who.",
          fixes: wordsAfter(line, 'with "…"'),
        });
    if (lines.length > 0 || inspection.facts.isUnread("limitation")) return;
    const limited = boards.flatMap(({ board }) =>
      absencesOnBoard(board).flatMap(({ absences }) => absences.filter(({ value }) => value.absent === "LIM")),
    );
    const [first] = limited;
    if (!first) return;
    report(wordSpot(inspection.header), {
      message: `${limited.length === 1 ? "A test is" : `${limited.length} tests are`} left out as LIM, but this inspection has no limitation: state it, why, and who agreed.`,
      related: [{ spot: wordSpot(first.fact), message: "The first of them." }],
    });
  },
});
