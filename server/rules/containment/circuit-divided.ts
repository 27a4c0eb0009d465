import { carriedBy } from "../../circuit/conductors.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "containment/circuit-divided",
  severity: "error",
  since: "0.1",
  title: "The conductors of one circuit are divided between conduits or trunkings.",
  why: "Line and neutral together cancel each other's field. Apart, each magnetises the steel round it: the metal heats by the load current, and the loop is wider than anyone calculated. Run all conductors of a circuit together.",
  clauses: ["521.5.1", "521.8"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  cable   singles line 6 mm² cpc 6 mm²
  route   conduit 20 mm method B carries line cpc
                                         ^^^^
  route   conduit 20 mm method B carries neutral
}`,
      good: `way 1 radial "Kiln" {
  cable   singles line 6 mm² cpc 6 mm²
  route   conduit 20 mm method B
  route   conduit 20 mm method B carries line neutral
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
        message: "The line runs here and the neutral elsewhere: all conductors of a circuit belong in one enclosure.",
        related: [{ spot: factSpot(without.route), message: "The neutral runs here, without its line." }],
      });
    }
  },
});
