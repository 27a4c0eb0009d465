/** Where nobody wrote how a cable runs: a route that is common and asks much of it, to have something to go by. */

import { rewrittenAt } from "../circuit/rewritten.ts";
import { premisesOf } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { lineInBlock } from "../rules/common/writing.ts";
import { assumedRoutes } from "../tables/sizing-practice.ts";
import type { Source } from "../tables/source.ts";
import { cellOf, rowOf } from "../tables/table.ts";

export interface UsualRoute {
  readonly study: WayStudy;
  /** The line as it would stand. */
  readonly line: string;
  readonly source: Source;
}

export function withUsualRoute(study: WayStudy): UsualRoute | undefined {
  // A route that is half typed, or whose method is not known, is not to be overruled.
  if (study.facts.has("route")) return undefined;
  const home = premisesOf(study.context) === "dwelling" && !study.threePhase && !study.isFeeder;
  const row = rowOf(assumedRoutes, { circuit: home ? "dwelling" : "other" });
  if (!row) return undefined;
  const { value, source } = cellOf(assumedRoutes, row, "route");
  const line = `route ${value}`;
  const [fix] = lineInBlock(study.way.header, line);
  const assumed = fix && rewrittenAt(study, fix.edits);
  return assumed && { study: assumed, line, source };
}
