import { ruleAlone } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

const enclosing = ["conduit", "trunking", "duct"];

/** A line between buildings stays bare of an enclosure; that nobody can touch it shows on site only. */
const overhead = {
  message:
    "An overhead line of cables without a sheath must be out of reach, on insulators: check its height and spans, or use a sheathed cable on a catenary wire.",
  severity: "information",
  source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 417.3.1; ESQCR 2002, Part V", standing: "memory" }),
} as const;

export default wayRule({
  id: "design/singles-outside-containment",
  severity: "error",
  since: "0.1",
  title: "Single-core cables without a sheath run outside conduit or trunking.",
  why: "Basic insulation alone withstands neither a knock nor a sharp metal edge. Enclose them, or use a sheathed cable.",
  clauses: ["521.10.1", "417.3.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  cable        singles  line 6 mm²  cpc 2.5 mm²
  route        conduit  method B
  route        clipped  method C
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kiln" {
  cable        singles  line 6 mm²  cpc 2.5 mm²
  route        conduit  method B
  route        trunking  method B
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (cable?.construction !== "singles") return;
    for (const route of study.facts.all("route")) {
      const kind = route.args.kind?.value;
      // 521.10.1 excepts protective conductors: what runs by itself has a least size of its own.
      const bare = route.args.carries?.every(({ value }) => value === "cpc") ?? false;
      if (kind === undefined || enclosing.includes(kind) || bare) continue;
      const related = [{ spot: factSpot(cable.fact), message: "Recorded as single-core without a sheath." }];
      if (kind === "overhead") report(factSpot(route), { ...overhead, related });
      else
        report(factSpot(route), {
          message: `Single-core cables without a sheath are not enclosed here: run them in conduit, trunking or ducting.${kind === "free-air" ? " If they are an overhead line, write overhead." : ""}`,
          related,
        });
    }
  },
});
