import { rcdsOfBoard } from "../../circuit/rcds.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { deviceOnWay, rcdLabel } from "../../readings/rcd-tests.ts";
import { capital } from "../../text/words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/test-other-rcd",
  severity: "warning",
  since: "0.1",
  title: "A test on a way names an RCD that does not protect it.",
  why: "Pressed from this circuit, another RCD would not have tripped. Either the name is a slip, and the RCD of this way is untested, or the circuit is connected elsewhere than the schedule states.",
  clauses: ["643.8"],
  examples: [
    {
      setting: {
        stage: "tested",
        board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A\nrcd west BS EN 61008 63 A 30 mA type A",
      },
      bad: `way 1 radial "Bench sockets" {
  device       BS EN 60898 B16 6 kA
  behind       west
  live 2026-03-05 {
    rcd east     30 mA 1x 24.1 ms
        ^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device       BS EN 60898 B16 6 kA
  behind       west
  live 2026-03-05 {
    rcd west     30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare || study.facts.broken.some((word) => word === "behind" || word === "rcd")) return;
    for (const fact of testsNaming(study)) {
      const { name } = fact.args;
      const rcd = deviceOnWay(fact, study);
      if (!name || !rcd || study.rcds.some((one) => one.fact === rcd.fact)) continue;
      const own = rcdsOfBoard(study.context.board).find((one) => study.rcds.some(({ fact }) => fact === one.fact));
      report(valueSpot(fact, name), {
        message: `${capital(rcdLabel(rcd))} does not protect way ${study.way.id}${own ? `: ${rcdLabel(own)} does` : ""}. Correct the name, or where the way is connected.`,
        fixes: own ? [inPlaceOf(name, own.name ?? own.at)] : [],
        related: [{ spot: factSpot(rcd.fact), message: "The RCD that is named." }],
      });
    }
  },
});

const testsNaming = ({ liveTests }: WayStudy) =>
  liveTests.flatMap(({ facts }) => [...facts.all("rcd"), ...facts.all("trip-current"), ...facts.all("test-button")]);
