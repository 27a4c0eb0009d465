import { capacityGap } from "../../circuit/overload.ts";
import { workOf } from "../../circuit/supply.ts";
import { cableWords } from "../common/dead-words.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

/** Installation methods to choose from; whoever was there knows which. */
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
  title: "The installation method of a cable is not stated.",
  why: "The same cable can carry twice as much clipped direct as surrounded by thermal insulation. Without the route and its reference method it cannot be shown that the device protects it.",
  clauses: ["523.1", "522.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  route        clipped  method C
}`,
    },
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  route        ceiling  grouped 2
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  route        ceiling  method 100  grouped 2
}`,
    },
  ],
  check(study, report) {
    const { cable, facts } = study;
    if (!cable || !study.device?.rating || study.isSpare) return;
    // What is hidden in an old building often cannot be known.
    const severity = workOf(study) === "existing" ? ({ severity: "information" } as const) : {};
    if (!facts.has("route")) {
      const byMaker = cable.own?.carries !== undefined;
      report(factSpot(cable.fact), {
        message: byMaker
          ? "How this runs is not stated, so what its type carries is not compared: add a route, such as route clipped."
          : "The installation method is not stated, so the current-carrying capacity is not known: add a route with its method.",
        fixes: (byMaker ? ["route clipped"] : usual).map((route) => lineAfter(cable.fact, route)),
        ...severity,
      });
      return;
    }
    const gap = capacityGap(study);
    if (!gap || gap.stated) return;
    report(factSpot(gap.fact), {
      message: "This section has no reference method, so its current-carrying capacity is not known: write method.",
      related: [{ spot: factSpot(cable.fact), message: `Cable of the circuit: ${cableWords(cable)}.` }],
      ...severity,
    });
  },
});
