import { looked } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import { waterNeed, waterOf } from "../../circuit/places.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/ip-code-too-low",
  severity: "error",
  since: "0.1",
  title: "The IP code of equipment is too low for its location.",
  why: "Water inside an enclosure can connect live parts to whoever touches it. The zone gives how much water there is, the IP code how much is kept out.",
  clauses: ["701.512.2", "702.512.2", "705.512.2", "708.512.2", "709.512.2", "512.2.1"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        bathroom  zone 1
  ingress      IP20
               ^^^^
}`,
      good: `way 1 radial "Lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        bathroom  zone 1
  ingress      IP44
}`,
    },
  ],
  check(study, report) {
    const need = waterNeed(study);
    const stated = study.facts.one("ingress");
    const water = stated && waterOf(stated.args.code.value);
    if (!need || !stated || water === undefined || water >= need.row.facts.water) return;
    const { zone, water: least } = need.row.facts;
    if (zone === "2" && study.uses.size === 1 && study.uses.has("shaver")) return;
    const later = laterRule(study);
    const { start, end } = stated.args.code;
    report(
      { segment: stated.segment, start, end },
      {
        message: `${stated.args.code.value} is too low for ${zone === "" ? "this location" : `zone ${zone}`}: at least IPX${least} is required.${later.words}`,
        value: amount(water, ""),
        limit: amount(least, ""),
        least: true,
        steps: [looked("Second figure of the IP code, at least", need.source.ref, String(least))],
        source: need.source,
        // Outdoors the degree is what is usual; in zones, on farms, pitches and berths the standard gives it.
        severity: later.severity ?? (need.row.facts.place === "outdoors" ? "warning" : "error"),
        related: [study.facts.one("place")].flatMap((line) =>
          line ? [{ spot: factSpot(line), message: "The location and its zones." }] : [],
        ),
        fixes: [inPlaceOf(stated.args.code, `IPX${least}`)],
      },
    );
  },
});
