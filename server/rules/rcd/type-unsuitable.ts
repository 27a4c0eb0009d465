import { rcdsAt, typeSpan } from "../../boards/board-rcds.ts";
import { rcdCovers } from "../../calc/rcd-time.ts";
import { isSource } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { rcdLoads } from "../../tables/rcd-limits.ts";
import { combine } from "../../tables/source.ts";
import { sourceOf } from "../../tables/table.ts";
import { blindedByInverter } from "../common/inverter.ts";
import { inPlaceOf } from "../common/writing.ts";
import { boardRule, factSpot, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/type-unsuitable",
  severity: "error",
  since: "0.1",
  title: "The type of an RCD is unsuitable where direct current is likely.",
  why: "Direct current can saturate a type AC device, which then detects no fault at all, on any circuit it protects. Since 2022 type AC is for fixed equipment known to have no direct component only.",
  clauses: ["531.3.3"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type AC
                                               ^^
  serves       sockets
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
}`,
    },
    {
      setting: { standard: "BS 7671:2018" },
      bad: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type AC
                                               ^^
  serves       ev-charger
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
}`,
    },
  ],
  check({ context, studies }, report) {
    const { edition } = context;
    if (!edition) return;
    for (const { rcd, ways } of rcdsAt(studies)) {
      const { type } = rcd;
      const span = typeSpan(rcd);
      const found = ways
        .filter((way) => !isOutsideWork(way))
        .flatMap((way) => needOf(way))
        // What an inverter needs is more, and one finding says so.
        .filter(
          ({ row, study }) =>
            !(isSource({ uses: new Set([row.facts.use]) }) && blindedByInverter(study)?.rcd.fact === rcd.fact),
        )
        .find(({ row }) => type && !rcdCovers(type, row.facts.type));
      if (!found || !type || !span) continue;
      const { row, study } = found;
      const later = laterRule(study);
      // Before the type was restricted only charging points had a type of their own.
      const restricted = edition.typeAcRestricted || row.facts.use === "ev-charger";
      const source = sourceOf(rcdLoads, row, "type");
      const serves = study.facts.one("serves");
      const least = row.facts.type;
      const words = restricted ? later.words : " The edition of this work allows it.";
      report(valueSpot(rcd.fact, span), {
        message: `A type ${type} RCD may not trip here, since ${row.facts.reason}: fit type ${least} or better.${words}`,
        source: edition.typeAcRestricted ? combine(source, edition.sources.typeAc) : source,
        severity: !restricted || later.severity ? "information" : row.facts.direct === "certain" ? "error" : "warning",
        related: serves ? [{ spot: factSpot(serves), message: `Way ${study.way.id} decides the type.` }] : [],
        fixes: [inPlaceOf(span, least, `Make it type ${least}`)],
      });
    }
  },
});

/** What a way needs of its RCD, the strongest need first. */
function needOf(study: WayStudy) {
  return rcdLoads.rows.filter(({ facts }) => study.uses.has(facts.use)).map((row) => ({ row, study }));
}
