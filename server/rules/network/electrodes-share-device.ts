import { rcdsAt } from "../../boards/board-rcds.ts";
import { rcdName } from "../../circuit/describe.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "network/electrodes-share-device",
  severity: "warning",
  since: "0.1",
  title: "Circuits with different earth electrodes share one RCD.",
  why: "What one device protects is connected to one electrode. Otherwise a neutral-to-earth fault at the one carries the other’s current, and metal that can be touched together stands at two potentials.",
  clauses: ["411.5.1"],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Yard" {
  device       BS EN 60898 B16 6 kA
  behind       east
  earthing     TT
  electrode    rod 80 Ω
}
way 2 radial "Paddock" {
  device       BS EN 60898 B16 6 kA
  behind       east
  earthing     TT
  electrode    rod 90 Ω
  ^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Yard" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  earthing     TT
  electrode    rod 80 Ω
}
way 2 radial "Paddock" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  earthing     TT
  electrode    rod 90 Ω
}`,
    },
  ],
  check({ studies }, report) {
    for (const { rcd, ways } of rcdsAt(studies)) {
      const [first, ...others] = ways.filter((way) => way.facts.has("electrode") && !isOutsideWork(way));
      for (const way of others) {
        const electrode = way.facts.one("electrode");
        const before = first?.facts.one("electrode");
        if (!electrode || !before) continue;
        report(factSpot(electrode), {
          message: `Ways ${first?.way.id} and ${way.way.id} have electrodes of their own and share the ${rcdName(rcd)} RCD: connect them to one electrode, or give each an RCD.`,
          source: { ref: "BS 7671:2018+A2:2022, 411.5.1", standing: "memory" },
          related: [
            { spot: factSpot(before), message: `The electrode of way ${first?.way.id}.` },
            { spot: factSpot(rcd.fact), message: "The RCD they share." },
          ],
        });
      }
    }
  },
});
