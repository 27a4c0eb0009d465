import { exceeds } from "../../calc/compare.ts";
import { amps, relation, squareMillimetres } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { capacityWith } from "../../circuit/overload.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/neutral-below-device",
  severity: "error",
  since: "0.1",
  title: "A neutral is smaller than its device protects.",
  why: "The device is in the line, and nothing opens when the neutral alone is overloaded. In a single-phase circuit it carries all that the line carries; in a three-phase one whatever the lines do not balance.",

  clauses: ["431.2.1", "524.2", "433.1.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        singles  line 6 mm²  neutral 2.5 mm²  cpc 2.5 mm²
                                            ^^^^^^^
  route        conduit  method B
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        singles  line 6 mm²  cpc 2.5 mm²
  route        conduit  method B
}`,
    },
  ],
  check(study, report) {
    const { cable, device, isSpare, isRing, threePhase } = study;
    const written = cable?.fact.args.neutral;
    if (!cable || !written || device?.rating === undefined || isSpare || isRing || cable.neutral >= cable.line) return;
    const Iz = capacityWith(study, cable.neutral);
    if (!Iz || !exceeds(device.rating, Iz.value)) return;
    report(valueSpot(cable.fact, written), {
      message: `The ${squareMillimetres(cable.neutral)} neutral carries ${amps(Iz.value)} and the ${deviceName(device)} device does not protect it: fit ${squareMillimetres(cable.line)}, or ${threePhase ? "state why the lines balance" : "a smaller device"}.`,
      value: amount(device.rating, "A"),
      limit: amountOf(Iz),
      steps: [
        ...Iz.steps,
        relation("In ≤ Iz of the neutral", amps(device.rating, Iz.value), amps(Iz.value, device.rating)),
      ],
      source: Iz.source,
      // Three lines that balance leave little for the neutral: that may be so, and is to be shown.
      ...(threePhase ? { severity: "warning" as const } : {}),
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
    });
  },
});
