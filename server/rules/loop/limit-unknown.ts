import { seconds } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { aboveBound } from "../../readings/loop-bound.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/limit-unknown",
  severity: "information",
  since: "0.1",
  title: "No limit for Zs is known for this device.",
  why: "The loop could not be compared with anything. Take the limit from the maker's curve or your copy of the standard, and write it as max-Zs.",
  clauses: ["411.4.4"],
  examples: [
    {
      bad: `way 1 feeder "Plant" {
  device       BS EN 60947-2 160 A 36 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 feeder "Plant" {
  device       BS EN 60947-2 160 A 36 kA
  max-Zs       0.14 Ω
}`,
    },
  ],
  check(study, report) {
    const { device, disconnectionTime, overcurrentLimit, supply } = study;
    if (!device?.rating || !disconnectionTime || overcurrentLimit || supply.earthing === "TT") return;
    if (study.facts.has("max-Zs")) return;
    // A breaker without its type is reported elsewhere, and so is a device that breaks no overcurrent.
    if ((device.family === "breaker" && !device.curve) || /61008|4293/.test(device.standard)) return;
    // It is judged where it is too high for any such device.
    if (aboveBound(study)) return;
    const part =
      device.standard === "BS 88" ? " BS 88 has several parts: write the one on it, such as BS 88-2 or BS 88-3." : "";
    report(factSpot(device.fact), {
      message: `No limit for Zs is known for a ${deviceName(device)} device in ${seconds(disconnectionTime.value)}: write device-figures with the limit of its maker or your own copy, or max-Zs. The loop is not judged.${part}`,
    });
  },
});
