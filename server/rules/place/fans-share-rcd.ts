import { rcdsAt } from "../../boards/board-rcds.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import { ruleAlone } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "place/fans-share-rcd",
  severity: "warning",
  since: "0.1",
  title: "The fans that keep livestock alive share an RCD with other circuits.",
  why: "When somebody’s damp tool trips the RCD the fans stop with it, and a closed house of poultry or pigs is dead within the hour. Give ventilation a supply that no other fault takes away, and an alarm.",
  clauses: ["705.560.6"],
  examples: [
    {
      setting: {
        premises: "agricultural",
        board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A",
      },
      bad: `way 1 radial "Fans" {
  device       BS EN 60898 B16 6 kA
  behind       east
  serves       ventilation
  ^^^^^^^^^^^^^^^^^^^^^^^^
  place        agricultural
}
way 2 radial "Sockets" {
  device       BS EN 60898 B16 6 kA
  behind       east
  serves       sockets
  place        agricultural
}`,
      good: `way 1 radial "Fans" {
  device       BS EN 61009 B16 6 kA 300 mA type A
  serves       ventilation
  place        agricultural
}
way 2 radial "Sockets" {
  device       BS EN 60898 B16 6 kA
  behind       east
  serves       sockets
  place        agricultural
}`,
    },
  ],
  check({ studies }, report) {
    for (const { rcd, ways } of rcdsAt(studies)) {
      // A delayed one, of the whole board, waits for those of the circuits.
      if (rcd.delayed) continue;
      for (const way of ways) {
        const serves = way.facts.one("serves");
        const other = ways.find((one) => one !== way && !one.uses.has("ventilation"));
        if (!serves || !other || !way.uses.has("ventilation") || !way.places.has("agricultural") || isOutsideWork(way))
          continue;
        const later = laterRule(way);
        report(factSpot(serves), {
          message: `The ventilation shares the ${rcdName(rcd)} RCD with way ${other.way.id}: give it one of its own.${later.words}`,
          source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 705.560.6", standing: "memory" }),
          ...(later.severity ? { severity: later.severity } : {}),
          related: [{ spot: factSpot(rcd.fact), message: "The RCD they share." }],
        });
      }
    }
  },
});
