import { rcdsAt } from "../../boards/board-rcds.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { isOwnRcd } from "../../circuit/rcds.ts";
import { rcdRequired } from "../../tables/rcd-selection.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/charger-shares-rcd",
  severity: "error",
  since: "0.1",
  title: "A charging point shares its RCD with other circuits.",
  why: "Each charging point has an RCD of its own: its direct current must not stop the RCD of other circuits from tripping, nor a fault of theirs disconnect the car.",
  clauses: ["722.531.3.101"],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Charger" {
  device       BS EN 60898 B40 6 kA
  behind       east
  serves       ev-charger
  ^^^^^^^^^^^^^^^^^^^^^^^
}
way 2 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  behind       east
  serves       sockets
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
}
way 2 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  behind       east
  serves       sockets
}`,
    },
  ],
  check({ studies }, report) {
    const row = rowOf(rcdRequired, { key: "ev" });
    for (const { rcd, ways } of rcdsAt(studies)) {
      if (ways.length < 2) continue;
      for (const way of ways) {
        const serves = way.facts.one("serves");
        const own = way.rcds.some(isOwnRcd);
        if (!serves || own || !way.uses.has("ev-charger") || rcd.fact !== way.rcds[0]?.fact) continue;
        const later = laterRule(way);
        report(factSpot(serves), {
          message: `This charging point shares the ${rcdName(rcd)} RCD with other circuits; it needs one of its own.${later.words}`,
          ...(later.severity ? { severity: later.severity } : {}),
          ...(row
            ? { source: { ...sourceOf(rcdRequired, row, "limit"), ref: "BS 7671:2018+A2:2022, 722.531.3.101" } }
            : {}),
          related: [{ spot: factSpot(rcd.fact), message: `Shared RCD: ${rcdName(rcd)}.` }],
        });
      }
    }
  },
});
