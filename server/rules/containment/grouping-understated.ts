import { groupingFactor } from "../../calc/capacity-factors.ts";
import { exceeds } from "../../calc/compare.ts";
import { plain, remark } from "../../calc/result.ts";
import type { ContainmentStudy } from "../../conduits/containment.ts";
import type { Fix } from "../../model/problems.ts";
import type { FactOf } from "../../model/values.ts";
import { lightLoad } from "../../tables/light-load.ts";
import { containmentRule } from "../common/containments.ts";
import { inPlaceOf, wordsAfter } from "../common/writing.ts";
import { amount, factSpot, valueSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/grouping-understated",
  severity: "warning",
  since: "0.1",
  title: "More circuits share a conduit or trunking than the route's grouping counts.",
  why: "Each circuit in an enclosure warms the others. With too few counted, the cable is rated for more than it can carry. Write how many run together. A circuit that is known to carry no more than 30 % of what it may in the group is left out of the count of the others, but not of its own: state its load, and how many it runs with.",
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
      const light = study.contents.filter((one) => one.study !== own && isLightlyLoaded(one, study));
      const circuits =
        study.groupedFor(own) - light.reduce((sum, one) => sum + (one.study.cable?.parallel.line ?? 1), 0);
      if (circuits < 2) continue;
      if ((grouped && grouped.value >= circuits) || !study.circuits.includes(own)) continue;
      const stated = grouped ? `this route counts ${plain(grouped.value)}` : "this route counts none of the others";
      const falls = known ? ` (factor ${plain(known.value)})` : "";
      const spot = grouped
        ? valueSpot(route, { start: labelStart(route, grouped.start), end: grouped.end })
        : factSpot(route);
      report(spot, {
        message: `${circuits} circuits run in ${study.name}${light.length > 0 ? " besides those of 30 % of their load or less" : ""}, but ${stated}: write grouped ${circuits}${falls}.`,
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

/**
 * A circuit whose stated current is at most 30 % of what it carries with all the others round it (523.5): its own count is
 * full, and its load is known and not that of whatever is plugged in.
 */
function isLightlyLoaded(
  { study: one, route }: ContainmentStudy["contents"][number],
  group: ContainmentStudy,
): boolean {
  const { grouped } = route.args;
  const full = grouped !== undefined && grouped.value >= group.groupedFor(one);
  const Ib = one.servesSockets || one.isFeeder ? undefined : one.designCurrent?.value;
  const found = one.capacities.find(({ fact }) => fact === route)?.capacity;
  if (!full || Ib === undefined || !found || "missing" in found) return false;
  return !exceeds(Ib, lightLoad.value * found.value);
}

/** The mark takes in the word before the count. */
const labelStart = (route: FactOf<"way", "route">, before: number): number =>
  Math.max(route.start, route.segment.text.lastIndexOf("grouped", before));

function fixesFor(route: FactOf<"way", "route">, circuits: number): Fix[] {
  const { grouped } = route.args;
  if (grouped) return [inPlaceOf(grouped, String(circuits), `Make it grouped ${circuits}`)];
  return wordsAfter(route, `grouped ${circuits}`);
}
