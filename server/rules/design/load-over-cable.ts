import { exceeds } from "../../calc/compare.ts";
import { amps, relation, squareMillimetres } from "../../calc/result.ts";
import { leastKnownCapacity, sizeFor } from "../../circuit/overload.ts";
import { protectedByRelay } from "../../circuit/overload-relay.ts";
import { resizeCable } from "../common/cable-size.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/load-over-cable",
  severity: "error",
  since: "0.1",
  title: "The design current exceeds what the cable can carry.",
  why: "The cable overheats in normal service. An overload relay takes the place of the device at the board, and never that of the cable.",

  clauses: ["433.1.1", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Crusher" {
  device       BS EN 60898 D50 10 kA
  cable        singles  line 4 mm²  cpc 4 mm²
  route        conduit  method B
  serves       motor
  overload     30 A
  Ib           45 A
  ^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Crusher" {
  device       BS EN 60898 D50 10 kA
  cable        singles  line 10 mm²  cpc 10 mm²
  route        conduit  method B
  serves       motor
  overload     46 A
  Ib           45 A
}`,
    },
  ],
  check(study, report) {
    const { device, designCurrent, cable, isRing, isSpare } = study;
    const found = leastKnownCapacity(study);
    if (!device?.rating || !designCurrent || !cable || !found || isRing || isSpare) return;
    const Iz = found.value;
    // Where the device is to protect the cable, what is wrong is reported of the device.
    if (!exceeds(device.rating, Iz.value) || !protectedByRelay(study, Iz.value)) return;
    if (!exceeds(designCurrent.value, Iz.value)) return;
    const size = sizeFor(study, designCurrent.value);
    report(factSpot(designCurrent.fact), {
      message: `The design current of ${amps(designCurrent.value, Iz.value)} exceeds the ${amps(Iz.value, designCurrent.value)} this cable can carry.${size ? ` Fit ${squareMillimetres(size)}.` : ""}`,
      value: amount(designCurrent.value, "A"),
      limit: amountOf(Iz),
      steps: [
        ...Iz.steps,
        relation("Ib ≤ Iz", amps(designCurrent.value, Iz.value), amps(Iz.value, designCurrent.value)),
      ],
      source: Iz.source,
      related: [{ spot: factSpot(cable.fact), message: `Cable: ${squareMillimetres(cable.line)}.` }],
      fixes: resizeCable(cable, size),
    });
  },
});
