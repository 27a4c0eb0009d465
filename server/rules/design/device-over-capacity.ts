import { exceeds } from "../../calc/compare.ts";
import { groundShare, isWithinRounding, overload } from "../../calc/overload.ts";
import {
  amps,
  type Calculated,
  plain,
  relation as relationStep,
  remark,
  squareMillimetres,
  truncate,
} from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import {
  capacityAtMost,
  groundLimit,
  leastKnownCapacity,
  radialShortfall,
  ratingFor,
  sizeFor,
} from "../../circuit/overload.ts";
import { protectedByRelay } from "../../circuit/overload-relay.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { resizeCable } from "../common/cable-size.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, type Reporter, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/device-over-capacity",
  severity: "error",
  since: "0.1",
  title: "A device is rated above what its cable can carry.",
  why: "The cable overheats before the device trips, and its insulation fails in a wall where nobody sees it. Use a larger cable, a smaller device, or a better route: every factor of the worst section counts.",
  clauses: ["433.1.1", "433.1.202", "433.1.203", "523.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        singles  line 4 mm²  cpc 2.5 mm²
  route        conduit  method B  grouped 2
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        singles  line 6 mm²  cpc 2.5 mm²
  route        conduit  method B  grouped 2
}`,
    },
    {
      setting: { work: "existing" },
      bad: `way 1 radial "Cooker" {
  device       BS 3036 30 A
  ^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        singles  line 4 mm²  cpc 2.5 mm²
  route        conduit  method B
}`,
      good: `way 1 radial "Cooker" {
  device       BS 3036 20 A
  cable        singles  line 4 mm²  cpc 2.5 mm²
  route        conduit  method B
}`,
    },
    {
      bad: `way 1 radial "Gate house" {
  device       BS EN 60898 B50 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  cable        armoured 90 °C  line 6 mm²  cpc 6 mm²  cores 3
  route        buried  method D
}`,
      good: `way 1 radial "Gate house" {
  device       BS EN 60898 B50 6 kA
  cable        armoured 90 °C  line 6 mm²  cpc 6 mm²  cores 3
  route        clipped  method C
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
    if (relation?.holds) return inGround(study, report);
    if (!relation || protectedByRelay(study, Iz.value)) return;
    const settled = settledBy(study, device.rating, Iz);
    const size = sizeFor(study, device.rating);
    const byRounding = isWithinRounding(device.rating, Iz.value);
    const allowed = device.family === "BS 3036" ? "allowed with a rewirable fuse" : "this cable can carry";
    report(factSpot(device.fact), {
      message: `The ${deviceName(device)} device is rated above the ${amps(Iz.value, device.rating)} ${allowed}${study.facts.all("route").length > 1 ? " in its worst section" : ""}${byRounding ? ", by less than its factors are rounded to" : ""}. ${remedyFor(study, Iz.value, size)}`,
      value: amount(device.rating, "A"),
      limit: amountOf(Iz),
      steps: [
        ...Iz.steps,
        relationStep("In ≤ Iz", amps(device.rating, Iz.value), amps(Iz.value, device.rating)),
        ...(settled ? [remark("That figure is from memory. No such cable carries more than:"), ...settled.steps] : []),
        ...(settled
          ? [
              relationStep(
                "In ≤ the most it could be",
                amps(device.rating, settled.value),
                amps(settled.value, device.rating),
              ),
            ]
          : []),
      ],
      source: settled ? settled.source : relation.margin.source,
      ...(byRounding ? { severity: "warning" as const } : {}),
      related: [
        { spot: factSpot(capacity.fact), message: `The worst section: Iz = ${amps(Iz.value, device.rating)}.` },
        { spot: factSpot(cable.fact), message: `Cable: ${squareMillimetres(cable.line)}.` },
      ],
      fixes: [...resizeCable(cable, size), ...smallerDevice(study)],
    });
  },
});

/** Where the cable's own table is from memory, one that was seen may still settle it. */
function settledBy(study: WayStudy, rating: number, { source }: Calculated): Calculated | undefined {
  const bound = source.standing === "memory" ? capacityAtMost(study) : undefined;
  return bound && bound.source.standing !== "memory" && exceeds(rating, bound.value) ? bound : undefined;
}

function remedyFor({ uses, facts }: WayStudy, capacity: number, size: number | undefined): string {
  if (uses.has("motor") && !facts.has("overload"))
    return `If an overload relay at the motor protects the cable, state its setting, no more than ${amps(truncate(capacity, 1))}, as overload and that figure.`;
  return size ? `Fit ${squareMillimetres(size)}.` : "Fit a larger cable or a smaller device, or change the route.";
}

function smallerDevice(study: WayStudy): Fix[] {
  const curve = study.device?.fact.args.curve;
  const rating = curve && ratingFor(study);
  return rating ? [inPlaceOf(curve, `${curve.curve}${rating}`, `Make the device ${curve.curve}${rating}`)] : [];
}

/** A cable in the ground carries the rating of its device, but has less margin for an overload than one in air. */
function inGround(study: WayStudy, report: Reporter): void {
  const { device, cable } = study;
  const most = groundLimit(study);
  if (!device?.rating || !cable || !most || !exceeds(device.rating, most.value.value)) return;
  const { value, source, steps } = most.value;
  const size = sizeFor(study, device.rating);
  const remedy = size ? ` Fit ${squareMillimetres(size)}.` : "";
  report(factSpot(device.fact), {
    message: `The ${deviceName(device)} device is rated above ${amps(value, device.rating)}, ${plain(groundShare())} × Iz, which protects a buried cable against overload.${remedy}`,
    severity: "information",
    value: amount(device.rating, "A"),
    limit: amount(value, "A"),
    steps: [
      ...steps,
      relationStep(`In ≤ ${plain(groundShare())} × Iz`, amps(device.rating, value), amps(value, device.rating)),
    ],
    source,
    related: [
      { spot: factSpot(most.fact), message: "The section in the ground." },
      { spot: factSpot(cable.fact), message: `Cable: ${squareMillimetres(cable.line)}.` },
    ],
    fixes: resizeCable(cable, size),
  });
}
