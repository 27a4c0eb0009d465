import { rcdsAt } from "../../boards/board-rcds.ts";
import { homes } from "../../circuit/circuit-kind.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { isOutsideWork, premisesOf } from "../../circuit/supply.ts";
import { ruleAlone, type Source } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/alarms-share-rcd",
  severity: "warning",
  since: "0.1",
  title: "Alarms share their RCD with other circuits.",
  why: "A faulty kettle then silences the alarms until somebody notices. Where smoke alarms of a home need an RCD it protects nothing else, or lights in daily use, whose loss is noticed. A fire alarm elsewhere has a supply that no fault of another circuit takes away.",
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
    {
      setting: { premises: "commercial", board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Fire alarm panel" {
  device       BS EN 60898 B6 6 kA
  behind       east
  serves       alarms
  ^^^^^^^^^^^^^^^^^^^
}
way 2 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  behind       east
  serves       water-heater
}`,
      good: `way 1 radial "Fire alarm panel" {
  device       BS EN 60898 B6 6 kA
  serves       alarms
}
way 2 radial "Water heater" {
  device       BS EN 60898 B16 6 kA
  behind       east
  serves       water-heater
}`,
    },
  ],
  check({ context, studies }, report) {
    const atHome = homes.includes(premisesOf(context) ?? "");
    for (const { rcd, ways } of rcdsAt(studies)) {
      // A delayed one leaves the fault of a circuit to the RCD of that circuit.
      if (rcd.delayed) continue;
      for (const way of ways) {
        const serves = way.facts.one("serves");
        // On a circuit of sockets it is the circuit that is shared.
        if (!serves || !way.uses.has("alarms") || way.servesSockets || isOutsideWork(way)) continue;
        const other = ways.find((one) => (atHome ? one.servesSockets : one !== way && one.isFinal));
        if (!other || (!atHome && warnsOfThieves.test(way.way.title))) continue;
        const later = laterRule(way);
        const shared = `the ${rcdName(rcd)} RCD with`;
        report(factSpot(serves), {
          message: atHome
            ? `The alarms share ${shared} the sockets of way ${other.way.id}: give them one of their own, or that of the lights.${later.words}`
            : `The fire alarm shares ${shared} way ${other.way.id}, so that a fault there silences it: supply it without an RCD, or through one of its own.${later.words}`,
          source: ruleAlone(atHome ? homeAlarms : fireAlarms),
          ...(later.severity ? { severity: later.severity } : {}),
          related: [{ spot: factSpot(rcd.fact), message: "The RCD they share." }],
        });
      }
    }
  },
});

const homeAlarms: Source = { ref: "BS 5839-6, supplies; BS 7671:2018+A2:2022, 314.1", standing: "practice" };
const fireAlarms: Source = { ref: "BS 5839-1, supplies; BS 7671:2018+A2:2022, 560.7.1", standing: "practice" };

/** By its name an alarm is none of fire. */
const warnsOfThieves = /\b(?:intruder|burglar|security|panic|nurse)\b/i;
