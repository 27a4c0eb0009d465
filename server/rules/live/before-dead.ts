import { workOf } from "../../analysis/supply.ts";
import { valueSpot, wayRule } from "../rule.ts";

export default wayRule({
  id: "live/before-dead",
  severity: "warning",
  since: "0.1",
  title: "A live test before the first dead test.",
  why: "New wiring is proved dead first: continuity, insulation and polarity are what make it safe to switch on. Either a date is wrong, or the circuit was energised untested.",
  clauses: ["643.1", "643.2"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  dead 2026-03-05 {
    R1+R2  0.31 Ω
  }
  live 2026-03-04 {
       ^^^^^^^^^^
    Zs  0.62 Ω
  }
}`,
      good: `way 1 radial "Water heater" {
  dead 2026-03-04 {
    R1+R2  0.31 Ω
  }
  live 2026-03-05 {
    Zs  0.62 Ω
  }
}`,
    },
  ],
  check({ deadTests, liveTests, facts, context }, report) {
    // What is in service already is often measured live before it is switched off.
    if (workOf(context) === "existing" || facts.broken.includes("dead")) return;
    const firstDead = deadTests.at(-1);
    const firstLive = liveTests.at(-1);
    if (!firstDead?.on || !firstLive?.on || firstLive.on >= firstDead.on) return;
    const header = facts.all("live").find((fact) => fact === (firstLive.header as unknown));
    const dead = facts.all("dead").find((fact) => fact === (firstDead.header as unknown));
    if (!header || !dead) return;
    report(valueSpot(header, header.args.on), {
      message: `Live tests on ${firstLive.on}, before the first dead tests on ${firstDead.on}. Which date is right?`,
      related: [{ spot: valueSpot(dead, dead.args.on), message: "The first dead tests." }],
    });
  },
});
