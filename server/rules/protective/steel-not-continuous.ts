import { selectedProtective } from "../../calc/protective-size.ts";
import { squareMillimetres } from "../../calc/result.ts";
import type { Cable, WayStudy } from "../../circuit/way.ts";
import { stretchEnclosure } from "../../conduits/enclosure.ts";
import type { Fix } from "../../model/problems.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "protective/steel-not-continuous",
  severity: "error",
  since: "0.1",
  title: "Steel conduit or trunking is named as protective conductor where it cannot be one.",
  why: "Only rigid steel that is continuous from end to end carries a fault current. Where a section is clipped direct, in plastic or in flexible conduit, the circuit has no earth beyond it: run a copper protective conductor.",
  clauses: ["543.2.1", "543.2.5"],
  examples: [
    {
      bad: `way 1 radial "Drill" {
  cable        singles  line 4 mm²  cpc-by conduit
  route        conduit 20 mm steel  method B
  route        conduit 20 mm flexible  method B
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Drill" {
  cable        singles  line 4 mm²  cpc-by conduit
  route        conduit 20 mm steel  method B
  route        trunking  method B
}`,
    },
    {
      bad: `way 1 radial "Lathe" {
  cable        multicore  line 4 mm²  cpc-by trunking
  route        clipped  method C
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Lathe" {
  cable        multicore  line 4 mm²  cpc 4 mm²
  route        clipped  method C
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    const by = cable?.cpcBy;
    if (!cable || study.isSpare || (by !== "conduit" && by !== "trunking")) return;
    for (const route of study.facts.all("route")) {
      const found = stretchEnclosure(study, route);
      if (found === "steel" || found === "unknown") continue;
      const how = words[found] ?? words.open;
      report(factSpot(route), {
        message: `The steel ${by} is named as protective conductor, but ${how}: ${cable.cpc === undefined ? "run a copper conductor." : "only the copper conductor serves here."}`,
        ...(cable.cpc === undefined ? {} : { severity: "warning" }),
        related: [{ spot: factSpot(cable.fact), message: `Recorded as cpc-by ${by}.` }],
        fixes: copperInstead(study, cable),
      });
    }
  },
});

const words: Readonly<Record<"plastic" | "flexible" | "open", string>> = {
  plastic: "here it is of plastic",
  flexible: "here it is flexible",
  open: "here the cable is not enclosed",
};

/** A conductor of copper in its place, of the size Table 54.7 requires; where there is one already, only that. */
function copperInstead({ cable: own }: WayStudy, cable: Cable): Fix[] {
  const { cpcBy } = cable.fact.args;
  if (!cpcBy || own?.described !== own?.fact) return [];
  const { text } = cable.fact.segment;
  const start = text.lastIndexOf("cpc-by", cpcBy.start);
  const size = selectedProtective(cable.line)?.value;
  if (start < cable.fact.start || size === undefined) return [];
  if (cable.cpc !== undefined) {
    const before = text.slice(0, start).trimEnd().length;
    return [
      { title: "Leave the copper conductor alone", edits: [{ start: before, end: cpcBy.end, text: "" }], safe: false },
    ];
  }
  const title = `Run a protective conductor of ${squareMillimetres(size)}`;
  return [{ title, edits: [{ start, end: cpcBy.end, text: `cpc ${size} mm²` }], safe: false }];
}
