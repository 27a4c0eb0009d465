import { metres } from "../../calc/result.ts";
import { workOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { lineInBlock } from "../common/writing.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-length",
  severity: "warning",
  since: "0.1",
  title: "The cable length of a circuit is not stated.",
  why: "Voltage drop and the expected readings follow from the length. Without it a wrong reading cannot be recognised.",
  clauses: ["525.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
}`,
      good: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  length       12 m
}`,
    },
    {
      bad: `way 1 radial "Oven" {
^^^
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  route        clipped  method C  length 8 m
  route        wall  method A  length 4 m
}`,
      good: `way 1 radial "Oven" {
  cable        flat-twin  line 6 mm²  cpc 2.5 mm²
  route        clipped  method C  length 8 m
  route        wall  method A  length 4 m
  length       12 m
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || facts.has("length") || facts.has("run") || workOf(study) === "existing") return;
    const sections = lengthOfSections(study);
    if (sections === undefined)
      report(wordSpot(way.header), {
        message: `The cable length of way ${way.id} is not stated: write length, or its run from point to point.`,
      });
    else {
      const line = `length ${metres(sections)}`;
      report(wordSpot(way.header), {
        message: `The sections of way ${way.id} come to ${metres(sections)}, but its cable length is not stated: write ${line}, if none is missing.`,
        fixes: lineInBlock(way.header, line),
      });
    }
  },
});

/** What the sections of a route come to, where each states its own and none is of a part of the conductors. */
function lengthOfSections({ facts }: WayStudy): number | undefined {
  const routes = facts.all("route");
  const lengths = routes.flatMap(({ args: { length, legs, carries } }) =>
    length && !legs && !carries ? [length.value] : [],
  );
  if (lengths.length === 0 || lengths.length < routes.length || facts.isUnread("route")) return undefined;
  return lengths.reduce((sum, length) => sum + length, 0);
}
