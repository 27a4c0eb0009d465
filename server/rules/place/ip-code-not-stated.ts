import { looked } from "../../calc/result.ts";
import { waterNeed } from "../../circuit/places.ts";
import { workOf } from "../../circuit/supply.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/ip-code-not-stated",
  severity: "information",
  since: "0.1",
  title: "The IP code of equipment in a zone is not stated.",
  why: "Equipment in a zone is chosen by its IP code. Recorded here, it can be compared when the equipment is replaced.",
  clauses: ["701.512.2", "702.512.2"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        bathroom  zone 1 2
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        bathroom  zone 1 2
  ingress      IPX4
}`,
    },
  ],
  check(study, report) {
    const need = waterNeed(study);
    const line = study.facts.one("place");
    const { facts, uses } = study;
    if (!need || !line || need.row.facts.zone === "" || workOf(study) === "existing") return;
    if (facts.has("ingress") || uses.size === 0 || uses.has("shaver")) return;
    const { zone, water } = need.row.facts;
    report(factSpot(line), {
      message: `Equipment in zone ${zone} must be IPX${water} or better: record its IP code.`,
      steps: [looked("Second figure of the IP code, at least", need.source.ref, String(water))],
      source: need.source,
      fixes: [lineAfter(line, `ingress IPX${water}`)],
    });
  },
});
