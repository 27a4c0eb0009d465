import { rcdsInWork } from "../../boards/board-rcds.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { ownRcds } from "../../circuit/rcds.ts";
import { isOutsideWork, stageOf } from "../../circuit/supply.ts";
import type { Rcd } from "../../circuit/way.ts";
import type { Facts } from "../../model/values.ts";
import { everyButtonFact, liveOfBoard, rcdLabel } from "../../readings/rcd-tests.ts";
import { type BoardSubject, boardRule, wordSpot } from "../frame/rule.ts";

function devices({ context, studies }: BoardSubject): Rcd[] {
  const blocks = [...liveOfBoard(context), ...studies.flatMap(({ liveTests }) => liveTests)];
  const own = studies.flatMap((study) =>
    study.live && !isOutsideWork(study) && !study.liveTests.some(isUnclear) ? ownRcds(study) : [],
  );
  return [...(blocks.length > 0 && !blocks.some(isUnclear) ? rcdsInWork(context.board, studies) : []), ...own];
}

/** Whether a line was not understood that may be the press: by itself, or behind the test of an RCD. */
const isUnclear = ({ facts }: { readonly facts: Pick<Facts, "broken"> }): boolean =>
  facts.broken.some((word) => word === "test-button" || word === "rcd");

export default boardRule({
  id: "rcd/test-button-missing",
  severity: "error",
  since: "0.1",
  title: "The test button of an RCD is not recorded.",
  why: "The instrument proves the electronics, the button the mechanism, and it is what the user has to press. Press it as well as testing with the instrument, and record the result.",
  clauses: ["643.10"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  ^^^^^^
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    rcd          30 mA 1x 24.1 ms
    test-button  ok
  }
}`,
    },
  ],
  check(subject, report) {
    const { context, studies } = subject;
    if (stageOf(context) !== "tested") return;
    const pressed = everyButtonFact(context, studies);
    // With several RCDs and no name it is not known which button was pressed; asking for one more would mislead.
    if (pressed.some(({ device }) => device === undefined)) return;
    for (const rcd of devices(subject)) {
      if (pressed.some(({ device }) => device?.fact === rcd.fact)) continue;
      report(wordSpot(rcd.fact), {
        ...gradeOfMissing({ installation: context.installation }),
        message: `The test button of ${rcdLabel(rcd)} is not recorded: press it, and write test-button with the result.`,
      });
    }
  },
});
