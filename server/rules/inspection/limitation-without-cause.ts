import { inspectionsOf } from "../../model/inspections.ts";
import type { Fact } from "../../model/values.ts";
import { type AbsenceAt, absencesOnBoard, distinctAbsences } from "../../readings/absences.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

/** What people write where they have no cause. Want of time is none: the extent is agreed before the work begins. */
const noCause =
  /^\W*$|^.{1,2}$|^(?:no|not enough|lack of|short of|ran out of) time\b|^(?:n ?\/ ?a|none|not (?:done|tested|applicable|required)|lim(?:itation|ited)?|tb[acd]|to ?do|as agreed|agreed|unknown|x+)\W*$/i;

export default installationRule({
  id: "inspection/limitation-without-cause",
  severity: "warning",
  since: "0.1",
  title: "A limitation gives no cause.",
  why: "A limitation says what prevented the test, so that the reader can judge what rests on nothing and the next inspector can prepare. Want of time, or “agreed”, is no such cause: state what could not be opened, isolated or reached.",
  clauses: ["653.2"],
  examples: [
    {
      setting: { stage: "tested", work: "existing" },
      bad: `way 1 radial "Freezers" {
  live 2026-03-05 {
    Zs           LIM "no time"
                 ^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Freezers" {
  live 2026-03-05 {
    Zs           LIM "Plugs behind the cabinets, no access"
  }
}`,
    },
  ],
  check({ head }, report) {
    const supply = head.facts.one("supply")?.inner;
    if (supply) checkAll(distinctAbsences(supply), report);
    for (const { facts } of inspectionsOf(head)) {
      checkAll(distinctAbsences(facts), report);
      for (const line of facts.all("limitation"))
        if (noCause.test(line.args.why.value.trim()))
          report(valueSpot(line, line.args.why), { message: messageOf(line.args.why.value) });
    }
  },
  checkBoard({ board }, report) {
    for (const { absences } of absencesOnBoard(board)) checkAll(absences, report);
  },
});

function checkAll(absences: readonly AbsenceAt[], report: Reporter): void {
  const said = new Map<Fact, string>();
  for (const { fact, value } of absences) {
    if (value.absent !== "LIM" || value.why === undefined || !noCause.test(value.why.trim())) continue;
    // A line that gives the same cause for each of its readings is asked once.
    if (said.get(fact) === value.why) continue;
    said.set(fact, value.why);
    report(valueSpot(fact, value), { message: messageOf(value.why) });
  }
}

const messageOf = (why: string): string =>
  `“${why}” is no cause of a limitation: state what could not be opened, isolated or reached.`;
