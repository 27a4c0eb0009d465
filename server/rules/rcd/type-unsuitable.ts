import type { Use } from "../../../grammar/choices.ts";
import { rcdsAt, typeSpan } from "../../boards/board-rcds.ts";
import { type RcdType, rcdCovers } from "../../calc/rcd-time.ts";
import { isSource } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { rcdLoads } from "../../tables/rcd-limits.ts";
import { rcdTypes } from "../../tables/rcd-selection.ts";
import { combine, type Source } from "../../tables/source.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
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
        .flatMap(needsOf)
        // What an inverter needs is more, and one finding says so.
        .filter(
          ({ use, study }) =>
            !(use && isSource({ uses: new Set([use]) }) && blindedByInverter(study)?.rcd.fact === rcd.fact),
        )
        .find((need) => type && !rcdCovers(type, need.type));
      if (!found || !type || !span) continue;
      const { study, use, source, reason, certain } = found;
      const later = laterRule(study);
      // Before the type was restricted only charging points had a type of their own.
      const restricted = edition.typeAcRestricted || use === "ev-charger";
      const serves = study.facts.one("serves");
      const least = found.type;
      // Whatever a drive is, it rectifies.
      const isCertain = certain || (use === undefined && type === "AC");
      const words = restricted ? later.words : " The edition of this work allows it.";
      report(valueSpot(rcd.fact, span), {
        message: `A type ${type} RCD may not trip here, since ${reason}: fit type ${least} or better.${words}`,
        source: edition.typeAcRestricted ? combine(source, edition.sources.typeAc) : source,
        severity: !restricted || later.severity ? "information" : isCertain ? "error" : "warning",
        related: serves ? [{ spot: factSpot(serves), message: `Way ${study.way.id} decides the type.` }] : [],
        fixes: [inPlaceOf(span, least, `Make it type ${least}`)],
      });
    }
  },
});

interface Need {
  readonly study: WayStudy;
  readonly use: Use | undefined;
  readonly type: RcdType;
  readonly reason: string;
  readonly certain: boolean;
  readonly source: Source;
}

/** What a way needs of its RCD, the strongest need first. */
function needsOf(study: WayStudy): Need[] {
  const ofUses = rcdLoads.rows
    .filter(({ facts }) => study.uses.has(facts.use))
    .map((row): Need => {
      const { use, type, reason, direct } = row.facts;
      return { study, use, type, reason, certain: direct === "certain", source: sourceOf(rcdLoads, row, "type") };
    });
  return [...drivesNeed(study), ...ofUses];
}

/** A drive of three lines gives smooth direct current, one of a single line a mixture of frequencies. */
function drivesNeed(study: WayStudy): Need[] {
  if (study.facts.one("starting")?.args.method.value !== "drive") return [];
  const type = study.threePhase ? "B" : "F";
  const row = rowOf(rcdTypes, { type });
  if (!row) return [];
  const reason = study.threePhase
    ? "a three-phase drive gives smooth direct current"
    : "a single-phase drive mixes frequencies";
  return [{ study, use: undefined, type, reason, certain: false, source: sourceOf(rcdTypes, row, "use") }];
}
