/** The live tests of a circuit, in the order of the trade. */

import { totalLoop } from "../calc/loop-impedance.ts";
import { rcdLimit } from "../calc/practice.ts";
import { rcdTime } from "../calc/rcd-time.ts";
import { milliamps, plain } from "../calc/result.ts";
import { rcdName } from "../circuit/describe.ts";
import { readingLimit } from "../circuit/disconnection.ts";
import { isOwnRcd } from "../circuit/rcds.ts";
import { exactReading } from "../circuit/supply.ts";
import type { Rcd, WayStudy } from "../circuit/way.ts";
import type { Fact, FactOf } from "../model/values.ts";
import type { Edition } from "../tables/editions.ts";
import { coldBoardImpedance, expectedCircuit, expectedPoint } from "./expected.ts";
import { loopPoints } from "./loop-points.ts";
import { type Bound, bound, type Expected, expecting, type PlannedTest, recordedAs } from "./planned.ts";

export function planLive(study: WayStudy): PlannedTest[] {
  if (study.isSpare) return [];
  const live = study.live?.facts;
  return [
    loop(study),
    ...loopAtPoints(study),
    ...study.rcds
      .filter(isOwnRcd)
      .flatMap((rcd) => planRcd(rcd, study.context.edition, live?.all("rcd") ?? [], live?.one("test-button"))),
    ...(study.facts.has("afdd") ? [word("rcd", "AFDD test button", live?.one("afdd-button"), "afdd-button")] : []),
    ...(study.threePhase && study.isFinal
      ? [word("phase-sequence", "Phase sequence", live?.one("phase-sequence"), "phase-sequence")]
      : []),
    ...(study.isFinal
      ? [word("function", "What it serves works as it should", live?.one("function"), "function")]
      : []),
  ];
}

/** A test whose answer is a word. */
export const word = (step: PlannedTest["step"], name: string, fact: Fact | undefined, write?: string): PlannedTest => ({
  step,
  live: true,
  name,
  write,
  unit: "",
  bounds: [],
  recorded: recordedAs(fact, "verdict"),
});

function loop(study: WayStudy): PlannedTest {
  return {
    step: "loop",
    live: true,
    name: farPoint(study),
    unit: "Ω",
    expected: expectedLoop(study),
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
      expected: expectedLoopAt(study, name),
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
  const [far] = drawn.toSorted((one, other) => (other.R1R2?.value ?? 0) - (one.R1R2?.value ?? 0));
  return far ? `Zs, the far point ${far.name}` : "Zs, the far point";
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

type RcdFact = FactOf<"live", "rcd">;

/** The times an edition asks of an RCD, then its button. */
export function planRcd(
  rcd: Rcd,
  edition: Edition | undefined,
  facts: readonly RcdFact[],
  button: Fact | undefined,
): PlannedTest[] {
  const additional = rcd.sensitivity <= rcdLimit("additional").value && !rcd.delayed;
  const name = rcdName(rcd);
  const asked = (additional ? [0.5, 1, 5] : [1]).flatMap((multiple) => {
    const window = edition && rcdTime({ standard: rcd.standard, delayed: rcd.delayed, multiple, edition });
    return window?.required ? [{ multiple, window }] : [];
  });
  const times = (asked.length > 0 ? asked : [{ multiple: 1, window: undefined }]).map(
    ({ multiple, window }): PlannedTest => {
      const fact = facts.find((one) => one.args.multiple?.value === multiple);
      return {
        step: "rcd",
        live: true,
        name: `${name} at ${multiple === 0.5 ? "½" : plain(multiple)} × IΔn`,
        unit: multiple < 1 ? "" : "ms",
        bounds: [
          ...bound("least", window?.least, "ms").map((one) =>
            multiple < 1 ? { ...one, text: `no trip within ${one.text.replace("at least ", "")}` } : one,
          ),
          ...bound("most", window?.greatest, "ms"),
        ],
        write: `rcd ${milliamps(rcd.sensitivity)} ${plain(multiple)}x`,
        recorded: recordedAs(fact, "time") ?? recordedAs(fact, "noTrip"),
      };
    },
  );
  return [...times, word("rcd", `Test button, ${name}`, button, "test-button")];
}
