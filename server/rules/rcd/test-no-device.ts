import { rcdsOfBoard } from "../../circuit/rcds.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { isAbsent } from "../../model/values.ts";
import { liveOfBoard, type RcdTest, rcdTestsOfBoard, rcdTestsOfWay } from "../../readings/rcd-tests.ts";
import { type BoardSubject, boardRule, type Reporter, wordSpot } from "../frame/rule.ts";

/** N/A and LIM say that none was tested. */
const isTest = ({ fact }: RcdTest): boolean => !isAbsent(fact.args.time);

/** Whether a line that could not be read, or a name that nothing defines, may be the RCD. */
const mayBeHidden = ({ facts, context }: WayStudy): boolean =>
  (["device", "rcd", "behind"] as const).some((word) => facts.isUnread(word)) ||
  facts.has("behind") ||
  (["rcd", "main-switch"] as const).some((word) => context.board.facts.isUnread(word));

function boardHasRcd({ context, studies }: BoardSubject): boolean {
  const broken = (["rcd", "main-switch"] as const).some((word) => context.board.facts.isUnread(word));
  return broken || rcdsOfBoard(context.board).length > 0 || studies.some((study) => study.rcds.length > 0);
}

const pointOf = ({ fact }: RcdTest): string | undefined => fact.args.point?.value;
const atBoard = (study: WayStudy): RcdTest[] => rcdTestsOfWay(study).filter((test) => pointOf(test) === undefined);

/** Tests at an outlet that no line says has an RCD. */
function checkOutlets(study: WayStudy, report: Reporter): void {
  if (study.facts.isUnread("outlet-rcd")) return;
  const unknown = rcdTestsOfWay(study).filter((test) => pointOf(test) !== undefined && !test.device && isTest(test));
  for (const test of unknown.filter((one, at) => unknown.findIndex((other) => pointOf(other) === pointOf(one)) === at))
    report(wordSpot(test.fact), {
      message: `No RCD is described at ${pointOf(test)}: write outlet-rcd ${pointOf(test)} with its standard, rating and type.`,
    });
}

export default boardRule({
  id: "rcd/test-no-device",
  severity: "warning",
  since: "0.1",
  title: "An RCD test is recorded where the schedule shows no RCD.",
  why: "Either the device is missing from the schedule or the test belongs to another way. A device that is not described cannot be judged.",
  clauses: ["514.9.1", "643.8"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
    ^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  run          A 7 m S1 6 m S2
  live 2026-03-05 {
    rcd          at S2 30 mA 1x 24.1 ms
    ^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  run          A 7 m S1 6 m S2
  outlet-rcd S2 BS 7288 13 A 30 mA type A
  live 2026-03-05 {
    rcd          at S2 30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check(subject, report) {
    for (const study of subject.studies) {
      checkOutlets(study, report);
      if (study.rcds.length > 0 || mayBeHidden(study)) continue;
      for (const { fact } of atBoard(study).filter(isTest).slice(0, 1))
        report(wordSpot(fact), {
          message: `Way ${study.way.id} has an RCD test but no RCD in the schedule: describe the device, or move the test to its way.`,
        });
    }
    if (liveOfBoard(subject.context).length === 0 || boardHasRcd(subject)) return;
    for (const { fact } of rcdTestsOfBoard(subject.context).filter(isTest).slice(0, 1))
      report(wordSpot(fact), {
        message: `Board ${subject.board.head.name} has an RCD test but no RCD in the schedule: describe it with an rcd line or on the main switch.`,
      });
  },
});
