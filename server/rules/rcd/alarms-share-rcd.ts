import { rcdsAt } from "../../boards/board-rcds.ts";
import { homes } from "../../circuit/circuit-kind.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { isOutsideWork, premisesOf } from "../../circuit/supply.ts";
import { ruleAlone } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/alarms-share-rcd",
  severity: "warning",
  since: "0.1",
  title: "The smoke alarms of a home share their RCD with sockets.",
  why: "A faulty kettle then silences the alarms until somebody notices. Where alarms need an RCD it protects nothing else, or lights in daily use, whose loss is noticed.",
  clauses: ["314.1", "531.3.2"],
  examples: [
    {
      setting: { premises: "dwelling", board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Smoke alarms" {
  device       BS EN 60898 B6 6 kA
  behind       east
  serves       alarms
  ^^^^^^^^^^^^^^^^^^^
}
way 2 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  behind       east
  serves       sockets
}`,
      good: `way 1 radial "Smoke alarms" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       alarms
}
way 2 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  behind       east
  serves       sockets
}`,
    },
  ],
  check({ context, studies }, report) {
    if (!homes.includes(premisesOf(context) ?? "")) return;
    for (const { rcd, ways } of rcdsAt(studies)) {
      const sockets = ways.find(({ servesSockets }) => servesSockets);
      if (!sockets) continue;
      for (const way of ways) {
        const serves = way.facts.one("serves");
        // On the circuit of the sockets it is the circuit that is shared.
        if (!serves || !way.uses.has("alarms") || way.servesSockets || isOutsideWork(way)) continue;
        const later = laterRule(way);
        report(factSpot(serves), {
          message: `The alarms share the ${rcdName(rcd)} RCD with the sockets of way ${sockets.way.id}: give them one of their own, or that of the lights.${later.words}`,
          source: ruleAlone({ ref: "BS 5839-6, supplies; BS 7671:2018+A2:2022, 314.1", standing: "practice" }),
          ...(later.severity ? { severity: later.severity } : {}),
          related: [{ spot: factSpot(rcd.fact), message: "The RCD they share." }],
        });
      }
    }
  },
});
