import { isInGround } from "../../circuit/route-capacity.ts";
import type { FactOf, Span } from "../../model/values.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/ground-not-there",
  severity: "warning",
  since: "0.1",
  title: "The ground is described for a route that is not in it, or a distance for a circuit that is alone.",
  why: "The resistivity of the ground and the distance of cables in it are factors of cables in the ground alone, and the distance of a group that is counted. Written elsewhere they change nothing, though whoever wrote them meant that they do.",
  clauses: ["523.1"],
  examples: [
    {
      bad: `way 1 feeder "Barn" {
  cable        armoured 90 °C  line 10 mm²  cpc 10 mm²  cores 5
  route        tray  method E  soil 1.5 K·m/W
                                    ^^^^^^^^^
}`,
      good: `way 1 feeder "Barn" {
  cable        armoured 90 °C  line 10 mm²  cpc 10 mm²  cores 5
  route        buried  method D  depth 800 mm  soil 1.5 K·m/W
}`,
    },
    {
      bad: `way 1 feeder "Barn" {
  cable        armoured 90 °C  line 10 mm²  cpc 10 mm²  cores 5
  route        duct  method D  apart 250 mm
                                     ^^^^^^
}`,
      good: `way 1 feeder "Barn" {
  cable        armoured 90 °C  line 10 mm²  cpc 10 mm²  cores 5
  route        duct  method D  grouped 3  apart 250 mm
}`,
    },
  ],
  check(study, report) {
    for (const route of study.isSpare ? [] : study.facts.all("route")) {
      const idle = idleIn(route, (study.cable?.parallel.line ?? 1) > 1);
      if (!idle) continue;
      report(idle.at ? valueSpot(route, idle.at) : factSpot(route), { message: idle.message });
    }
  },
});

/** An argument that changes nothing, and why. */
function idleIn(
  route: FactOf<"way", "route">,
  parallel: boolean,
): { readonly at: Span | undefined; readonly message: string } | undefined {
  const { soil, apart, grouped } = route.args;
  const stated = soil ?? apart;
  if (stated && !isInGround(route))
    return { at: stated, message: "This route is not in the ground: write buried or duct, or leave it out." };
  if (apart && !parallel && (grouped?.value ?? 1) < 2)
    return { at: apart, message: "Apart from what? Write how many circuits are grouped here." };
  return undefined;
}
