/** The live tests of a circuit, in the order of the trade. */

import { greatestBy } from "../calc/compare.ts";
import { totalLoop } from "../calc/loop-impedance.ts";
import { hasNoLoop } from "../circuit/circuit-kind.ts";
import { readingLimit } from "../circuit/disconnection.ts";
import { ownRcds } from "../circuit/rcds.ts";
import { exactReading } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Fact } from "../model/values.ts";
import { coldBoardImpedance, expectedCircuit, expectedPoint } from "./expected.ts";
import { loopPoints } from "./loop-points.ts";
import { planRcdOfWay } from "./plan-rcd.ts";
import { type Bound, bound, type Expected, expecting, type PlannedTest, recordedAs, word } from "./planned.ts";

/** What is expected is worked out when somebody asks for it, as with the dead tests. */
export function planLive(study: WayStudy): PlannedTest[] {
  if (study.isSpare) return [];
  return [
    ...(study.Zs || !hasNoLoop(study) ? [loop(study)] : []),
    ...loopAtPoints(study),
    ...ownRcds(study).flatMap((rcd) => planRcdOfWay(rcd, study)),
    ...(study.facts.has("afdd")
      ? [word("rcd", "AFDD test button", latestLive(study, "afdd-button"), "afdd-button")]
      : []),
    ...(study.threePhase && study.isFinal
      ? [word("phase-sequence", "Phase sequence", latestLive(study, "phase-sequence"), "phase-sequence")]
      : []),
    ...(study.isFinal
      ? [word("function", "What it serves works as it should", latestLive(study, "function"), "function")]
      : []),
  ];
}

/** The latest statement of a word in the live tests: a later visit for another purpose leaves it standing. */
const latestLive = (study: WayStudy, name: "afdd-button" | "phase-sequence" | "function"): Fact | undefined =>
  study.liveTests.map(({ facts }) => facts.one(name)).find((fact) => fact !== undefined);

function loop(study: WayStudy): PlannedTest {
  return {
    step: "loop",
    live: true,
    get name() {
      return farPoint(study);
    },
    unit: "Ω",
    get expected() {
      return expectedLoop(study);
    },
    bounds: loopBounds(study),
    recorded: recordedAs(study.Zs?.fact, "value"),
  };
}

/**
 * At single points, where somebody chose to read them. The far point decides; elsewhere Zs is calculated from the R1+R2
 * that was read dead, and no live work is asked for.
 */
function loopAtPoints(study: WayStudy): PlannedTest[] {
  return loopPoints(study).map(
    ({ name, fact }): PlannedTest => ({
      step: "loop",
      live: true,
      name: `Zs at ${name}`,
      unit: "Ω",
      get expected() {
        return expectedLoopAt(study, name);
      },
      bounds: loopBounds(study),
      recorded: recordedAs(fact, "Zs"),
      place: name,
    }),
  );
}

/** The point where Zs is read: the one that is drawn farthest, by its name. */
function farPoint(study: WayStudy): string {
  const circuit = expectedCircuit(study);
  const drawn = circuit?.network.drawn && circuit.points.length > 1 ? circuit.points : [];
  const far = greatestBy(drawn, ({ R1R2 }) => R1R2?.value);
  return far ? `Zs, the far point ${far.one.name}` : "Zs, the far point";
}

function expectedLoopAt(study: WayStudy, name: string): Expected | undefined {
  const start = coldBoardImpedance(study.context);
  const R1R2 = expectedPoint(study, name)?.R1R2;
  if (!start || !R1R2) return undefined;
  return expecting(totalLoop(start.value, R1R2.value, start.name), "Ω");
}

/** With the R1+R2 that was read, or before that with the one that length and sizes give. */
function expectedLoop(study: WayStudy): Expected | undefined {
  const start = coldBoardImpedance(study.context);
  const R1R2 = exactReading(study.R1R2)?.value ?? expectedCircuit(study)?.R1R2?.value ?? study.expectedR1R2?.value;
  if (!start || R1R2 === undefined) return undefined;
  return expecting(totalLoop(start.value, R1R2, start.name), "Ω");
}

/** A reading on cold conductors is compared with the cold limit; what an RCD disconnects, with the RCD's. */
export function loopBounds({ disconnection }: WayStudy): Bound[] {
  if (!disconnection) return [];
  const { limit, which } = readingLimit(disconnection);
  return bound("most", limit, "Ω", which);
}
