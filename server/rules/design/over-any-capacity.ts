import { exceeds } from "../../calc/compare.ts";
import { amps, relation, roughAmps, squareMillimetres } from "../../calc/result.ts";
import { capacityCeiling } from "../../circuit/capacity-ceiling.ts";
import { deviceName } from "../../circuit/describe.ts";
import { leastKnownCapacity, radialShortfall } from "../../circuit/overload.ts";
import { protectedByRelay } from "../../circuit/overload-relay.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/over-any-capacity",
  severity: "error",
  since: "0.1",
  title: "A device is rated above what such a cable carries by any route.",
  why: "How the cable is laid, or the figure of its metal, is not known here; but laid in the best of ways it carries less than its device lets through, and overheats. Use a larger cable or a smaller device.",
  clauses: ["433.1.1", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 B63 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B20 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
}`,
    },
    {
      bad: `way 1 radial "Pump" {
  device       BS EN 60898 B63 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        multicore aluminium  line 10 mm²  cpc 10 mm²
  route        conduit  method B
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 60898 B40 6 kA
  cable        multicore aluminium  line 10 mm²  cpc 10 mm²
  route        conduit  method B
}`,
    },
    {
      // Copper of that size, laid so, could carry it.
      bad: `way 1 feeder "Mill" {
  device       BS 88-2 315 A 80 kA gG
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        armoured aluminium 90 °C  line 95 mm²  cpc-by armour  cores 4
  route        tray  method E
}`,
      good: `way 1 feeder "Mill" {
  device       BS 88-2 200 A 80 kA gG
  cable        armoured aluminium 90 °C  line 95 mm²  cpc-by armour  cores 4
  route        tray  method E
}`,
    },
  ],
  check(study, report) {
    const { device, cable } = study;
    if (!device?.rating || !cable || study.isRing || study.isSpare || leastKnownCapacity(study)) return;
    const most = capacityCeiling(study);
    if (!most || !exceeds(device.rating, most.value)) return;
    if (radialShortfall(study) || protectedByRelay(study, most.value)) return;
    // Which of its tables applies is open, so that the last digits of the bound mean nothing.
    const bound = roughAmps(most.value, device.rating);
    const size = `${squareMillimetres(cable.line)}${cable.material === "aluminium" ? " aluminium" : ""}`;
    report(factSpot(device.fact), {
      message: `The ${deviceName(device)} device is rated above ${bound}: ${size} carries no more, however it is laid. Fit a larger cable or a smaller device.`,
      value: amount(device.rating, "A"),
      limit: amount(Number.parseFloat(bound), "A"),
      steps: [...most.steps, relation("In ≤ the most it could be", amps(device.rating), bound)],
      source: most.source,
      related: [{ spot: factSpot(cable.fact), message: `Cable: ${squareMillimetres(cable.line)}.` }],
    });
  },
});
