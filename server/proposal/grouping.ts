/** How many circuits share a conduit or trunking follows from the schedule, whether or not the route says it. */

import { groupingFactor } from "../calc/capacity-factors.ts";
import { plain, type Step } from "../calc/result.ts";
import { rewrittenAt } from "../circuit/rewritten.ts";
import type { WayStudy } from "../circuit/way.ts";
import { containmentOf, containmentsOf, containmentsOn } from "../conduits/containment.ts";
import type { Installation } from "../model/installation.ts";
import type { FactOf } from "../model/values.ts";
import { inPlaceOf, lineInBlock, wordsAfter } from "../rules/common/writing.ts";
import type { Source } from "../tables/source.ts";
import type { TextEdit } from "../text/lines.ts";
import { statementText } from "./lines.ts";

type Route = FactOf<"way", "route">;

interface Grouped {
  /** The way with its routes counting all that share their containment. */
  readonly study: WayStudy;
  /** What that takes, in the way as it stands. */
  readonly edits: readonly TextEdit[];
  readonly found: readonly { readonly words: string; readonly steps: readonly Step[]; readonly source?: Source }[];
}

export function withGrouping(study: WayStudy, installation: Installation | undefined): Grouped {
  const none: Grouped = { study, edits: [], found: [] };
  if (!installation) return none;
  const all = [...containmentsOf(installation), ...installation.boards.flatMap(containmentsOn)];
  const counted = new Map<Route, number>();
  const found: Grouped["found"][number][] = [];
  for (const route of study.facts.all("route")) {
    const { in: name, grouped } = route.args;
    const fact = name && containmentOf(study.context, name.value);
    const shared = fact && all.find((one) => one.fact === fact);
    const circuits = shared?.groupedFor(study) ?? 0;
    if (!shared || circuits < 2 || (grouped && grouped.value >= circuits)) continue;
    if (!shared.circuits.some(({ way }) => way.segment === study.way.segment)) continue;
    counted.set(route, circuits);
    const factor = groupingFactor(shared.circuitCount, "bunched");
    const known = "missing" in factor ? undefined : factor;
    found.push({
      words: `${circuits} circuits run in ${shared.name}${known ? `: factor ${plain(known.value)}` : ""}`,
      steps: known?.steps ?? [],
      ...(known ? { source: known.source } : {}),
    });
  }
  const edits = editsFor(study, counted);
  const after = edits.length > 0 ? rewrittenAt(study, edits) : undefined;
  return after ? { study: after, edits, found } : none;
}

/** Writes how many circuits run together. Routes of the circuit type are written out in the way, all of them. */
function editsFor({ facts, way }: WayStudy, counted: ReadonlyMap<Route, number>): TextEdit[] {
  const routes = facts.all("route");
  const isShared = counted.size > 0 && routes.some(({ segment }) => segment !== way.segment);
  const fixes = isShared
    ? lineInBlock(way.header, routes.map((route) => routeText(route, counted.get(route))).join("\n"))
    : [...counted].flatMap(([route, circuits]) => {
        const { grouped } = route.args;
        return grouped ? [inPlaceOf(grouped, String(circuits))] : wordsAfter(route, `grouped ${circuits}`);
      });
  return fixes.flatMap((fix) => fix.edits);
}

function routeText(route: Route, circuits: number | undefined): string {
  const { grouped } = route.args;
  const text = statementText(route);
  if (circuits === undefined) return text;
  return grouped ? text.replace(/\bgrouped \d+/, `grouped ${circuits}`) : `${text} grouped ${circuits}`;
}
