import { exceeds } from "../../calc/compare.ts";
import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { quantityOf } from "../../model/values.ts";
import { designBoardImpedance, designLoop } from "../../readings/loop.ts";
import { leastLoop } from "../../readings/loop-least.ts";
import { shown } from "../common/dead-words.ts";
import { loopOver } from "../common/loop-over.ts";
import { unproven } from "../common/unproven.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/expected-over-limit",
  severity: "error",
  since: "0.1",
  title: "R1+R2 leaves a loop that is too high for the device.",
  why: "Zs is at least what lies before the circuit and its own R1+R2. What the dead tests show already need not wait for a live one: look for a poor joint, a wrong size or a longer cable than was meant before it is energized.",
  opens: true,
  clauses: ["411.4.4", "411.3.2"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  dead 2026-03-04 {
    R1+R2        1.90 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  dead 2026-03-04 {
    R1+R2        0.40 Ω
  }
}`,
    },
    {
      setting: { supply: "earthing TN-S" },
      bad: `way 1 radial "Gate motor" {
  device       BS EN 60898 C20 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
  ^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Gate motor" {
  device       BS EN 60898 B16 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       60 m
}`,
    },
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  dead 2026-03-04 {
    R1+R2        <20 Ω
                 ^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device       BS EN 60898 B32 6 kA
  dead 2026-03-04 {
    R1+R2        <0.5 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { disconnection, device } = study;
    if (disconnection?.by !== "overcurrent" || !device) return;
    const { limit } = disconnection;
    if (study.R1R2 && isOnlyBound(study, limit.value)) {
      const { fact, value } = study.R1R2;
      const read = quantityOf(value);
      const within = `the loop is within the ${ohms(limit.value)} of the ${deviceName(device)} device`;
      if (read)
        report(valueSpot(fact, read), unproven(`R1+R2 ${shown(read)}`, within, limit, { which: "hot", sign: "<" }));
      return;
    }
    const least = leastLoop(study);
    // A design that fails by itself is judged by its length.
    if (!least || !exceeds(least.loop.value, limit.value) || exceeds(designLoop(study)?.value ?? 0, limit.value))
      return;
    const { loop, reading, words } = least;
    const [length] = study.length?.facts ?? [];
    const over = loopOver(study, device, loop, limit);
    report(factSpot(reading?.fact ?? length ?? device.fact), {
      ...over.report,
      message: `${words} above the ${ohms(limit.value)} of the ${deviceName(device)} device: ${over.words}.`,
    });
  },
});

/** Whether no Zs was read, and R1+R2 only as below a figure that would be too much. */
function isOnlyBound(study: WayStudy, limit: number): boolean {
  const bound = quantityOf(study.R1R2?.value);
  if (bound?.sign !== "<" || quantityOf(study.Zs?.value) || study.supply.earthing === "TT") return false;
  return exceeds((designBoardImpedance(study.context)?.value ?? 0) + bound.value, limit);
}
