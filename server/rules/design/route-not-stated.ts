import { capacityGap } from "../../circuit/overload.ts";
import { workOf } from "../../circuit/supply.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

/** Ways of running to choose from; whoever was there knows which. */
const usual = [
  "route clipped method C",
  "route conduit method B",
  "route trunking method B",
  "route ceiling method 100",
];

export default wayRule({
  id: "design/route-not-stated",
  severity: "warning",
  since: "0.1",
  title: "A cable whose way of running is not stated, so its capacity is not known.",
  why: "The same cable carries twice as much clipped to a wall as bunched under insulation. Without the route and its reference method nobody can say that the device protects it.",
  clauses: ["523.1", "522.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  route   clipped method C
}`,
    },
    {
      bad: `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  route   ceiling grouped 2
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  route   ceiling method 100 grouped 2
}`,
    },
  ],
  check(study, report) {
    const { cable, facts } = study;
    if (!cable || !study.device?.rating || study.isSpare) return;
    // What lies hidden in an old building often cannot be known.
    const severity = workOf(study.context) === "existing" ? ({ severity: "information" } as const) : {};
    if (!facts.has("route")) {
      report(factSpot(cable.fact), {
        message: "How this cable runs is not stated, so what it can carry is not known: add a route with its method.",
        fixes: usual.map((route) => lineAfter(cable.fact, route)),
        ...severity,
      });
      return;
    }
    const gap = capacityGap(study);
    if (!gap || gap.stated) return;
    report(factSpot(gap.fact), {
      message: "This stretch has no reference method, so what the cable can carry here is not known.",
      related: [{ spot: factSpot(cable.fact), message: "The cable it is about." }],
      ...severity,
    });
  },
});
