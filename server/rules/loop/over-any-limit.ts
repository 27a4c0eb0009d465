import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { quantityOf } from "../../model/values.ts";
import { aboveBound, boundWords } from "../../readings/loop-bound.ts";
import { shown } from "../common/dead-words.ts";
import { loopOver } from "../common/loop-over.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/over-any-limit",
  severity: "error",
  since: "0.1",
  title: "Zs is higher than this device could allow.",
  why: "The device's own limit is in no table here, but a smaller one of its kind, or the same one given longer, needs a lower loop than this already. A fault to earth could leave exposed metal live for longer than a person can survive.",
  opens: true,
  clauses: ["411.4.4", "411.3.2"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Cooker and socket" {
  device       BS 88-3 45 A
  serves       cooker sockets
  live 2026-03-05 {
    Zs           1.04 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Cooker and socket" {
  device       BS 88-3 45 A
  serves       cooker sockets
  live 2026-03-05 {
    Zs           0.48 Ω
  }
}`,
    },
    {
      setting: { supply: "earthing TN-S\nsource private\nZe 0.04 Ω\nIpf 5.8 kA" },
      bad: `way 1 feeder "Plant" {
  device       BS 88-2 315 A
  cable        armoured  line 120 mm²  cpc-by armour  cores 4
  length       400 m
  ^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 feeder "Plant" {
  device       BS 88-2 315 A
  cable        armoured  line 120 mm²  cpc-by armour  cores 4
  length       40 m
}`,
    },
  ],
  check(study, report) {
    const { device } = study;
    const above = aboveBound(study);
    if (!above || !device) return;
    const { loop, reading, bound } = above;
    const [length] = study.length?.facts ?? [];
    const read = reading && quantityOf(reading.value);
    const over = loopOver(study, device, loop, bound.limit);
    const words = read ? `Zs ${shown(read)}` : `The calculated Zs of ${ohms(loop.value)} warm`;
    report(reading && read ? valueSpot(reading.fact, read) : factSpot(length ?? device.fact), {
      ...over.report,
      message: `${words} is above the ${boundWords(bound)}, and this ${deviceName(device)} device allows no more: ${over.words}.`,
    });
  },
});
