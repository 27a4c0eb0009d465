import { ohms } from "../../calc/result.ts";
import { rcdName } from "../../circuit/describe.ts";
import { quantityOf } from "../../model/values.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-over-rcd-limit",
  severity: "error",
  since: "0.1",
  title: "Zs is higher than the RCD allows.",
  why: "Before the RCD trips, more than 50 V could remain on exposed metal. Improve the electrode, or fit an RCD of lower IΔn.",
  opens: true,
  clauses: ["411.5.3"],
  examples: [
    {
      setting: { stage: "tested", supply: "earthing TT\nIpf 1.2 kA" },
      bad: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 300 mA type A
  live 2026-03-05 {
    Zs           182 Ω
                 ^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 100 mA type A
  live 2026-03-05 {
    Zs           182 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", supply: "earthing TT\nIpf 1.2 kA" },
      bad: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 300 mA type A
  live 2026-03-05 {
    Zs           <182 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 100 mA type A
  live 2026-03-05 {
    Zs           <182 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { Zs, disconnection } = study;
    const reading = Zs && quantityOf(Zs.value);
    if (!Zs || !reading || disconnection?.by !== "rcd" || !disconnection.rcd) return;
    const { limit, rcd } = disconnection;
    if (reading.value <= limit.value && reading.sign !== ">") return;
    const uncertainty = uncertaintyOnWay(study, Zs.fact, reading);
    const name = rcdName(rcd);
    const which = "by the RCD";
    const verdict =
      reading.sign === "<" || (reading.sign === ">" && reading.value < limit.value)
        ? unproven(`Zs ${shown(reading)}`, `the loop is within the ${ohms(limit.value)} of the ${name}`, limit, {
            which,
            sign: reading.sign,
          })
        : {
            message: `Zs ${shown(reading)} is above ${ohms(limit.value)}, the limit for the ${name}: more than 50 V could remain on exposed metal.${withinUncertainty(uncertainty, reading.value - limit.value)}`,
            value: amount(reading.value, "Ω"),
            limit: amountOf(limit, which),
            source: limit.source,
          };
    report(valueSpot(Zs.fact, reading), {
      ...verdict,
      steps: [...limit.steps, ...uncertaintySteps(uncertainty)],
      related: [{ spot: factSpot(rcd.fact), message: `RCD that must disconnect: ${name}.` }],
    });
  },
});
