import { typeSpan } from "../../boards/board-rcds.ts";
import { rcdName } from "../../circuit/describe.ts";
import { isOwnRcd, type Rcd } from "../../circuit/rcds.ts";
import { rcdTypes } from "../../tables/rcd-selection.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { boardRule, factSpot, valueSpot } from "../frame/rule.ts";

const depot = (mainSwitch: string) => `wayfile 1
installation "Depot" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TT
  }
  board A "Board" {
    fed-from     supply
    main-switch  ${mainSwitch}
    rcd chargers BS EN 62423 63 A 30 mA type B
    way 1 radial "Charger east" {
      device       BS EN 60898 C32 6 kA
      behind       chargers
    }
    way 2 radial "Charger west" {
      device       BS EN 60898 C32 6 kA
      behind       chargers
    }
  }
}`;

export default boardRule({
  id: "rcd/upstream-blinded-by-dc",
  severity: "warning",
  since: "0.1",
  title: "A type B RCD is downstream of one that smooth direct current blinds.",
  why: "Where a type B device is needed, smooth direct current may flow, and it flows through the device upstream as well, which may then not trip. Supply the circuit from ahead of that device, or make both type B.",
  clauses: ["531.3.3"],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 80 A 30 mA type A" },
      bad: `way 1 radial "Drive" {
  device       BS EN 60898 C32 6 kA
  behind       east
  rcd          BS EN 62423 40 A 30 mA type B
                                           ^
}`,
      good: `way 1 radial "Drive" {
  device       BS EN 60898 C32 6 kA
  rcd          BS EN 62423 40 A 30 mA type B
}`,
    },
    {
      bad: depot("BS EN 61008 100 A 100 mA type A delayed").replace(
        /type B$/m,
        "$&\n                                             ^",
      ),
      good: depot("BS EN 62423 100 A 100 mA type B delayed"),
    },
  ],
  check({ studies }, report) {
    const spoken = new Set<Rcd["fact"]>();
    for (const { rcds, way } of studies) {
      const index = rcds.findIndex(({ type }) => type === "B");
      const own = rcds[index];
      const span = own && typeSpan(own);
      const weaker = rcds.slice(index + 1).find(({ type }) => type !== undefined && type !== "B");
      if (!own || !weaker || !span || own.at === "upstream" || spoken.has(own.fact)) continue;
      // One of the board protects several ways; what a circuit type says is each way's own.
      if (!isOwnRcd(own)) spoken.add(own.fact);
      const row = rowOf(rcdTypes, { type: weaker.type ?? "A" });
      report(valueSpot(own.fact, span), {
        message: `Smooth DC of ${isOwnRcd(own) ? "this circuit" : "the circuits behind it"} flows through the ${rcdName(weaker)} upstream and may stop it from tripping.`,
        ...(row ? { source: sourceOf(rcdTypes, row, "use") } : {}),
        related: [
          { spot: factSpot(weaker.fact), message: `Upstream: ${rcdName(weaker)}.` },
          ...(own.fact.segment === way.type?.segment
            ? [{ spot: factSpot(way.header), message: `Way ${way.id}.` }]
            : []),
        ],
      });
    }
  },
});
