import { routeKinds } from "../../../grammar/choices.ts";
import { inPlaceOf } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

/** Methods that can be meant by a kind of route, the usual one first. Kinds left out allow several. */
const fitting: Readonly<Record<string, readonly string[]>> = {
  conduit: ["B", "A"],
  trunking: ["B", "A"],
  clipped: ["C"],
  tray: ["E", "F", "C"],
  ladder: ["E", "F"],
  "free-air": ["E", "F"],
  overhead: ["E", "F"],
  duct: ["D"],
  buried: ["D"],
  wall: ["102", "103", "A", "C", "B"],
  ceiling: ["100", "101", "A", "B", "C", "E"],
};

/** As the list of routes has it: "clipped to a surface", "in conduit". */
const laid = (kind: keyof typeof routeKinds): string =>
  routeKinds[kind].replace(/^./, (first) => first.toLowerCase()).replace(/\.$/, "");

export default wayRule({
  id: "design/method-against-route",
  severity: "warning",
  since: "0.1",
  title: "The reference method does not fit how the cable is installed.",
  why: "The method selects the column of the rating table. The wrong one can credit the cable with up to a third more than it can carry.",
  clauses: ["523.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  cable        singles  line 6 mm²  cpc 2.5 mm²
  route        conduit  method C
                               ^
}`,
      good: `way 1 radial "Kiln" {
  cable        singles  line 6 mm²  cpc 2.5 mm²
  route        conduit  method B
}`,
    },
  ],
  check(study, report) {
    for (const route of study.facts.all("route")) {
      const { kind, method } = route.args;
      const allowed = kind && fitting[kind.value];
      if (!kind || !method || !allowed || allowed.includes(method.value)) continue;
      const usual = allowed[0] ?? "";
      report(valueSpot(route, method), {
        message: `Method ${method.value} does not fit a cable ${laid(kind.value)}: write method ${allowed.slice(0, 2).join(" or ")}.`,
        fixes: [inPlaceOf(method, usual, `Make it method ${usual}`)],
      });
    }
  },
});
