import { ohms, step } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { readingLimit } from "../../circuit/disconnection.ts";
import { quantityOf } from "../../model/values.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-over-cold-limit",
  severity: "warning",
  since: "0.1",
  title: "Zs measured cold may exceed its limit when the conductors are warm.",
  why: "The tabulated limit is for conductors at their working temperature; at the temperature of the test copper reads about a sixth less. Record the temperature of the conductors for a closer comparison, or reduce the loop impedance.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           1.20 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    Zs           1.09 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    temperature  10 °C
    Zs           1.12 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  live 2026-03-05 {
    temperature  20 °C
    Zs           1.12 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { Zs, disconnection, device } = study;
    const reading = Zs && quantityOf(Zs.value);
    if (!Zs || !reading || reading.sign !== "=" || !disconnection?.cold || !device) return;
    const { limit, cold } = disconnection;
    const { limit: held, which } = readingLimit(disconnection);
    if (reading.value > limit.value || reading.value <= held.value) return;
    const others = [...(cold.corrected ? [cold] : []), ...cold.others].map((style) =>
      step(style.style, "", ohms(style.value)),
    );
    const uncertainty = uncertaintyOnWay(study, Zs.fact, reading);
    report(valueSpot(Zs.fact, reading), {
      message: `Zs ${ohms(reading.value)} is within ${ohms(limit.value)}, but above ${ohms(held.value)} for a cold reading (${(cold.corrected ?? cold).style}): warm, it may exceed the limit.${withinUncertainty(uncertainty, reading.value - held.value)}`,
      value: amount(reading.value, "Ω"),
      limit: amountOf(held, which),
      steps: [...held.steps, ...others, ...uncertaintySteps(uncertainty)],
      source: held.source,
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    });
  },
});
