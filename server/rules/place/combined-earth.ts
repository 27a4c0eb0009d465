import { laterRule } from "../../circuit/describe.ts";
import { combinedEarth } from "../../circuit/places.ts";
import type { Fact } from "../../model/values.ts";
import { lineAfter } from "../common/writing.ts";
import { boardRule, factSpot, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "place/combined-earth",
  severity: "error",
  since: "0.1",
  title: "A pitch, a berth or a site is earthed by a PME supply.",
  why: "With the PEN conductor open, the earth terminal of the supply can rise towards 230 V. Indoors, bonding raises everything with it; it can kill a person who stands on the ground beside a caravan, a boat or a scaffold.",
  clauses: ["708.411.4", "709.411.4", "704.411.3.1", "717.411.4"],
  examples: [
    {
      setting: { supply: "earthing TN-C-S\nZe 0.20 Ω\nIpf 1.4 kA" },
      bad: `way 1 radial "Pitch 1" {
  device       BS EN 61009 C16 6 kA 30 mA type A
  serves       sockets
  place        caravan
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Pitch 1" {
  device       BS EN 61009 C16 6 kA 30 mA type A
  serves       sockets
  place        caravan
  earthing     TT
}`,
    },
  ],
  check({ board, studies }, report) {
    const shared = board.head.facts.one("place");
    const told = new Set<Fact>();
    for (const study of studies) {
      const found = combinedEarth(study);
      if (!found || found.row.facts.place === "charger") continue;
      const { place, what, instead } = found.row.facts;
      // What the board states for all its ways is put right once, at the board.
      const spot = study.placeLine(place) ?? study.way.header;
      if (told.has(spot)) continue;
      told.add(spot);
      const later = laterRule(study);
      const { earthingFact } = study.supply;
      report(factSpot(spot), {
        message: `${what} may not be earthed by a PME supply (TN-C-S): use ${instead}.${later.words}`,
        source: found.source,
        ...(later.severity ? { severity: later.severity } : {}),
        related: [
          ...(earthingFact ? [{ spot: factSpot(earthingFact), message: "Earthing recorded as TN-C-S (PME)." }] : []),
          ...(spot === shared
            ? [{ spot: wordSpot(study.way.header), message: `Way ${study.way.id} is in this location.` }]
            : []),
        ],
        fixes: [lineAfter(spot, "earthing TT", "It has an electrode of its own: write earthing TT")],
      });
    }
  },
});
