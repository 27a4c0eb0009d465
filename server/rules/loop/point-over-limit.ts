import { ohms } from "../../calc/result.ts";
import { readingLimit, serviceLimit } from "../../circuit/disconnection.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { standingLoopPoints } from "../../readings/loop-points.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/point-over-limit",
  severity: "error",
  since: "0.1",
  title: "Zs at a point is higher than the circuit's limit.",
  why: "Every point of a circuit must be disconnected in time, not only the one recorded for the whole.",
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
    for (const { name, fact, Zs } of standingLoopPoints(study)) {
      if (Zs.value <= held.value) continue;
      const isOver = Zs.value > limit.value;
      const byRcd = by === "overcurrent" && isOver && rcdDisconnects(study, Zs.value) !== undefined;
      const { limit: against, which } = isOver ? service : reading;
      const uncertainty = uncertaintyOnWay(study, fact, Zs);
      const near = withinUncertainty(uncertainty, Zs.value - against.value);
      report(valueSpot(fact, Zs), {
        message: isOver
          ? `Zs at ${name} is ${ohms(Zs.value)}, above the ${ohms(limit.value)} of this circuit: ${byRcd ? "only the RCD would disconnect" : "a fault there would not be disconnected in time"}.${near}`
          : `Zs at ${name} is ${ohms(Zs.value)}, above ${ohms(held.value)} for a cold reading: warm, it may exceed the limit.${near}`,
        ...(isOver && !byRcd ? {} : { severity: "warning" as const }),
        value: amount(Zs.value, "Ω"),
        limit: amountOf(against, which),
        steps: [...against.steps, ...uncertaintySteps(uncertainty)],
        source: against.source,
        related: stands ? [{ spot: factSpot(stands), message: "The device that must disconnect." }] : [],
      });
    }
  },
});
