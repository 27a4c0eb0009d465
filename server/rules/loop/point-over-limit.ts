import { ohms } from "../../calc/result.ts";
import { readingLimit, serviceLimit } from "../../circuit/disconnection.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Fact, type Quantity, quantityOf } from "../../model/values.ts";
import { boundedOnLines, readOnLines } from "../../readings/lines.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { boundedLoopPoints, standingLoopPoints } from "../../readings/loop-points.ts";
import { isOpenLoop } from "../../readings/open-conductor.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/point-over-limit",
  severity: "error",
  since: "0.1",
  title: "Zs at a point or on a line is higher than the circuit's limit.",
  why: "Every point and every line of a circuit must be disconnected in time, not only the one recorded for the whole.",
  opens: true,
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    Zs           0.62 Ω
    at S2        Zs 1.61 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    Zs           0.62 Ω
    at S2        Zs 0.61 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    at S2        Zs 1.20 Ω
                    ^^^^^^
  }
}`,
      good: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    at S2        Zs 1.00 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.48 Ω L1 0.48 Ω L2 >19.9 Ω L3 0.47 Ω
                                     ^^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.48 Ω L1 0.48 Ω L2 0.46 Ω L3 0.47 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    Zs           0.62 Ω
    at S2        Zs <20 Ω
                    ^^^^^
  }
}`,
      good: `way 1 radial "Bench" {
  device       BS EN 60898 B32 6 kA
  run          A 9 m S1 8 m S2
  live 2026-03-05 {
    Zs           0.62 Ω
    at S2        Zs <1 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.48 Ω L1 0.48 Ω L2 <19.9 Ω L3 0.47 Ω
                                     ^^^^^^^
  }
}`,
      good: `way 1 radial "Saw" {
  device       BS EN 60898 C16 10 kA
  phase        three
  live 2026-03-05 {
    Zs           0.48 Ω L1 0.48 Ω L2 <0.5 Ω L3 0.47 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { disconnection } = study;
    if (!disconnection) return;
    const { by } = disconnection;
    const service = serviceLimit(disconnection);
    const { limit } = service;
    const reading = readingLimit(disconnection);
    const held = reading.limit;
    const stands = by === "rcd" ? disconnection.rcd?.fact : study.device?.fact;
    for (const { where, fact, Zs } of [...pointsOf(study), ...linesOf(study)]) {
      if (Zs.value <= held.value && Zs.sign === "=") continue;
      const isOver = Zs.sign !== "<" && Zs.value > limit.value;
      const isOpen = Zs.sign === "<" ? Zs.value > limit.value : Zs.sign === ">" && !isOver;
      if (Zs.sign === "<" && !isOpen) continue;
      const byRcd = by === "overcurrent" && isOver && Zs.sign === "=" && rcdDisconnects(study, Zs.value) !== undefined;
      if (byRcd && isOpenLoop(study, Zs.value)) continue;
      const { limit: against, which } = isOver || isOpen ? service : reading;
      const uncertainty = uncertaintyOnWay(study, fact, Zs);
      const read = `Zs ${shown(Zs)} ${where}`;
      const words = isOver
        ? `is above the ${ohms(limit.value)} of this circuit: ${byRcd ? "only the RCD would disconnect" : "a fault there would not be disconnected in time"}`
        : `is above ${ohms(held.value)} for a cold reading: warm, it may exceed the limit`;
      const verdict = isOpen
        ? unproven(read, `the loop is within the ${ohms(limit.value)} of this circuit`, against, {
            which,
            sign: Zs.sign,
          })
        : {
            message: `${read} ${words}.${withinUncertainty(uncertainty, Zs.value - against.value)}`,
            ...(isOver && !byRcd ? {} : { severity: "warning" as const }),
            value: amount(Zs.value, "Ω"),
            limit: amountOf(against, which),
            source: against.source,
          };
      report(valueSpot(fact, Zs), {
        ...verdict,
        steps: [...against.steps, ...uncertaintySteps(uncertainty)],
        related: stands ? [{ spot: factSpot(stands), message: "The device that must disconnect." }] : [],
      });
    }
  },
});

interface Read {
  readonly where: string;
  readonly fact: Fact;
  readonly Zs: Quantity;
}

const pointsOf = (study: WayStudy): Read[] =>
  [...standingLoopPoints(study), ...boundedLoopPoints(study)].map(({ name, fact, Zs }) => ({
    where: `at ${name}`,
    fact,
    Zs,
  }));

/** Lines that read more than is recorded for the circuit, which is judged by itself. */
function linesOf({ Zs }: WayStudy): Read[] {
  const recorded = quantityOf(Zs?.value);
  return [...readOnLines(Zs?.fact), ...boundedOnLines(Zs?.fact)].flatMap(({ name, fact, reading }) =>
    recorded && (reading.value > recorded.value || reading.sign !== recorded.sign)
      ? [{ where: `on ${name}`, fact, Zs: reading }]
      : [],
  );
}
