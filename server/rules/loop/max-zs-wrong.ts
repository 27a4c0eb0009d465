import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { isLimit, likenessOf } from "../../circuit/stated-limit.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/max-zs-wrong",
  severity: "warning",
  since: "0.1",
  title: "The maximum Zs written on the record is not the one that applies.",
  why: "The next person compares the reading with it. The 80 % figure, an older table and another type of device are the usual mistakes.",
  clauses: ["411.4.4"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B32 6 kA
  max-Zs       1.44 Ω
               ^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B32 6 kA
  max-Zs       1.37 Ω
}`,
    },
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 C32 6 kA
  max-Zs       1.37 Ω
               ^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 C32 6 kA
  max-Zs       0.68 Ω
}`,
    },
    {
      setting: { supply: "earthing TT\nIpf 1.2 kA" },
      bad: `way 1 radial "Heater" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  max-Zs       1.37 Ω
               ^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  max-Zs       1667 Ω
}`,
    },
  ],
  check(study, report) {
    const stated = study.facts.one("max-Zs")?.args.value;
    const fact = study.facts.one("max-Zs");
    const { disconnection, device, overcurrentLimit } = study;
    if (!stated || !fact || !disconnection || !device) return;
    const { limit } = disconnection;
    const right =
      disconnection.by === "overcurrent" && overcurrentLimit
        ? isLimit(stated.value, overcurrentLimit)
        : Math.abs(stated.value - limit.value) <= limit.value * rounding;
    if (right) return;
    const likeness = likenessOf(study, stated.value);
    // A stricter figure of the designer's own endangers nobody; only a known mistake is named.
    if (stated.value < limit.value && !likeness && disconnection.by === "overcurrent") return;
    const written = `${limit.value} Ω`;
    report(valueSpot(fact, stated), {
      message: `The limit for Zs with the ${deviceName(device)} device is ${ohms(limit.value)}, not ${ohms(stated.value)}${likeness ? `: that is ${likeness}` : ""}.`,
      value: amount(stated.value, "Ω"),
      limit: amountOf(limit),
      least: stated.value < limit.value,
      steps: limit.steps,
      source: limit.source,
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
      fixes: [inPlaceOf(stated, written, `Write ${written}`)],
    });
  },
});

/** 1667 Ω is also met as 1666 Ω or 1670 Ω. */
const rounding = 0.005;
