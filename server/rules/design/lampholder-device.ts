import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/lampholder-device",
  severity: "warning",
  since: "0.1",
  title: "A lighting circuit has a device above 16 A.",
  why: "Small bayonet and screw lampholders (B15, B22, E14, E27) are made for circuits of 16 A at most. Luminaires without them may be on a larger device.",

  clauses: ["559.5.1.204"],
  examples: [
    {
      bad: `way 1 radial "Hall lights" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves       lighting
}`,
      good: `way 1 radial "Hall lights" {
  device       BS EN 61009 B10 6 kA 30 mA type A
  serves       lighting
}`,
    },
  ],
  check({ device, uses, isFinal, facts }, report) {
    const limit = practiceOf("lampholders");
    if (!isFinal || device?.rating === undefined || uses.size !== 1 || !uses.has("lighting")) return;
    // Where drivers are counted the luminaires have no lampholders of that kind.
    if (!exceeds(device.rating, limit.value) || facts.has("drivers")) return;
    report(factSpot(device.fact), {
      message: `Lights are on a ${deviceName(device)} device: lampholders B15, B22, E14 and E27 are for ${amps(limit.value)} at most. Fit a smaller device, or make sure there are none.`,
      value: amount(device.rating, "A"),
      limit: amountOf(limit),
      source: limit.source,
    });
  },
});
