import { coldLimit } from "../../calc/cold-limit.ts";
import { loopLimit } from "../../calc/loop-limit.ts";
import { ohms } from "../../calc/result.ts";
import { exactReading, premisesOf } from "../../circuit/supply.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/type-b-would-do",
  severity: "information",
  since: "0.1",
  title: "A type C or D device in a dwelling, where Zs suits a type B only.",
  why: "A type C device allows half the loop impedance of a type B, and a type D a quarter. Few loads in a dwelling need one.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested", premises: "dwelling" },
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 C32 6 kA 30 mA type A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves       sockets
  live 2026-03-05 {
    Zs           0.71 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
  live 2026-03-05 {
    Zs           0.71 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { device, disconnection, disconnectionTime, context, supply } = study;
    const Zs = exactReading(study.Zs);
    const curve = device?.fact.args.curve;
    if (!Zs || !device?.rating || !curve || device.curve === "B" || premisesOf(context) !== "dwelling") return;
    if (!disconnection?.cold || !disconnectionTime || !context.edition || !study.servesSockets) return;
    if (Zs.value <= disconnection.cold.value) return;
    const { standard, rating } = device;
    const time = disconnectionTime.value;
    const other = loopLimit({ standard, rating, curve: "B", time, U0: supply.U0, edition: context.edition });
    const limit = other && coldLimit(other);
    if (!limit || Zs.value > limit.value) return;
    report(factSpot(device.fact), {
      message: `Zs ${ohms(Zs.value)} cold is too high for type ${device.curve}; type B would allow ${ohms(limit.value)}. Does a load here need type ${device.curve}?`,
      value: amount(Zs.value, "Ω"),
      limit: amountOf(limit),
      steps: limit.steps,
      source: limit.source,
      related: [{ spot: factSpot(Zs.fact), message: `Zs ${ohms(Zs.value)}.` }],
      fixes: [inPlaceOf(curve, `B${rating}`, `Make the device B${rating}`)],
    });
  },
});
