import { groupingFactor } from "../../calc/index.ts";
import { plain, remark } from "../../calc/result.ts";
import type { Fix } from "../../model/problems.ts";
import type { FactOf } from "../../model/values.ts";
import { containmentRule } from "../common/containments.ts";
import { inPlaceOf, wordsAfter } from "../common/writing.ts";
import { amount, factSpot, valueSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/grouping-understated",
  severity: "warning",
  since: "0.1",
  title: "More circuits share a conduit or trunking than the route's grouping counts.",
  why: "Each circuit in an enclosure warms the others. With too few counted, the cable is rated for more than it can carry. Write how many run together. Circuits that carry hardly any load may be left out of the count: record that as a departure.",
  clauses: ["523.5"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m bends 1
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        method B  grouped 2  in C1
                             ^^^^^^^^^
    }
    way 2 radial "Saw" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  in C1
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    }
    way 3 radial "Lathe" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  grouped 4  in C1
    }
  }
}`,
      good: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m bends 1
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        method B  grouped 2  in C1
    }
    way 2 radial "Saw" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  grouped 2  in C1
    }
  }
}`,
    },
  ],
  judge(study, report) {
    const factor = groupingFactor(study.circuitCount, "bunched");
    const known = "missing" in factor ? undefined : factor;
    for (const { route, study: own } of study.contents) {
      const { grouped } = route.args;
      const circuits = study.groupedFor(own);
      if (circuits < 2) continue;
      if ((grouped && grouped.value >= circuits) || !study.circuits.includes(own)) continue;
      const stated = grouped ? `this route counts ${plain(grouped.value)}` : "this route counts none of the others";
      const falls = known ? ` (factor ${plain(known.value)})` : "";
      const spot = grouped
        ? valueSpot(route, { start: labelStart(route, grouped.start), end: grouped.end })
        : factSpot(route);
      report(spot, {
        message: `${circuits} circuits run in ${study.name}, but ${stated}: write grouped ${circuits}${falls}.`,
        ...(grouped ? { value: amount(grouped.value, "circuits") } : {}),
        limit: amount(circuits, "circuits"),
        steps: [...(known?.steps ?? [remark(`${circuits} circuits in ${study.name}`)])],
        ...(known ? { source: known.source } : {}),
        least: true,
        related: [
          { spot: factSpot(study.fact), message: `Description of ${study.name}.` },
          ...study.contents
            .filter((other) => other.route !== route)
            .map((other) => ({
              spot: factSpot(other.route),
              message: `Way ${other.study.way.id} runs in ${study.name} as well.`,
            })),
        ],
        fixes: fixesFor(route, circuits),
      });
    }
  },
});

/** The mark takes in the word before the count. */
const labelStart = (route: FactOf<"way", "route">, before: number): number =>
  Math.max(route.start, route.segment.text.lastIndexOf("grouped", before));

function fixesFor(route: FactOf<"way", "route">, circuits: number): Fix[] {
  const { grouped } = route.args;
  if (grouped) return [inPlaceOf(grouped, String(circuits), `Make it grouped ${circuits}`)];
  return wordsAfter(route, `grouped ${circuits}`);
}
