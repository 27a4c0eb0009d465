import { deviceName } from "../../analysis/describe.ts";
import { capacityAtMost, leastKnownCapacity, radialShortfall, ratingFor, sizeFor } from "../../analysis/overload.ts";
import { overload } from "../../calc/index.ts";
import { amps, relation as relationStep, remark, squareMillimetres } from "../../calc/result.ts";
import type { Fix } from "../../model/problems.ts";
import { amount, amountOf, factSpot, wayRule } from "../rule.ts";
import { inPlaceOf } from "../writing.ts";

export default wayRule({
  id: "design/device-over-capacity",
  severity: "error",
  since: "0.1",
  title: "A device larger than its cable can carry.",
  why: "The cable overheats before the device trips, and its insulation fails in a wall where nobody sees it. Take a larger cable, a smaller device, or a better route: every factor of the worst stretch counts.",
  clauses: ["433.1.1", "433.1.202", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable   singles line 4 mm² cpc 2.5 mm²
  route   conduit method B grouped 2
}`,
      good: `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   singles line 6 mm² cpc 2.5 mm²
  route   conduit method B grouped 2
}`,
    },
    {
      setting: { work: "existing" },
      bad: `way 1 radial "Cooker" {
  device  BS 3036 30 A
  ^^^^^^^^^^^^^^^^^^^^
  cable   singles line 4 mm² cpc 2.5 mm²
  route   conduit method B
}`,
      good: `way 1 radial "Cooker" {
  device  BS 3036 20 A
  cable   singles line 4 mm² cpc 2.5 mm²
  route   conduit method B
}`,
    },
  ],
  check(study, report) {
    const { device, cable } = study;
    const capacity = leastKnownCapacity(study);
    // A ring shares its load between two legs, and has a check of its own.
    if (!device?.rating || !capacity || !cable || study.isRing || study.isSpare) return;
    if (radialShortfall(study)) return;
    const Iz = capacity.value;
    const relation = overload({ standard: "", Ib: 0, In: device.rating, Iz }).find(({ name }) => name === "In ≤ Iz");
    if (!relation || relation.holds) return;
    // Where the cable's own table stands on memory, one that was seen may still settle it.
    const bound = Iz.source.standing === "memory" ? capacityAtMost(study) : undefined;
    const settled = bound && bound.source.standing !== "memory" && device.rating > bound.value ? bound : undefined;
    const size = sizeFor(study, device.rating);
    const rating = ratingFor(study);
    const motor = study.uses.has("motor");
    const remedy = size
      ? ` A ${squareMillimetres(size)} cable would serve here.`
      : " A larger cable, a smaller device or another route is needed.";
    report(factSpot(device.fact), {
      message: `The ${deviceName(device)} device is rated above the ${amps(Iz.value)} ${device.family === "BS 3036" ? "this cable may be counted on behind a rewirable fuse" : "this cable can carry"} on its worst stretch.${motor ? " That is right only where an overload relay at the motor protects the cable: say so in a departure." : remedy}`,
      value: amount(device.rating, "A"),
      limit: amountOf(Iz),
      steps: [
        ...Iz.steps,
        relationStep("In ≤ Iz", amps(device.rating), amps(Iz.value)),
        ...(settled ? [remark("That figure is from memory. What no such cable exceeds:"), ...settled.steps] : []),
        ...(settled ? [relationStep("In ≤ the most it could be", amps(device.rating), amps(settled.value))] : []),
      ],
      source: settled ? settled.source : relation.margin.source,
      ...(motor ? { severity: "warning" } : {}),
      related: [
        { spot: factSpot(capacity.fact), message: `The stretch that governs: Iz = ${amps(Iz.value)}.` },
        { spot: factSpot(cable.fact), message: `The cable: ${squareMillimetres(cable.line)}.` },
      ],
      fixes: fixesFor(),
    });

    function fixesFor(): Fix[] {
      const fixes: Fix[] = [];
      const line = cable?.fact.args.line;
      if (size && line) fixes.push(inPlaceOf(line, `${size} mm²`, `Make the line ${squareMillimetres(size)}`));
      const curve = device?.fact.args.curve;
      if (rating && curve) {
        fixes.push(inPlaceOf(curve, `${curve.curve}${rating}`, `Make the device ${curve.curve}${rating}`));
      }
      return fixes;
    }
  },
});
