import { carriedBy } from "../../circuit/conductors.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "containment/circuit-divided",
  severity: "error",
  since: "0.1",
  title: "The conductors of one circuit run in different conduits or trunkings.",
  why: "Line and neutral run together cancel each other's magnetic field. Apart, each magnetises the steel round it, which heats up under load, and the loop is larger than calculated. Run all conductors of a circuit together.",
  clauses: ["521.5.1", "521.8"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  cable        singles  line 6 mm²  cpc 6 mm²
  route        conduit 20 mm  method B  carries line cpc
                                                ^^^^
  route        conduit 20 mm  method B  carries neutral
}`,
      good: `way 1 radial "Kiln" {
  cable        singles  line 6 mm²  cpc 6 mm²
  route        conduit 20 mm  method B
  route        conduit 20 mm  method B  carries line neutral
}`,
    },
  ],
  check(study, report) {
    const routes = study.facts.all("route").map((route) => ({ route, carried: carriedBy(route) }));
    const without = routes.find(({ carried }) => carried.has("neutral") && !carried.has("line"));
    if (!without) return;
    for (const { route, carried } of routes) {
      if (carried.has("neutral") || !carried.has("line")) continue;
      const line = route.args.carries?.find(({ value }) => value === "line");
      report(line ? valueSpot(route, line) : factSpot(route), {
        message: "The line runs here and the neutral elsewhere: run all conductors of a circuit in one enclosure.",
        related: [{ spot: factSpot(without.route), message: "The neutral runs here, apart from its line." }],
      });
    }
  },
});
