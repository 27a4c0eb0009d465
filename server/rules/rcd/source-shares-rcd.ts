import { rcdsAt } from "../../boards/board-rcds.ts";
import { exceeds } from "../../calc/compare.ts";
import { rcdLimit } from "../../calc/practice.ts";
import { fineRcds } from "../../circuit/additional-protection.ts";
import { feedsBack } from "../../circuit/circuit-kind.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import { quotedIn } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/source-shares-rcd",
  severity: "warning",
  since: "0.1",
  title: "A generator or battery shares its RCD with other circuits.",
  why: "When that RCD trips, the source continues to feed the circuits it shares it with until it detects that the supply is lost, and the fault with them. Connect it on the supply side of that RCD.",
  clauses: ["551.7.2"],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A bidirectional" },
      bad: `way 1 radial "Roof array" {
  device       BS EN 60898 B20 6 kA
  behind       east
  serves       pv
  ^^^^^^^^^^^^^^^
}
way 2 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  behind       east
  serves       sockets
}`,
      good: `way 1 radial "Roof array" {
  device       BS EN 60898 B20 6 kA
  serves       pv
}
way 2 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  behind       east
  serves       sockets
}`,
    },
  ],
  check({ studies }, report) {
    for (const { rcd, ways } of rcdsAt(studies)) {
      // A coarse one at the origin, as an electrode needs it, stands before sources as before everything else.
      if (exceeds(rcd.sensitivity, rcdLimit("additional").value)) continue;
      const others = ways.filter((way) => way.isFinal && !feedsBack(way));
      const [first] = others;
      if (!first) continue;
      for (const way of ways) {
        const serves = way.facts.one("serves");
        if (!serves || !feedsBack(way) || nearestFine(way)?.fact !== rcd.fact) continue;
        const later = laterRule(way);
        report(factSpot(serves), {
          message: `This source shares the ${rcdName(rcd)} RCD with way ${first.way.id}${others.length > 1 ? ` and ${others.length - 1} more` : ""}: connect it on the supply side of that RCD.${later.words}`,
          source: quotedIn("551.7.2"),
          ...(later.severity ? { severity: later.severity } : {}),
          related: [
            { spot: factSpot(rcd.fact), message: `Shared RCD: ${rcdName(rcd)}.` },
            ...others.slice(0, 6).map((other) => ({
              spot: factSpot(other.way.header),
              message: `Way ${other.way.id} is protected by the same RCD.`,
            })),
          ],
        });
      }
    }
  },
});

const nearestFine = (way: WayStudy): Rcd | undefined =>
  fineRcds(way).find(({ at }) => at === "board" || at === "main-switch");
