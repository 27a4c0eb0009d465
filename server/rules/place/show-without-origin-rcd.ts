import { milliamps } from "../../calc/result.ts";
import { meets, rcdsKnown } from "../../circuit/additional-protection.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { originRcd } from "../../circuit/places.ts";
import { isOwnRcd } from "../../circuit/rcds.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import type { Fact } from "../../model/values.ts";
import { amount, amountOf, boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "place/show-without-origin-rcd",
  severity: "error",
  since: "0.1",
  title: "The cable to a stand, ride or stall has no RCD at its origin.",
  why: "The cable lies on the ground for a few days, is driven over and pulled. An RCD where it begins disconnects it; delayed, it leaves the RCDs of the final circuits to open first.",
  clauses: ["711.410.3.4", "740.410.3"],
  examples: [
    {
      setting: { board: "fed-from supply\nmain-switch BS EN 60947-3 100 A" },
      bad: `way 1 radial "Stall lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        fairground
  ^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Office lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
}`,
    },
  ],
  check({ studies }, report) {
    const told = new Set<Fact>();
    for (const study of studies) {
      const need = originRcd(study);
      if (!need || isOutsideWork(study) || !rcdsKnown(study)) continue;
      const { limit, place } = need;
      const upstream = study.rcds.filter((rcd) => !isOwnRcd(rcd));
      if (upstream.some((rcd) => meets(rcd, limit))) continue;
      const spot = study.placeLine(place) ?? study.way.header;
      // What the board states for all its ways is put right once.
      if (told.has(spot)) continue;
      told.add(spot);
      const later = laterRule(study);
      const [coarse] = upstream.toSorted((one, other) => one.sensitivity - other.sensitivity);
      const found = coarse ? `the ${rcdName(coarse)} there is too coarse` : `none protects way ${study.way.id}`;
      report(factSpot(spot), {
        message: `The supply to this location needs an RCD of ${milliamps(limit.value)} or less at its origin, delayed, besides those of the final circuits: ${found}.${later.words}`,
        ...(coarse ? { value: amount(coarse.sensitivity, "A") } : {}),
        limit: amountOf(limit),
        steps: limit.steps,
        source: need.source,
        ...(later.severity ? { severity: later.severity } : {}),
        related: coarse ? [{ spot: factSpot(coarse.fact), message: `RCD at the origin: ${rcdName(coarse)}.` }] : [],
      });
    }
  },
});
