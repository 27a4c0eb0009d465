import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { ReadingAt } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { isAbsent, quantityOf } from "../../model/values.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-over-limit",
  severity: "error",
  since: "0.1",
  title: "Zs is higher than the device allows.",
  why: "A fault to earth could leave exposed metal live for longer than a person can survive. Look for a poor joint first; then consider a larger cable, a device of another type, or an RCD as the means of disconnection.",
  opens: true,
  clauses: ["411.4.4", "411.3.2"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           1.52 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           <2.00 Ω
                 ^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           <0.62 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { disconnection, device } = study;
    const Zs = latestRead(study);
    const reading = Zs && quantityOf(Zs.value);
    if (!Zs || !reading || disconnection?.by !== "overcurrent" || !device) return;
    const { limit } = disconnection;
    if (reading.value <= limit.value && reading.sign !== ">") return;
    // Where an RCD clears the fault anyway, another check speaks of relying on it.
    if (reading.sign === "=" && rcdDisconnects(study, reading.value)) return;
    const name = deviceName(device);
    const related = [{ spot: factSpot(device.fact), message: `Protective device: ${name}.` }];
    if (reading.sign === "<" || (reading.sign === ">" && reading.value < limit.value)) {
      report(valueSpot(Zs.fact, reading), {
        ...unproven(
          `Zs ${shown(reading)}`,
          `the loop is within the ${ohms(limit.value)} of the ${name} device`,
          limit,
          { which: "hot", sign: reading.sign },
        ),
        related,
      });
      return;
    }
    const uncertainty = uncertaintyOnWay(study, Zs.fact, reading);
    report(valueSpot(Zs.fact, reading), {
      message: `Zs ${shown(reading)} is above ${ohms(limit.value)}, the limit for the ${name} device: it would not disconnect in time.${withinUncertainty(uncertainty, reading.value - limit.value)}${Zs === study.Zs ? "" : " It could not be read again since."}`,
      value: amount(reading.value, "Ω"),
      limit: amountOf(limit, "hot"),
      steps: [...limit.steps, ...uncertaintySteps(uncertainty)],
      source: limit.source,
      related,
    });
  },
});

/** A day on which Zs could not be read leaves the earlier reading standing. */
function latestRead({ Zs, liveTests }: WayStudy): Pick<ReadingAt, "value" | "fact"> | undefined {
  if (!Zs || !isAbsent(Zs.value)) return Zs;
  const fact = liveTests.flatMap(({ facts }) => facts.one("Zs") ?? []).find(({ args }) => !isAbsent(args.value));
  return fact && { value: fact.args.value, fact };
}
