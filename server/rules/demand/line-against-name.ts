import { lineInName } from "../../model/three-lines.ts";
import { inPlaceOf } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

const sample = (phase: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    phases       three
  }
  board A "Main" {
    fed-from     supply
    way 1L2 radial "Kiln" {
      phase        ${phase}
      Ib           30 A
    }
  }
}`;

export default wayRule({
  id: "demand/line-against-name",
  severity: "warning",
  since: "0.1",
  title: "A way is stated to be on another line than its number says.",
  why: "Whoever isolates by the number on the board expects its line dead. Correct the phase, or the number.",
  clauses: ["314.1", "514.9.1"],
  examples: [
    {
      bad: sample("L1").replace("phase        L1\n", "phase        L1\n                   ^^\n"),
      good: sample("L2"),
    },
  ],
  check(study, report) {
    const { way, facts, boardIsThreePhase } = study;
    const named = lineInName(way.id);
    const fact = facts.one("phase");
    if (!boardIsThreePhase || named === undefined || !fact || fact.args.phase.value === named) return;
    report(valueSpot(fact, fact.args.phase), {
      message: `Way ${way.id} is on ${named} by its number, but its phase is ${fact.args.phase.value}: correct one of them.`,
      fixes: [inPlaceOf(fact.args.phase, named)],
    });
  },
});
