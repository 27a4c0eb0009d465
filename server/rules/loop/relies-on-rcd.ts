import { exceeds } from "../../calc/compare.ts";
import { ohms } from "../../calc/result.ts";
import { deviceName, rcdName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { quantityOf } from "../../model/values.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { isOpenLoop } from "../../readings/open-conductor.ts";
import { combine } from "../../tables/source.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/relies-on-rcd",
  severity: "warning",
  since: "0.1",
  title: "Zs is higher than the overcurrent device allows: only the RCD would disconnect.",
  why: "It is permitted, but all protection then rests on one device whose button nobody tests. On a TN supply a loop this high is first of all a sign of a poor joint or a circuit that is too long.",
  opens: true,
  clauses: ["411.4.4", "411.4.5"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Outside lights" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           1.52 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Outside lights" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           0.62 Ω
  }
}`,
    },
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Far gate" {
  device       BS EN 61009 C16 6 kA 30 mA type A
  cable        armoured 70 °C  line 2.5 mm²  cpc 2.5 mm²  cores 3
  length       90 m
  live 2026-03-05 {
    Zs           1.55 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Far gate" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        armoured 70 °C  line 2.5 mm²  cpc 2.5 mm²  cores 3
  length       90 m
  live 2026-03-05 {
    Zs           1.55 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", supply: "earthing TN-S\nsource private\nZe 1.6 Ω\nIpf 0.2 kA" },
      bad: `way 1 radial "Fryer" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           1.72 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Fryer" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 {
    Zs           1.72 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { Zs, disconnection, device } = study;
    const reading = Zs && quantityOf(Zs.value);
    if (!Zs || !reading || reading.sign !== "=" || disconnection?.by !== "overcurrent" || !device) return;
    const { limit } = disconnection;
    const byRcd = reading.value > limit.value ? rcdDisconnects(study, reading.value) : undefined;
    if (!byRcd || isOpenLoop(study, reading.value)) return;
    report(valueSpot(Zs.fact, reading), {
      message: `Zs ${ohms(reading.value)} is above ${ohms(limit.value)} for the ${deviceName(device)} device: only the RCD would disconnect. ${cure(study)}`,
      value: amount(reading.value, "Ω"),
      limit: amountOf(limit),
      steps: [...limit.steps, ...byRcd.limit.steps],
      source: combine(limit.source, byRcd.limit.source),
      related: [{ spot: factSpot(byRcd.rcd.fact), message: `RCD that would disconnect: ${rcdName(byRcd.rcd)}.` }],
    });
  },
});

/** Where what feeds the circuit, or its length, has used the limit up, no joint of its own is to blame. */
function cure(study: WayStudy): string {
  const { boardImpedance: board, greatestR1R2: own } = study;
  const limit = study.disconnection?.limit.value;
  if (!board || limit === undefined) return "Look for a poor joint.";
  if (board.value >= limit)
    return `${board.name} is ${ohms(board.value)} already: that is for the supply, and not for this circuit, to put right.`;
  return own && exceeds(board.value + own.value, limit)
    ? `Its length alone gives ${ohms(board.value + own.value)}: fit a larger cable, or a device that trips at less.`
    : "Look for a poor joint.";
}
